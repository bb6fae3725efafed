/** Which turns count for a roll-out, and for which exercise: by construction, turns put into the document of a sample. */
import { describe, expect, it } from "vitest";
import type { DebriefDocument, DocumentLeg } from "../../src/debrief/document.ts";
import { observeFlight } from "../../src/habit/index.ts";
import { sampleDebrief } from "../support/debriefed.ts";
import { near } from "../support/near.ts";

const documents = {
  courses: (await sampleDebrief("calm-and-tidy")).document,
  hold: (await sampleDebrief("hold-direct-well-flown")).document,
  approach: (await sampleDebrief("approach-from-arc")).document,
};

/** A flight with only these turns in it, left ones 20 degrees past; each ends so many seconds after a moment, from a track. */
function flown(
  document: DebriefDocument,
  turns: readonly { end: number; turnDeg?: number; from?: number; pastDeg?: number | null }[],
): DebriefDocument {
  const [leg] = document.legs;
  const legs = turns.map(({ end, turnDeg = -90, from = 0, pastDeg = 20 }): DocumentLeg => {
    const [startUtc, endUtc] = [new Date(end - 30_000).toISOString(), new Date(end).toISOString()];
    return { ...leg!, kind: "turn", startUtc, endUtc, turnDeg, pastDeg, trackTrueDeg: from };
  });
  return { ...document, legs };
}

const told = (document: DebriefDocument, side = "left") =>
  observeFlight(document, { id: "one" })
    .observations.filter(({ tendency }) => tendency === `roll-out-${side}`)
    .map(({ exercise }) => exercise);

const startOf = ({ exercises }: DebriefDocument, i: number) => Date.parse(exercises[i]!.startUtc!);
const endOf = ({ exercises }: DebriefDocument, i: number) => Date.parse(exercises[i]!.endUtc!);

describe("a turn that went past its heading", () => {
  const { courses, hold, approach } = documents;
  const begins = startOf(courses, 0);

  it("counts for the exercise that it ended in, by its side, less what wander makes of every turn", () => {
    const inFirst = flown(courses, [{ end: begins + 60_000 }]);
    expect(told(inFirst)).toEqual([0]);
    expect(told(inFirst, "right")).toEqual([]);
    const [seen] = observeFlight(inFirst, { id: "one" }).observations.filter(
      ({ tendency }) => tendency === "roll-out-left",
    );
    near(seen!.value * seen!.tolerance, 18, 1e-9, "°", "past");
  });

  it("counts for the next exercise where it led onto it: within two minutes and as the last turn", () => {
    expect(told(flown(courses, [{ end: begins - 100_000 }]))).toEqual([0]);
    expect(told(flown(courses, [{ end: begins - 130_000 }]))).toEqual([]);
    const turnedAgain = [{ end: begins - 100_000 }, { end: begins - 30_000, turnDeg: 120, pastDeg: null }];
    expect(told(flown(courses, turnedAgain))).toEqual([]);
  });

  it("counts once where it ended one exercise and began another", () => {
    const both = structuredClone(courses);
    both.exercises[0]!.endUtc = new Date(startOf(courses, 1) + 60_000).toISOString();
    expect(told(flown(both, [{ end: startOf(courses, 1) + 30_000 }]))).toEqual([1]);
  });

  it("counts in a hold where it ends outbound, and not where it ends by the needle, inbound", () => {
    const [held] = hold.exercises;
    if (held?.kind !== "hold" || !held.facts) throw new Error("the sample has no hold");
    const inbound = held.facts.inboundTrueDeg;
    const end = startOf(hold, 0) + 120_000;
    expect(told(flown(hold, [{ end, turnDeg: -180, from: inbound + 20 }]))).toEqual([0]);
    expect(told(flown(hold, [{ end, turnDeg: -180, from: inbound + 200 }]))).toEqual([]);
  });

  it("does not count on an arc or an approach, whose turns end by the needle", () => {
    for (const [i, { kind, facts }] of approach.exercises.entries()) {
      expect(["arc", "approach"]).toContain(kind);
      expect(facts).not.toBeNull();
      expect(told(flown(approach, [{ end: endOf(approach, i) - 1000 }]))).toEqual([]);
    }
  });
});
