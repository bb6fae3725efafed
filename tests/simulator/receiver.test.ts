/** The receiver's errors against the model that it states, and which points it logs. */
import { SaxesParser } from "saxes";
import { describe, expect, it } from "vitest";
import { gpxText } from "../../src/simulator/gpx.ts";
import { fly, flyScenario, scenarioNamed } from "../../src/simulator/index.ts";
import type { Scenario } from "../../src/simulator/scenario.ts";
import { near } from "../support/near.ts";
import { STILL } from "./still.ts";

const METRES_PER_DEGREE = 110_950; // of latitude at 35.6 N to 36 N, from the WGS84 meridian radius of 6,357 km
const long: Scenario = { ...STILL, script: [{ do: "heading", heading: 80, seconds: 7200 }] };

/** Errors of latitude, metres, of a two-hour log. */
function northErrors(receiver: Scenario["receiver"], seed: number) {
  const { track, columns } = fly({ ...long, receiver }, seed);
  return Float64Array.from(columns.latitude, (v, i) => (track.latitude[i]! - v) * METRES_PER_DEGREE);
}
const rms = (values: ArrayLike<number>) =>
  Math.sqrt(Array.from(values).reduce((sum, v) => sum + v * v, 0) / values.length);

describe("by construction: receiver errors follow the stated model", () => {
  it("has white errors of 0.4 m, and none that remember", () => {
    const errors = northErrors({ bias: { sd: 0, time: 60 }, white: 0.4, decimals: 9 }, 1);
    near(rms(errors), 0.4, 0.4 * (4 / Math.sqrt(2 * errors.length)), "m"); // four standard errors
    const product = errors.subarray(1).reduce((sum, v, i) => sum + v * errors[i]!, 0) / errors.length;
    near(product / 0.16, 0, 4 / Math.sqrt(errors.length), "", "correlation");
  });

  it("has a bias of 2.5 m that changes over 180 s", () => {
    const all = [1, 2, 3, 4, 5, 6, 7, 8].map((seed) =>
      northErrors({ bias: { sd: 2.5, time: 180 }, white: 0, decimals: 9 }, seed),
    );
    // 8 logs of 7,200 s hold about 160 independent biases: four standard errors of the sd are 22 %
    near(rms(all.flatMap((e) => Array.from(e))), 2.5, 0.22 * 2.5, "m");
    const steps = all.flatMap((e) => Array.from(e.subarray(1), (v, i) => v - e[i]!));
    near(rms(steps), 2.5 * Math.sqrt(2 * (1 - Math.exp(-1 / 180))), 0.01, "m", "change in 1 s");
  });

  it("errs twice as much in height", () => {
    const receiver = { bias: { sd: 0, time: 60 }, white: 0.4, decimals: 9 };
    const { track, columns } = fly({ ...long, receiver }, 1);
    const up = Float64Array.from(columns.altitude, (v, i) => (track.altitude[i]! - v) * 0.3048);
    near(rms(up), 0.8, 0.04, "m"); // four standard errors; rounding to 0.1 m adds 0.03 m in squares
  });

  it("rounds to 1e-5 degrees, so an error is at most half of that", () => {
    const errors = northErrors({ bias: { sd: 0, time: 60 }, white: 0, decimals: 5 }, 1);
    expect(Math.max(...errors.map(Math.abs))).toBeLessThan(0.5e-5 * 110_950 * 1.001);
    expect(rms(errors)).toBeGreaterThan(0.1);
  });
});

describe("by construction: what is logged", () => {
  const intervals = (name: string, logging: Scenario["logging"]) => {
    const { track } = fly(scenarioNamed(name, { logging }), 1);
    return Array.from(track.time.subarray(1), (t, i) => (t - track.time[i]!) / 1000);
  };

  it("logs each second, or each five", () => {
    expect(new Set(intervals("calm-and-tidy", { every: 1 }))).toEqual(new Set([1]));
    expect(new Set(intervals("calm-and-tidy", { every: 5 }))).toEqual(new Set([5]));
  });

  it("logs twice a second, with the truth as at one second", () => {
    expect(new Set(intervals("calm-and-tidy", { every: 0.5 }))).toEqual(new Set([0.5]));
    const halves = flyScenario("calm-and-tidy", 1, { logging: { every: 0.5 } });
    expect(halves.truth).toEqual(flyScenario("calm-and-tidy", 1).truth);
    expect(halves.gpx).toMatch(/<time>2026-10-17T01:12:00\.500Z</);
  });

  it("refuses an interval that it cannot fly, and says why", () => {
    expect(() => flyScenario("calm-and-tidy", 1, { logging: { every: 0.3 } })).toThrow(
      "invalid logging: every 0.3 s; not a multiple of 0.5 s",
    );
  });

  it("draws straight lines between plots", () => {
    const { track } = fly(scenarioNamed("calm-and-tidy", { logging: { every: 5, plots: 20 } }), 1);
    expect((track.time[1]! - track.time[0]!) / 1000).toBe(5);
    for (let i = 0; i + 4 < track.length; i += 4)
      for (let j = 1; j < 4; j++)
        near(
          track.latitude[i + j]!,
          track.latitude[i]! + (j / 4) * (track.latitude[i + 4]! - track.latitude[i]!),
          1.1e-5, // rounding of each
          "deg",
        );
  });

  it("logs adaptively: never after more than 12 s, often in turns, seldom on straights", () => {
    const adaptive = { off: 12, atMost: 12 };
    expect(Math.max(...intervals("calm-and-tidy", adaptive))).toBe(12);
    const mean = (script: Scenario["script"]) => {
      const { track } = fly({ ...STILL, script, logging: adaptive }, 1);
      return (track.time.at(-1)! - track.time[0]!) / 1000 / (track.length - 1);
    };
    expect(mean([{ do: "turn", by: 1080 }])).toBeLessThan(5);
    expect(mean([{ do: "heading", heading: 90, seconds: 600 }])).toBeGreaterThan(11);
  });

  it("writes well-formed GPX 1.1 with one point a line, times rising", () => {
    const { gpx, truth } = flyScenario("needle-chased", 1, {
      logging: { every: 5 },
      about: "another <word>",
    });
    const points: number[] = [];
    const names: string[] = [];
    let text = "";
    const parser = new SaxesParser({ xmlns: true });
    parser.on("error", (e) => {
      throw e;
    });
    parser.on("text", (t) => {
      text = t;
    });
    parser.on("closetag", ({ local, uri }) => {
      expect(uri).toBe("http://www.topografix.com/GPX/1/1");
      if (local === "time") points.push(Date.parse(text));
      if (local === "name") names.push(text);
    });
    parser.write(gpx).close();
    expect(names).toEqual(["needle-chased"]);
    expect(gpx.match(/^<trkpt /gm)!.length).toBe(points.length);
    expect(points[0]).toBe(Date.parse(truth.startUtc));
    expect(points.every((t, i) => i === 0 || t > points[i - 1]!)).toBe(true);
  });

  it("escapes a name", () => {
    const { track } = fly({ ...STILL, name: "a<b & c" }, 1);
    expect(gpxText(track, 5)).toContain("<name>a&lt;b &amp; c</name>");
  });
});
