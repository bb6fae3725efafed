/** Heights of a log in the other unit: GPX 1.1 has them in metres (Topografix, element ele), some programs write feet. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { debriefText, logCautions } from "../../src/report/index.ts";
import { debriefOf } from "../support/debriefed.ts";

const SAMPLES = join(import.meta.dirname, "../../samples");
const read = (name: string, file: string) => readFileSync(join(SAMPLES, name, file), "utf8");
/** A foot is 0.3048 m: so many times larger are heights in feet. */
const scaled = (gpx: string, by: number) =>
  gpx.replace(/<ele>(.*?)<\/ele>/g, (_, height) => `<ele>${(Number(height) * by).toFixed(1)}</ele>`);
const FEET = 1 / 0.3048;
const debriefed = async (name: string, by: number, brief = read(name, "brief.yaml")) =>
  (await debriefOf(scaled(read(name, "log.gpx"), by), brief)).document;

const IN_FEET = /seem to be written in feet where metres belong/;
const OF_HEIGHT = /height|glide-path|sink|descent|minimum|decision/;

describe.each(["approach-tidy-precision", "descent-begun-late", "hold-direct-well-flown"])(
  "%s with its heights in feet",
  (name) => {
    it("is said at the top, no height is told, and no verdict on one is given", async () => {
      const document = await debriefed(name, FEET);
      expect(logCautions(document)[0]).toMatch(IN_FEET);
      const verdicts = document.exercises.flatMap((e) => e.verdicts);
      const heights = verdicts.filter(({ criterion }) => OF_HEIGHT.test(criterion));
      expect(heights.length).toBeGreaterThan(0);
      for (const { verdict, reason, value } of heights)
        expect([verdict, reason, value]).toEqual(["cannot tell", "height-unit", null]);
      const text = debriefText(document).replace(/\s+/g, " ");
      expect(text).toContain("heights of the log seem to be in another unit");
      const told = document.exercises.flatMap((e) => e.findings.map(({ code }) => code));
      expect(told).not.toContain("unstable-at-gate");
      expect(told).not.toContain("descent-crossed-high");
    });

    it("in metres nothing is said of it", async () => {
      expect(logCautions(await debriefed(name, 1)).join(" ")).not.toMatch(/seem to be written/);
    });
  },
);

it("a runway's elevation and minimum typed in metres are no fault of a log that meets the final fix", async () => {
  const name = "approach-tidy-precision";
  // from 420 ft to Lindholt's elevation in metres would be within a receiver's error: a high field is what shows it
  const high = scaled(read(name, "log.gpx"), 1).replace(
    /<ele>(.*?)<\/ele>/g,
    (_, height) => `<ele>${(Number(height) + 1000).toFixed(1)}</ele>`,
  );
  const raised = (text: string, key: string, by: (feet: number) => number) =>
    text.replace(new RegExp(`(${key}: )(\\d+)`, "g"), (_, k, feet) => `${k}${by(Number(feet))}`);
  const up = (feet: number) => Math.round(feet + 1000 / 0.3048);
  const inMetres = (feet: number) => Math.round(up(feet) * 0.3048);
  let brief = raised(read(name, "brief.yaml"), "final_fix_ft", up);
  for (const key of ["elevation_ft", "decision_ft", "elevation"]) brief = raised(brief, key, inMetres);
  const { document } = await debriefOf(high, brief);
  expect(logCautions(document)[0]).toMatch(/the .* ft of the brief may be what stands in the other unit/);
});

it("what does not rest on heights is told and judged as before", async () => {
  const name = "approach-tidy-precision";
  const needleOf = async (by: number) =>
    (await debriefed(name, by)).exercises[0]!.verdicts.find((v) => v.criterion === "approach-needle")!
      .verdict;
  expect(await needleOf(FEET)).toBe(await needleOf(1));
});

it("an exercise that was found by its heights keeps its time, and its verdict says why nothing is told", async () => {
  const [first] = (await debriefed("descent-begun-late", FEET)).exercises;
  const [true_] = (await debriefed("descent-begun-late", 1)).exercises;
  expect(first!.facts).toBeNull();
  expect(Math.abs(Date.parse(first!.startUtc!) - Date.parse(true_!.startUtc!))).toBeLessThan(60_000);
  expect(first!.verdicts.map((v) => v.verdict)).toEqual(["cannot tell"]);
});

it("a descent that was never begun, at a height that would fit in the other unit, is no reason to doubt it", async () => {
  const name = "descent-begun-late";
  // the first descent is from about 3,980 ft; level there, 1,213 ft wanted would fit
  const brief = read(name, "brief.yaml").replace(/^ {2}- \{ descent: (?!BELVO).*\n/gm, "");
  const level = read(name, "log.gpx").replace(/<ele>.*?<\/ele>/g, "<ele>1213.0</ele>");
  const { document } = await debriefOf(level, brief.replace("to_ft: 1800", "to_ft: 1213"));
  expect(logCautions(document).join(" ")).not.toMatch(/seem to be written/);
});

it("no sample is doubted as it is, and those in metres where feet belong are", async () => {
  for (const name of readdirSync(SAMPLES)
    .filter((n) => /^(approach|descent|hold)/.test(n))
    .slice(0, 4))
    expect(logCautions(await debriefed(name, 1)).join(" "), name).not.toMatch(/seem to be written/);
  const low = await debriefed("hold-direct-well-flown", 0.3048);
  expect(logCautions(low)[0]).toMatch(/written in metres where feet belong/);
});
