/** Whether two debriefs are of one flight: by where it was when. */
import { describe, expect, it } from "vitest";
import { type FlightMark, isSameFlight } from "../../src/cli/same-flight.ts";

const MARK: FlightMark = {
  startUtc: "2026-06-09T01:00:00.000Z",
  endUtc: "2026-06-09T02:00:00.000Z",
  distanceNm: 80,
  variationDeg: 20,
  trace: [
    [35.6, 179.9999],
    [35.7, -179.9],
  ],
};
const moved = (latitude: number, longitude: number): FlightMark => ({
  ...MARK,
  trace: MARK.trace!.map(([lat, lon]) => [lat + latitude, lon + longitude] as const),
});

describe("one flight", () => {
  // FAI IGC files write thousandths of a minute, 0.000017 degrees (technical specification, A4.1)
  it("is the same in a format with coarser places", () => {
    expect(isSameFlight(MARK, moved(0.00002, -0.00002))).toBe(true);
  });
  it("is the same on both sides of the antimeridian", () => {
    const over = [[35.6, -179.9999], MARK.trace![1]!] as FlightMark["trace"];
    expect(isSameFlight(MARK, { ...MARK, trace: over })).toBe(true);
  });
  it("without times is told by its places alone", () => {
    const untimed = { ...MARK, startUtc: null, endUtc: null };
    expect(isSameFlight(untimed, { ...untimed })).toBe(true);
    expect(isSameFlight(untimed, { ...untimed, trace: moved(0.01, 0).trace })).toBe(false);
  });
});

describe("another flight", () => {
  it.each([
    ["a mile aside", moved(1 / 60, 0)],
    ["half the world away", moved(0, 180)],
    ["a second later", { ...MARK, startUtc: "2026-06-09T01:00:01.000Z" }],
  ])("%s", (_, other) => expect(isSameFlight(MARK, other)).toBe(false));

  it("is told from a debrief of before by its length and its variation", () => {
    const old = { ...MARK, trace: null };
    expect(isSameFlight(old, MARK)).toBe(true);
    expect(isSameFlight({ ...old, distanceNm: 82 }, MARK)).toBe(false);
    expect(isSameFlight({ ...old, variationDeg: 20.05 }, MARK)).toBe(false);
    expect(
      isSameFlight({ ...old, startUtc: null, endUtc: null }, { ...MARK, startUtc: null, endUtc: null }),
    ).toBe(false);
  });
});
