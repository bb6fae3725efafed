import { describe, expect, it } from "vitest";
import type {
  ApproachFacts,
  ApproachRecord,
  DebriefDocument,
  HoldRecord,
} from "../../../src/debrief/document.ts";
import {
  asFineAs,
  exerciseSentence,
  findingSentence,
  lapSentences,
  otherFindings,
  sideNotes,
} from "../../../src/report/index.ts";
import { flyScenario } from "../../../src/simulator/index.ts";
import { debriefOf, sampleDebrief } from "../../support/debriefed.ts";

/** The flight with one point of every `step`, each up to four seconds late as receivers that save space write them. */
async function thinned(scenario: string, seed: number, step: number): Promise<DebriefDocument> {
  const { gpx, brief } = flyScenario(scenario, seed);
  let point = 0;
  const sparse = gpx.replace(/<trkpt[\s\S]*?<\/trkpt>/g, (text) => {
    const [row, at] = [Math.floor(point / step), point++ % step];
    return at === (row * 7) % 5 ? text : "";
  });
  return (await debriefOf(sparse, brief)).document;
}

/** Seconds of each duration in the words. */
const durations = (text: string): number[] =>
  [...text.matchAll(/(\d+) min(?: (\d+) s)?\b|(\d+) s(?:econds)?\b/g)].map(
    ([, minutes, more, seconds]) => 60 * Number(minutes ?? 0) + Number(more ?? seconds ?? 0),
  );

function told(document: DebriefDocument): string[] {
  return document.exercises.flatMap((measured) => {
    const exercise = asFineAs(document.log, measured);
    return [
      exerciseSentence(exercise),
      ...sideNotes(exercise).map(({ text }) => text),
      ...otherFindings(exercise).map((finding) => findingSentence(finding, exercise)),
    ];
  });
}

describe("by construction: durations in words are whole steps between the points of the log", () => {
  it.each([
    ["strong-crosswind-badly-corrected", 30],
    ["strong-crosswind-badly-corrected", 15],
    ["calm-and-tidy", 30],
    ["needle-chased", 15],
  ])("%s with a point every %i seconds", async (scenario, step) => {
    const document = await thinned(scenario, 5001, step);
    const median = document.log.medianIntervalS!;
    expect(Math.abs(median - step)).toBeLessThan(5);
    // "for 10 seconds" is how established is defined, not what was measured; how long nothing was recorded is exact.
    const sentences = told(document).filter((sentence) => !/for 10 seconds|without a point/.test(sentence));
    for (const sentence of sentences)
      for (const seconds of durations(sentence)) expect(seconds % Math.round(median), sentence).toBe(0);
  });

  it("there are durations to be told, and they would have been finer", async () => {
    const { log, exercises } = await thinned("strong-crosswind-badly-corrected", 5001, 30);
    const plain = exercises.map((e) => exerciseSentence(e)).flatMap(durations);
    const isWhole = (seconds: number) => seconds % Math.round(log.medianIntervalS!) === 0;
    expect(plain.filter((seconds) => !isWhole(seconds)).length).toBeGreaterThan(0);
  });

  it("a log with a point a second is told as it was measured", async () => {
    const { document } = await sampleDebrief("strong-crosswind-badly-corrected");
    for (const exercise of document.exercises) expect(asFineAs(document.log, exercise)).toBe(exercise);
  });

  it("so are the legs of a procedure turn", async () => {
    const { document } = await sampleDebrief("approach-tidy-precision");
    const flown = document.exercises.find(
      (e): e is ApproachRecord => e.kind === "approach" && e.facts !== null,
    )!;
    const procedureTurn = { outboundS: 62, awayS: 31 } as ApproachFacts["procedureTurn"];
    const coarse = asFineAs(
      { medianIntervalS: 15 },
      { ...flown, facts: { ...flown.facts!, procedureTurn } },
    ) as ApproachRecord;
    expect(coarse.facts!.procedureTurn).toMatchObject({ outboundS: 60, awayS: 30 });
  });

  it("legs of a hold are whole steps and at least one; the time asked for stays", async () => {
    const { document } = await sampleDebrief("hold-outbound-flown-parallel");
    const hold = document.exercises.find((e): e is HoldRecord => e.kind === "hold" && e.facts !== null)!;
    const coarse = asFineAs({ medianIntervalS: 7 }, hold) as HoldRecord;
    const legs = lapSentences(coarse).flatMap(durations);
    expect(legs.length).toBeGreaterThan(1);
    for (const seconds of legs) expect(seconds % 7).toBe(0);
    expect(coarse.facts!.leg).toEqual(hold.facts!.leg);
    const minutes = asFineAs({ medianIntervalS: 600 }, hold) as HoldRecord;
    expect(minutes.facts!.laps[0]!.outbound.seconds).toBe(600);
  });
});
