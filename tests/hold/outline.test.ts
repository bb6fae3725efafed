/** The racetrack as a line: plane geometry in still air, step-by-step flight in a wind, and the lap closed. */
import { describe, expect, it } from "vitest";
import { type HoldQuestion, racetrackOutline, solveRacetrack } from "../../src/hold/index.ts";
import { near } from "../support/near.ts";

const QUESTION: HoldQuestion = {
  inbound: 247,
  turns: "right",
  trueAirspeed: 100,
  wind: { from: 192, speed: 20 },
  leg: { by: "inbound-time", seconds: 60 },
  turnRate: 3,
  mostBank: 30,
};

function lined(given: Partial<HoldQuestion>) {
  const question = { ...QUESTION, ...given };
  const racetrack = solveRacetrack(question);
  if ("none" in racetrack) return null;
  return { question, racetrack, outline: racetrackOutline(racetrack, question) };
}

const METRES_PER_MILE = 1852;

describe("the line of a racetrack", () => {
  it("closes within 1 m for every wind that has a solution, both sides, times and distances", () => {
    let drawn = 0;
    for (let from = 0; from < 360; from += 7) {
      for (const speed of [0, 10, 25, 40]) {
        for (const turns of ["left", "right"] as const) {
          for (const leg of [QUESTION.leg, { by: "distance", distance: 4 }] as const) {
            const line = lined({ wind: { from, speed }, turns, leg });
            if (!line) continue;
            drawn++;
            const { alongNm, crossTrackNm } = line.outline;
            expect(Math.hypot(alongNm.at(-1)!, crossTrackNm.at(-1)!) * METRES_PER_MILE).toBeLessThan(1);
          }
        }
      }
    }
    expect(drawn).toBeGreaterThan(500);
  });

  it("is two half circles and two straights of 1.67 NM in still air: 100 kt for a minute, 2 V / rate wide (plane geometry)", () => {
    const { alongNm, crossTrackNm } = lined({ wind: { from: 0, speed: 0 } })!.outline;
    const radius = 100 / 3600 / ((3 * Math.PI) / 180);
    near(Math.max(...crossTrackNm), 2 * radius, 1e-9, "NM");
    near(Math.min(...crossTrackNm), 0, 1e-9, "NM");
    near(Math.max(...alongNm), radius, 0.001, "NM"); // the top of an arc falls between two points
    near(Math.min(...alongNm), -100 / 60 - radius, 0.001, "NM");
  });

  it("lies where an aircraft comes that is flown on step by step, knowing nothing of the closed form", () => {
    for (const turns of ["left", "right"] as const) {
      const { question, racetrack, outline } = lined({ turns })!;
      const sign = turns === "right" ? 1 : -1;
      const rad = Math.PI / 180;
      let [east, north] = [0, 0];
      const step = (heading: number, seconds: number) => {
        east += ((100 * Math.sin(heading * rad) - 20 * Math.sin(192 * rad)) * seconds) / 3600;
        north += ((100 * Math.cos(heading * rad) - 20 * Math.cos(192 * rad)) * seconds) / 3600;
      };
      const turn = ((racetrack.outboundHeadingTrueDeg - racetrack.inboundHeadingTrueDeg) * sign + 720) % 360;
      const steps = 20_000;
      for (let i = 0; i < steps; i++)
        step(racetrack.inboundHeadingTrueDeg + (sign * turn * (i + 0.5)) / steps, turn / 3 / steps);
      // the first turn has a point every 5 degrees or less; then come the ends of the outbound leg
      const first = Math.ceil(turn / 5);
      const check = (row: number) => {
        const [s, c] = [Math.sin(question.inbound * rad), Math.cos(question.inbound * rad)];
        near(outline.alongNm[row]!, east * s + north * c, 1e-4, "NM");
        near(outline.crossTrackNm[row]!, east * c - north * s, 1e-4, "NM");
      };
      check(first);
      step(racetrack.outboundHeadingTrueDeg, racetrack.outboundS);
      check(first + 1);
    }
  });

  it("left turns mirror right turns when the wind is mirrored about the course", () => {
    const right = lined({ wind: { from: 247 - 55, speed: 20 } })!.outline;
    const left = lined({ wind: { from: 247 + 55, speed: 20 }, turns: "left" })!.outline;
    right.crossTrackNm.forEach((across, i) => {
      near(left.crossTrackNm[i]!, -across, 1e-9, "NM");
      near(left.alongNm[i]!, right.alongNm[i]!, 1e-9, "NM");
    });
  });
});
