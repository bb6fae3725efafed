/** Logs with points taken out of them, against the verdicts of the whole: what was not recorded is never called good. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import type { ArcFacts, DebriefDocument } from "../../src/debrief/document.ts";
import { debriefText } from "../../src/report/index.ts";
import { courses, debriefOf, sampleDebrief } from "../support/debriefed.ts";

const SAMPLE = "strong-crosswind-badly-corrected";
const read = (name: string, file: string) =>
  readFileSync(join(import.meta.dirname, "../../samples", name, file), "utf8");

/** A sample without the points whose second of the flight is not wanted. */
function thinned(name: string, wanted: (second: number) => boolean): string {
  const gpx = read(name, "log.gpx");
  const timeOf = (point: string) => Date.parse(/<time>(.*?)<\/time>/.exec(point)![1]!);
  const first = timeOf(/<trkpt[\s\S]*?<\/trkpt>/.exec(gpx)![0]);
  return gpx.replace(/<trkpt[\s\S]*?<\/trkpt>\s*/g, (point) =>
    wanted(Math.round((timeOf(point) - first) / 1000)) ? point : "",
  );
}

const brief = (name = SAMPLE) => read(name, "brief.yaml");
const verdicts = ({ exercises }: DebriefDocument) =>
  exercises.flatMap((e) =>
    e.verdicts.map((v) => ({ ...v, title: e.title, start: e.startUtc, end: e.endUtc })),
  );

/** On a needle as narrow as a localizer's the fourth exercise of this sample is not met. */
const narrow = brief().replace(/(course: 190, to: TARNO, scale: )vor/, "$1localizer");

describe.each([10, 15, 30, 60, 120])("a point every %i s", (interval) => {
  it.each([0, 7])(
    "from second %i on: nothing is met that was not met by the log of a point a second",
    async (from) => {
      const { document: whole } = await debriefOf(read(SAMPLE, "log.gpx"), narrow);
      const { document: thin } = await debriefOf(
        thinned(SAMPLE, (s) => s % interval === from % interval),
        narrow,
      );
      const full = verdicts(whole);
      expect(full.some((v) => v.verdict === "not met")).toBe(true);
      for (const v of verdicts(thin)) {
        const { verdict } = full.find((f) => f.title === v.title && f.criterion === v.criterion)!;
        if (verdict === "not met") expect(v.verdict, `${v.title}, ${v.criterion}`).not.toBe("met");
      }
    },
  );
});

it("a point every five seconds leaves every verdict of the sample as it was", async () => {
  const { document: whole } = await sampleDebrief(SAMPLE);
  const { document: thin } = await debriefOf(
    thinned(SAMPLE, (s) => s % 5 === 0),
    brief(),
  );
  expect(verdicts(thin).map((v) => v.verdict)).toEqual(verdicts(whole).map((v) => v.verdict));
});

describe("a gap that hides what counts", () => {
  it("within the exercise: the needle cannot be told, and the verdict says how long the log is silent", async () => {
    const { document: whole } = await debriefOf(read(SAMPLE, "log.gpx"), narrow);
    const last = courses(whole)[3]!;
    const worst = Date.parse(last.facts.needle.maxUtc!);
    const start = Date.parse(whole.log.startUtc!);
    const cut = (s: number) => Math.abs(start + s * 1000 - worst) <= 80_000;
    const { document } = await debriefOf(
      thinned(SAMPLE, (s) => !cut(s)),
      narrow,
    );
    const verdict = courses(document)[3]!.verdicts.find((v) => v.criterion === "course-needle")!;
    expect(verdict.verdict).not.toBe("met");
    expect(debriefText(document)).toMatch(/is silent for 2 min/);
  });

  it("where two exercises meet: both say so, and neither is met", async () => {
    const name = "calm-and-tidy";
    // seconds 560 to 960: the end of the first course and the beginning of the second
    const { document } = await debriefOf(
      thinned(name, (s) => s < 560 || s > 960),
      brief(name),
    );
    for (const { findings, verdicts: own } of courses(document).slice(0, 2)) {
      expect(findings.map((f) => f.code)).toContain("gap-beside-exercise");
      const needle = own.find((v) => v.criterion === "course-needle")!;
      expect(needle).toMatchObject({ verdict: "cannot tell", reason: "log-silent" });
    }
    const text = debriefText(document).replace(/\s+/g, " ");
    expect(text).toContain("what of this exercise was flown then is not known");
    for (const { verdicts: own } of courses(document).slice(2))
      expect(own.find((v) => v.criterion === "course-needle")!.verdict).toBe("met");
  });
});

describe("a turn onto an arc or off it, about whose beginning the log is silent", () => {
  const name = "arc-to-a-radial";
  const arcOf = ({ exercises }: DebriefDocument, k: number): ArcFacts => {
    const arcs = exercises.flatMap((e) => (e.kind === "arc" ? [e.facts] : []));
    if (!arcs[k]) throw new Error("no measured arc");
    return arcs[k];
  };
  it.each([
    [0, "turnIn", 20],
    [0, "turnOff", 29],
    [1, "turnIn", 20],
    [1, "turnOff", 29],
  ] as const)(
    "exercise %i, %s, %i s: neither its lead nor its end is told, and why",
    async (k, turn, seconds) => {
      const { document: whole } = await sampleDebrief(name);
      const known = arcOf(whole, k);
      expect(known[turn]).not.toBeNull();
      expect(known.cannotTell.map(({ reason }) => reason)).not.toContain("turn-in-silence");
      const start = Date.parse(whole.log.startUtc!);
      const begun = (Date.parse(known[turn]!.utc) - start) / 1000;
      const { document } = await debriefOf(
        thinned(name, (s) => Math.abs(s - begun) >= seconds / 2),
        brief(name),
      );
      const facts = arcOf(document, k);
      expect(facts[turn]).toBeNull();
      expect(facts.cannotTell).toContainEqual({ fact: turn, reason: "turn-in-silence" });
      expect(debriefText(document).replace(/\s+/g, " ")).toMatch(
        /the log is silent in a turn onto it or off it/i,
      );
    },
  );
});
