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
const debriefed = async (arc: string) => {
  const brief = read("brief.yaml").replace(FLOWN, arc);
  const standard = standardNamed("instrument-rating-us")!;
  const { document } = await debriefOf(read("log.gpx"), brief, { standard });
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
