/** Holding as published: the numbers against the printed ones, so that a slip of the hand shows. */
import { describe, expect, it } from "vitest";
import {
  DISTANCE_EXAMPLES,
  DISTANCE_LEG_LEAST,
  ENTRY_SECTORS,
  ENTRY_TOLERANCE,
  HOLDING,
  type HoldingStandard,
} from "../../src/standard/holding.ts";

const at = (standard: HoldingStandard, feet: number) =>
  standard.bands.find((b) => b.upTo === null || feet <= b.upTo)!;

describe("holding numbers", () => {
  it.each([
    [6000, 200],
    [6001, 230],
    [14_000, 230],
    [14_001, 265],
  ])("FAA AIM 5-3-8 j.2: at %i ft at most %i kt", (feet, knots) => {
    expect(at(HOLDING.us, feet).mostSpeed).toBe(knots);
  });

  it.each([
    [14_000, 230, 280, 60],
    [14_001, 240, 280, 90],
    [20_001, 265, 280, 90],
    [34_001, null, null, 90],
  ])(
    "PANS-OPS Vol. II table II-4-1-2, as quoted: at %i ft %s kt, %s kt in turbulence, %i s",
    (feet, normal, rough, seconds) => {
      const band = at(HOLDING.icao, feet);
      expect([band.mostSpeed, band.mostSpeedTurbulent, band.legTime]).toEqual([normal, rough, seconds]);
    },
  );

  it("FAA AIM 5-3-8 j.4: 1 min inbound to 14,000 ft, 1.5 min above; PANS-OPS times the outbound leg", () => {
    expect(HOLDING.us.timed).toBe("inbound");
    expect(HOLDING.icao.timed).toBe("outbound");
    expect([at(HOLDING.us, 14_000).legTime, at(HOLDING.us, 14_001).legTime]).toEqual([60, 90]);
  });

  it("FAA AIM 5-3-8 j.6: 3 deg/s, 30 deg, 25 deg with a flight director; PANS-OPS: 25 deg", () => {
    expect([HOLDING.us.turnRate, HOLDING.us.mostBank, HOLDING.us.mostBankFlightDirector]).toEqual([
      3, 30, 25,
    ]);
    expect([HOLDING.icao.turnRate, HOLDING.icao.mostBank]).toEqual([3, 25]);
  });

  it("FAA AIM 5-3-8 j.5: the printed distances, 10 + 5 = 15 toward the station, 28 - 8 = 20 away from it", () => {
    for (const { inboundToStation, fix, leg, outboundEnds } of DISTANCE_EXAMPLES) {
      expect(inboundToStation ? fix + leg : fix - leg).toBe(outboundEnds);
    }
    expect(DISTANCE_EXAMPLES.map((e) => e.outboundEnds)).toEqual([15, 20]);
  });

  it("PANS-OPS Vol. II 1.3.2.3: at least 60 s outbound and 30 s inbound", () => {
    expect(DISTANCE_LEG_LEAST).toEqual({ outbound: 60, inbound: 30 });
  });

  it("sectors go all round: 180, 70 and 110 degrees (FAA AIM FIG 5-3-4; widths from memory), tolerance 5", () => {
    const widths = ENTRY_SECTORS.map(({ from, to }) => (to - from + 360) % 360);
    expect(widths).toEqual([180, 70, 110]);
    expect(ENTRY_TOLERANCE).toBe(5);
  });
});
