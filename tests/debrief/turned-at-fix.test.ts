/** By construction: a fix passed, left and passed again may have been an entry; passed straight on it was none. */
import { expect, it } from "vitest";
import type { HoldExercise } from "../../src/brief/brief.ts";
import { turnedAtFix } from "../../src/debrief/turned-at-fix.ts";
import type { Motion } from "../../src/track/motion.ts";

const START = Date.UTC(2026, 9, 17, 1, 0, 0);
const FIX = { latitude: 35.6, longitude: 172.3 };
const HOLD = { fix: FIX, between: null } as unknown as HoldExercise;

/** Northward by a minute of latitude a minute of time: NM north of the fix, and the track, at each minute. */
function motionOf(rows: readonly (readonly [minute: number, north: number, track: number])[]): Motion {
  return {
    time: Float64Array.from(rows, ([minute]) => START + minute * 60_000),
    latitude: Float64Array.from(rows, ([, north]) => FIX.latitude + north / 60),
    longitude: Float64Array.from(rows, () => FIX.longitude),
    trackAngle: Float64Array.from(rows, ([, , track]) => track),
  } as unknown as Motion;
}

const ENTRY = motionOf([
  [0, -4, 0],
  [1, 0, 0],
  [2, 3, 10],
  [3, 4, 120],
  [4, 2, 190],
  [5, 0, 180],
  [6, -3, 180],
]);

it("out, round and back over the fix is told with both passages", () => {
  expect(turnedAtFix(HOLD, ENTRY, [])).toMatchObject({
    code: "turned-at-fix",
    evidence: { fromUtc: "2026-10-17T01:01:00Z", toUtc: "2026-10-17T01:05:00Z" },
  });
});

it.each<[string, Motion, Parameters<typeof turnedAtFix>[2]]>([
  ["straight on", motionOf([0, 1, 2, 3].map((m) => [m, 4 * m - 4, 0])), []],
  [
    "back only after a quarter of an hour",
    motionOf([
      [0, 0, 0],
      [8, 20, 120],
      [16, 0, 200],
    ]),
    [],
  ],
  ["within another exercise", ENTRY, [{ start: 0, end: 7 }]],
])("%s: nothing is told", (_, motion, flown) => {
  expect(turnedAtFix(HOLD, motion, flown)).toBeNull();
});
