/** An approach that one brief asks for once and a flight has twice is told to have been flown twice. */
import { expect, it } from "vitest";
import type { Brief } from "../../src/brief/brief.ts";
import { matchExercises } from "../../src/match/index.ts";
import { findLegs, smoothTrack } from "../../src/track/index.ts";
import { approachTo, beam, FIELD, type Row, straightIn, trackOf } from "../support/flown-approach.ts";

/** To 2 NM, round a racetrack of standard-rate turns back to 9 NM, and down to a landing. */
function twice(): { readonly rows: Row[]; readonly first: number; readonly second: number } {
  const height = (b: number) => Math.min(1650, beam(Math.max(0, b)));
  const rows = straightIn(9, () => 0, height, { roll: false, to: 2 });
  const first = rows.length;
  let { t, before, aside } = rows.at(-1)!;
  let angle = 0;
  for (const [to, seconds] of [
    [-180, 60 + 280],
    [-360, 60],
  ] as const)
    for (let k = 0; k < seconds; k++) {
      angle = Math.max(to, angle - 3);
      before -= (Math.cos((angle * Math.PI) / 180) * 90) / 3600;
      aside += (Math.sin((angle * Math.PI) / 180) * 90) / 3600;
      rows.push({ t: ++t, before, aside, height: 1650 });
    }
  const second = rows.length;
  const landing = straightIn(before - 1 / 40, () => 0, height);
  return { rows: [...rows, ...landing.map((r) => ({ ...r, t: r.t + t + 1 }))], first, second };
}

it("the one that fits best is measured, and the other is named by its rows", () => {
  const exercise = approachTo(FIELD);
  const { rows, first, second } = twice();
  const motion = smoothTrack(trackOf(exercise, rows))!;
  const path = { ...motion, legs: findLegs(motion) };
  const once = matchExercises({ exercises: [exercise] } as unknown as Brief, path);
  expect(once[0]!.span!.end).toBeGreaterThan(second);
  expect(once[0]!.again).toHaveLength(1);
  expect(once[0]!.again![0]!.end).toBeLessThan(first + 20);
  // asked for twice, each is its own and none is left
  const both = matchExercises({ exercises: [exercise, { ...exercise, index: 1 }] } as unknown as Brief, path);
  expect(both.map(({ span, again }) => [span!.end > second, again])).toEqual([
    [false, undefined],
    [true, undefined],
  ]);
});
