/** By construction: full scale of a VOR needle is 10° (FAA AIM 1-1-4, from memory), at a mile tan 10° = 0.1763 NM. */
import { expect, it } from "vitest";
import { needleAtTheMile } from "../../src/course/at-the-mile.ts";
import { NEEDLE_SCALES } from "../../src/standard/needle.ts";
import { near } from "../support/near.ts";

const rowsOf = (rows: readonly (readonly [distance: number, across: number, past: 0 | 1])[]) => ({
  length: rows.length,
  distanceToFixNm: Float64Array.from(rows, ([d]) => d),
  crossTrackNm: Float64Array.from(rows, ([, a]) => a),
  pastFix: Uint8Array.from(rows, ([, , p]) => p),
});
const INBOUND = rowsOf([
  [3, 0.14, 0],
  [1.5, 0.14, 0],
  [0.5, 0.14, 0],
]);

it("0.14 NM beside the course, from 1.5 to 0.5 NM in one step: at the mile 0.14 / 0.1763 of full scale", () => {
  near(
    needleAtTheMile(NEEDLE_SCALES.vor, INBOUND, { start: 0, end: 2 }),
    0.14 / 0.1763,
    0.001,
    "of full scale",
  );
});

it("through the station in one step, and outbound from it likewise", () => {
  const through = rowsOf([
    [2, 0.1, 0],
    [1, -0.05, 1],
  ]);
  // a third of the way: 0.05 NM
  near(
    needleAtTheMile(NEEDLE_SCALES.vor, through, { start: 0, end: 1 }),
    0.05 / 0.1763,
    0.001,
    "of full scale",
  );
  const outbound = rowsOf([
    [0.5, 0, 0],
    [1.5, 0.2, 0],
    [3, 0.2, 0],
  ]);
  near(
    needleAtTheMile(NEEDLE_SCALES.vor, outbound, { start: 1, end: 3 }),
    0.1 / 0.1763,
    0.001,
    "of full scale",
  );
});

it("nothing where a linear needle is judged, or where the span ends elsewhere", () => {
  expect(needleAtTheMile(NEEDLE_SCALES["rnav-1"], INBOUND, { start: 0, end: 2 })).toBe(0);
  expect(needleAtTheMile(NEEDLE_SCALES.vor, INBOUND, { start: 0, end: 1 })).toBe(0);
  expect(needleAtTheMile(NEEDLE_SCALES.vor, INBOUND, { start: 0, end: 3 })).toBe(0);
});
