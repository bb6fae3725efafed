/** The samples are what the simulator flies, and they show what their names say. */
import { readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { flyScenario } from "../../src/simulator/index.ts";
import type { Truth } from "../../src/simulator/truth.ts";
import { near } from "../support/near.ts";

const SAMPLES = join(import.meta.dirname, "../../samples");
const cases = readdirSync(SAMPLES, { withFileTypes: true }).flatMap((e) => (e.isDirectory() ? [e.name] : []));
const text = (name: string, file: string) => readFileSync(join(SAMPLES, name, file), "utf8");
const truthOf = (name: string): Truth => JSON.parse(text(name, "truth.json"));

describe("by construction: samples", () => {
  it("are three lessons of courses, one of arcs, one of descents, four of holds and seven of approaches", () => {
    expect(cases.sort()).toEqual([
      "approach-below-minimum",
      "approach-from-arc",
      "approach-step-downs",
      "approach-tidy-precision",
      "approach-track-chased",
      "approach-unstable-continued",
      "approach-wind-let-go",
      "arc-to-a-radial",
      "calm-and-tidy",
      "descent-begun-late",
      "hold-by-distance",
      "hold-direct-well-flown",
      "hold-outbound-flown-parallel",
      "hold-teardrop-left-turns",
      "needle-chased",
      "strong-crosswind-badly-corrected",
    ]);
  });

  it.each(cases)("%s is exactly what seed 1 flies", (name) => {
    const { gpx, brief, truth } = flyScenario(name, 1);
    expect(gpx === text(name, "log.gpx")).toBe(true);
    expect(brief).toBe(text(name, "brief.yaml"));
    expect(`${JSON.stringify(truth, null, 1)}\n`).toBe(text(name, "truth.json"));
  });

  it.each(cases)(
    "%s lasts 25 to 40 minutes, an approach 12 to 20, and its log stays under 400 kB",
    (name) => {
      const { startUtc, endUtc } = truthOf(name);
      const minutes = (Date.parse(endUtc) - Date.parse(startUtc)) / 60_000;
      const [least, most] = name.startsWith("approach-") ? [12, 20] : [25, 40];
      expect(minutes).toBeGreaterThan(least);
      expect(minutes).toBeLessThan(most);
      expect(statSync(join(SAMPLES, name, "log.gpx")).size).toBeLessThan(400_000);
    },
  );

  it("calm-and-tidy never shows a quarter of the needle", () => {
    for (const e of truthOf("calm-and-tidy").truth.exercises)
      expect(Math.abs(e.maxNeedle)).toBeLessThan(0.25);
  });

  it("needle-chased has reversals on three courses, two a minute or more, and none on the last", () => {
    const counts = truthOf("needle-chased").truth.exercises.map(
      (e) => e.events.filter((v) => v.code === "needle-reversal").length,
    );
    expect(counts.slice(0, 3).every((n) => n >= 16)).toBe(true);
    expect(counts[3]).toBe(0);
  });
});

describe("check values, common practice, no source: a track that stands off the course before the needle shows it", () => {
  const [inbound, outbound] = truthOf("strong-crosswind-badly-corrected").truth.exercises;
  const declination = 2.5;
  const seconds = (from: string, to: string | null) => (Date.parse(to!) - Date.parse(from)) / 1000;

  it("inbound course 241 with track 246 drifts right, for more than a minute before a quarter", () => {
    const event = inbound!.events.find((e) => e.code === "wind-correction-overdone")!;
    near(event.trackTrueDeg - declination, 246, 1, "deg magnetic");
    expect(event.trackErrorDeg).toBeGreaterThan(0);
    expect(inbound!.maxCrossTrackNm).toBeGreaterThan(0);
    expect(seconds(event.utc, event.quarterUtc)).toBeGreaterThan(60);
  });

  it("outbound course 270 with track 258 drifts left, for more than half a minute before a quarter", () => {
    const event = outbound!.events.find((e) => e.code === "wind-correction-let-go")!;
    near(event.trackTrueDeg - declination, 258, 1, "deg magnetic");
    expect(event.trackErrorDeg).toBeLessThan(0);
    expect(outbound!.maxCrossTrackNm).toBeLessThan(0);
    expect(seconds(event.utc, event.quarterUtc)).toBeGreaterThan(30);
  });
});
