/** An arc flown from the last radial of the brief to the first. Truth: the simulator's, whose pilot flew it as the sample's own brief gives it. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { standardNamed } from "../../src/grade/index.ts";
import { exerciseSentence } from "../../src/report/index.ts";
import { debriefOf, sampleTruth } from "../support/debriefed.ts";

const NAME = "arc-to-a-radial";
const read = (file: string) => readFileSync(join(import.meta.dirname, "../../samples", NAME, file), "utf8");
const FLOWN = "from_radial: 300, to_radial: 350";
/** `silent`: from and to which time of the day the log has no points. */
const debriefed = async (arc: string, silent: readonly [string, string] | null = null) => {
  const brief = read("brief.yaml").replace(FLOWN, arc);
  const standard = standardNamed("instrument-rating-us")!;
  const log = read("log.gpx").replace(/<trkpt[\s\S]*?<\/trkpt>/g, (point) => {
    const clock = /T(\d\d:\d\d:\d\d)/.exec(point)![1]!;
    return silent && clock > silent[0] && clock < silent[1] ? "" : point;
  });
  const { document } = await debriefOf(log, brief, { standard });
  return document.exercises.find(({ kind }) => kind === "arc")!;
};

it("is said to be flown the other way round, when, and stays not flown", async () => {
  const arc = await debriefed("from_radial: 350, to_radial: 300");
  const [why] = arc.findings;
  expect(why!.code).toBe("flown-other-way");
  const truth = sampleTruth(NAME).truth.arcs![0]!;
  const off = (utc: string | null, from: string) => Math.abs(Date.parse(utc!) - Date.parse(from)) / 1000;
  expect(off(why!.evidence.fromUtc, truth.startUtc)).toBeLessThan(20);
  expect(off(why!.evidence.toUtc, truth.endUtc)).toBeLessThan(20);
  expect(new Set(arc.verdicts.map(({ verdict }) => verdict))).toEqual(new Set(["not flown"]));
  expect(exerciseSentence(arc)).toMatch(/^It was flown the other way round, \d\d:\d\d to \d\d:\d\d UTC/);
});

it("an arc on the other side of the station was not flown either way", async () => {
  const arc = await debriefed("from_radial: 200, to_radial: 150");
  expect(arc.findings.map(({ code }) => code)).not.toContain("flown-other-way");
});

// 10 NM round 50 degrees are 8.7 NM, over 5 minutes at 100 kt; from near TARNO, where the second course ends, there and
// back it is as far again and more
it("flown the other way round, but with a silence long enough for it as asked: cannot tell", async () => {
  const arc = await debriefed("from_radial: 350, to_radial: 300", ["01:20:00", "01:41:00"]);
  expect(arc.findings.map(({ code }) => code)).toEqual(["log-silent-there"]);
  expect(new Set(arc.verdicts.map(({ verdict }) => verdict))).toEqual(new Set(["cannot tell"]));
});

it("with a silence too short for it, it stays flown the other way round", async () => {
  const arc = await debriefed("from_radial: 350, to_radial: 300", ["01:20:00", "01:28:00"]);
  expect(arc.findings.map(({ code }) => code)).toEqual(["flown-other-way"]);
});
