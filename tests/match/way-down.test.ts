/** Of two approaches on one final, the way down tells which is the one with the glide path and which the one with level-offs. */
import { expect, it } from "vitest";
import type { ApproachExercise, Brief } from "../../src/brief/brief.ts";
import { matchExercises } from "../../src/match/index.ts";
import { findLegs, smoothTrack } from "../../src/track/index.ts";
import { approachTo, beam, FIELD, type Row, straightIn, trackOf } from "../support/flown-approach.ts";

/** Down the beam to 220 ft, and drifting half a mile aside at the end: the other one is nearer to the course. */
const beamed = (b: number) => Math.min(1650, beam(b));
const drifting = (b: number) => (b < 2 ? 0.2 * (2 - b) : 0);
/** Dived to 900 ft until 2.5 NM, then to 540 ft, level to where the climb begins. */
const stepped = (b: number) =>
  b > 2.5 ? Math.max(900, Math.min(1650, 1650 - (5 - b) * 600)) : Math.max(540, 900 - (2.5 - b) * 600);

const precision = approachTo(FIELD, { minimum: { kind: "decision", altitude: FIELD.elevation + 200 } });
const levels = approachTo(FIELD, {
  glidePath: null,
  stepDowns: [{ name: "2.5 NM", distance: 2.5, altitude: FIELD.elevation + 880 }],
  minimum: { kind: "descent", altitude: FIELD.elevation + 500 },
});

/** Both flown to half a mile, with a climb and a racetrack back to 9 NM between them. */
function flown(finals: readonly (readonly [(b: number) => number, (b: number) => number])[], heights = true) {
  const rows: Row[] = [];
  const ends: number[] = [];
  for (const [aside, height] of finals) {
    const t0 = (rows.at(-1)?.t ?? -1) + 1;
    rows.push(...straightIn(9, aside, height, { roll: false, to: 0.5 }).map((r) => ({ ...r, t: r.t + t0 })));
    ends.push(rows.length);
    let { t, before, aside: beside } = rows.at(-1)!;
    let angle = 0;
    // up to 1,650 ft at 600 ft/min, a standard-rate turn back
    for (let k = 0; k < 460; k++) {
      angle = Math.max(-180, angle - 3);
      before -= (Math.cos((angle * Math.PI) / 180) * 90) / 3600;
      beside += (Math.sin((angle * Math.PI) / 180) * 90) / 3600;
      rows.push({ t: ++t, before, aside: beside, height: Math.min(1650, rows.at(-1)!.height + 10) });
    }
    for (let k = 0; k < 60; k++) {
      angle -= 3;
      before -= (Math.cos((angle * Math.PI) / 180) * 90) / 3600;
      beside += (Math.sin((angle * Math.PI) / 180) * 90) / 3600;
      rows.push({ t: ++t, before, aside: beside, height: 1650 });
    }
  }
  const { altitude, ...motion } = smoothTrack(trackOf(precision, rows))!;
  const path = { ...motion, ...(heights ? { altitude } : {}), legs: findLegs({ altitude, ...motion }) };
  /** Which of the finals each exercise was found as, from 0. */
  return (...exercises: ApproachExercise[]) =>
    matchExercises({ exercises } as unknown as Brief, path).map(({ span }) =>
      span ? ends.findIndex((end) => span.start < end) : null,
    );
}

it("asked for one, the one whose way down fits is taken, though the other held the course better", () => {
  const beamFirst = flown([
    [drifting, beamed],
    [() => 0, stepped],
  ]);
  expect(beamFirst(precision)).toEqual([0]);
  expect(beamFirst(levels)).toEqual([1]);
});

it("asked for both in the other order, each is the one that fits", () => {
  const beamFirst = flown([
    [() => 0, beamed],
    [() => 0, stepped],
  ]);
  expect(beamFirst(precision, levels)).toEqual([0, 1]);
  expect(beamFirst(levels, precision)).toEqual([1, 0]);
  // the same twice stays in order
  expect(beamFirst(precision, precision)).toEqual([0, 1]);
});

it("without heights the order of the brief stands", () => {
  const finals = [
    [() => 0, beamed],
    [() => 0, stepped],
  ] as const;
  expect(flown(finals, false)(levels, precision)).toEqual([0, 1]);
});
