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

it("the last whole one is measured, and the other is named by its rows", () => {
  const exercise = approachTo(FIELD);
  const { rows, first, second } = twice();
  const motion = smoothTrack(trackOf(exercise, rows))!;
  const path = { ...motion, legs: findLegs(motion) };
  const once = matchExercises({ exercises: [exercise] } as unknown as Brief, path);
  expect(once[0]!.span!.end).toBeGreaterThan(second);
  expect(once[0]!.again).toHaveLength(1);
  expect(once[0]!.again![0]!.end).toBeLessThan(first + 20);
  expect([once[0]!.asked, once[0]!.lastWhole]).toEqual([1, true]);
  // asked for twice, each is its own and none is left
  const both = matchExercises({ exercises: [exercise, { ...exercise, index: 1 }] } as unknown as Brief, path);
  expect(both.map(({ span, again }) => [span!.end > second, again])).toEqual([
    [false, undefined],
    [true, undefined],
  ]);
});

/** Goes on from the last row at 90 kt and a height, turning at 3 degrees a second to each track in turn. */
function turned(
  rows: Row[],
  height: number,
  legs: readonly (readonly [to: number, seconds: number])[],
): void {
  let { t, before, aside } = rows.at(-1)!;
  let angle = 0;
  for (const [to, seconds] of legs)
    for (let k = 0; k < seconds; k++) {
      angle += Math.max(-3, Math.min(3, to - angle));
      before -= (Math.cos((angle * Math.PI) / 180) * 90) / 3600;
      aside += (Math.sin((angle * Math.PI) / 180) * 90) / 3600;
      rows.push({ t: ++t, before, aside, height });
    }
}
const down = (b: number) => Math.min(1650, beam(Math.max(0, b)));
function matchedWith(rows: Row[], heights = true) {
  const { t, before, aside } = rows.at(-1)!;
  const landing = straightIn(before - 1 / 40, () => aside, down).map((r) => ({ ...r, t: r.t + t + 1 }));
  const exercise = approachTo(FIELD);
  const { altitude, ...motion } = smoothTrack(trackOf(exercise, [...rows, ...landing]))!;
  const legs = findLegs({ altitude, ...motion });
  const path = { ...motion, ...(heights ? { altitude } : {}), legs };
  return matchExercises({ exercises: [exercise] } as unknown as Brief, path)[0]!;
}

it.each([7, 6, 5, 4])("a turn once round to lose time %s NM out is a part of one approach", (at) => {
  const rows = straightIn(10, () => 0, down, { roll: false, to: at });
  turned(rows, down(at), [[360, 120]]);
  const match = matchedWith(rows);
  expect(match.span).not.toBeNull();
  expect(match.again).toBeUndefined();
});

it("so are two laps of a hold at the final fix", () => {
  const rows = straightIn(
    8,
    () => 0,
    () => 1650,
    { roll: false, to: 5 },
  );
  turned(
    rows,
    1650,
    [180, 360, 540, 720].map((to) => [to, 120] as const),
  );
  expect(matchedWith(rows).again).toBeUndefined();
});

it("without heights one that came close in is another, and one that turned away far out is not told", () => {
  const back = [
    [-180, 460],
    [-360, 60],
  ] as const;
  for (const [to, times] of [
    [0.5, 1],
    [3, 0],
  ] as const) {
    const rows = straightIn(9, () => 0, down, { roll: false, to });
    turned(rows, 1650, back);
    expect(matchedWith(rows, false).again ?? []).toHaveLength(times);
  }
});

it("asked for twice and flown three times: two that the brief asks for, and one more", () => {
  const back = [
    [-180, 60 + 280],
    [-360, 60],
  ] as const;
  const rows = straightIn(9, () => 0, down, { roll: false, to: 1 });
  turned(rows, 1650, back);
  const { before, aside, t } = rows.at(-1)!;
  const second = straightIn(before - 1 / 40, () => aside, down, { roll: false, to: 1 });
  rows.push(...second.map((r) => ({ ...r, t: r.t + t + 1 })));
  turned(rows, 1650, back);
  const last = rows.at(-1)!;
  const landing = straightIn(last.before - 1 / 40, () => last.aside, down);
  const exercise = approachTo(FIELD);
  const all = [...rows, ...landing.map((r) => ({ ...r, t: r.t + last.t + 1 }))];
  const motion = smoothTrack(trackOf(exercise, all))!;
  const path = { ...motion, legs: findLegs(motion) };
  const twiceAsked = { exercises: [exercise, { ...exercise, index: 1 }] } as unknown as Brief;
  const told = matchExercises(twiceAsked, path).map(({ again, asked }) => [again?.length, asked]);
  expect(told).toEqual([
    [1, 2],
    [1, 2],
  ]);
});
