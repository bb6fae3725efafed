/** Of two tries at one approach faults do not choose: the last that was flown whole is the one that is meant. */
import { describe, expect, it } from "vitest";
import type { ApproachExercise, Brief } from "../../src/brief/brief.ts";
import { matchExercises } from "../../src/match/index.ts";
import { findLegs, smoothTrack } from "../../src/track/index.ts";
import { approachTo, beam, FIELD, type Row, straightIn, trackOf } from "../support/flown-approach.ts";

const exercise = approachTo(FIELD);
const tidy = (b: number) => Math.min(1650, beam(Math.max(0, b)));
/** Begun late: 200 ft above the path until 1 NM, then down to it. */
const high = (b: number) => Math.min(1650, tidy(b) + 200 * Math.min(1, Math.max(0, b)));

/** Goes on from the last row at 90 kt, climbing to a height, turning at 3 degrees a second to each track in turn. */
function round(rows: Row[], top: number, legs: readonly (readonly [to: number, seconds: number])[]): void {
  let { t, before, aside, height } = rows.at(-1)!;
  let angle = 0;
  for (const [to, seconds] of legs)
    for (let k = 0; k < seconds; k++) {
      angle += Math.max(-3, Math.min(3, to - angle));
      before -= (Math.cos((angle * Math.PI) / 180) * 90) / 3600;
      aside += (Math.sin((angle * Math.PI) / 180) * 90) / 3600;
      height = Math.min(top, height + 10);
      rows.push({ t: ++t, before, aside, height });
    }
}
/** A final to half a mile, round to `out` seconds of a way back, and a second one to a landing. */
function twice(first: (b: number) => number, second: (b: number) => number, out = 460, top = 1650) {
  const rows = straightIn(9, () => 0, first, { roll: false, to: 0.5 });
  const gone = rows.length;
  round(rows, top, [
    [-180, out],
    [-360, 60],
  ]);
  const { t, before, aside } = rows.at(-1)!;
  // what is left of the two half turns is closed within the last miles
  const beside = (b: number) => aside * Math.max(0, b / before);
  const landing = straightIn(before - 1 / 40, beside, (b) => Math.min(top, second(b)));
  const all = [...rows, ...landing.map((r) => ({ ...r, t: r.t + t + 1 }))];
  const motion = smoothTrack(trackOf(exercise, all))!;
  const path = { ...motion, legs: findLegs(motion) };
  const asked = (...exercises: ApproachExercise[]) =>
    matchExercises({ exercises } as unknown as Brief, path).map(({ span, again }) => [
      span!.start < gone ? "first" : "second",
      (again ?? []).map(({ start }) => (start < gone ? "first" : "second")),
    ]);
  return asked;
}

describe("by construction: one approach in the brief, two on the flight", () => {
  it.each([
    ["the better one first", tidy, high],
    ["the better one last", high, tidy],
    ["both alike", tidy, tidy],
  ])("%s: the last is measured and the other one named", (_, first, second) => {
    expect(twice(first, second)(exercise)).toEqual([["second", ["first"]]]);
  });
  it("asked for twice, each is its own", () => {
    expect(twice(tidy, high)(exercise, { ...exercise, index: 1 })).toEqual([
      ["first", []],
      ["second", []],
    ]);
  });
  it("a circuit that leads to a landing after it, its final begun inside the final fix, is not the approach", () => {
    // back to 2 NM before the threshold at 700 ft, where the final fix is at 5 NM
    expect(twice(tidy, (b) => Math.min(700, tidy(b)), 160, 700)(exercise)[0]![0]).toBe("first");
  });
});
