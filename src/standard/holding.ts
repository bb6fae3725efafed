/** Holding as published: speeds, times, bank, entries and turning distances, as data with citations, no logic. */
import type {
  AngleSize,
  DegreesPerSecond,
  FeetMsl,
  Knots,
  NauticalMiles,
  Seconds,
} from "../quantity/units.ts";

export type TurnSide = "left" | "right";

/** A band of heights, from above the band before up to and with `upTo`; null = no upper limit. */
export interface HoldingBand {
  readonly upTo: FeetMsl | null;
  /** Indicated airspeed; null where the limit is a Mach number. */
  readonly mostSpeed: Knots | null;
  /** In turbulence, where the standard has one: a lesser limit by Mach number is not in here. */
  readonly mostSpeedTurbulent: Knots | null;
  /** Limited to categories A and B. */
  readonly mostSpeedLight: Knots | null;
  readonly legTime: Seconds;
}

export interface HoldingStandard {
  readonly id: "us" | "icao";
  /** The leg to which the time belongs. */
  readonly timed: "inbound" | "outbound";
  readonly bands: readonly HoldingBand[];
  /** The least bank of these governs. */
  readonly turnRate: DegreesPerSecond;
  readonly mostBank: AngleSize;
  readonly mostBankFlightDirector: AngleSize;
  /** Slow down within this before the fix. */
  readonly slowWithin: Seconds | null;
  /** Outbound correction over the inbound one, where the standard names a number. */
  readonly outboundFactor: number | null;
  readonly citation: string;
}

export const HOLDING: Readonly<Record<"us" | "icao", HoldingStandard>> = {
  us: {
    id: "us",
    timed: "inbound",
    bands: [
      { upTo: 6000, mostSpeed: 200, mostSpeedTurbulent: null, mostSpeedLight: null, legTime: 60 },
      { upTo: 14_000, mostSpeed: 230, mostSpeedTurbulent: null, mostSpeedLight: null, legTime: 60 },
      { upTo: null, mostSpeed: 265, mostSpeedTurbulent: null, mostSpeedLight: null, legTime: 90 },
    ],
    turnRate: 3,
    mostBank: 30,
    mostBankFlightDirector: 25,
    slowWithin: 180,
    outboundFactor: 3,
    citation: "FAA AIM 5-3-8 j: j.2 speeds, j.4 times, j.6 turns, speed and wind (some editions 5-3-7)",
  },
  icao: {
    id: "icao",
    timed: "outbound",
    bands: [
      { upTo: 14_000, mostSpeed: 230, mostSpeedTurbulent: 280, mostSpeedLight: 170, legTime: 60 },
      { upTo: 20_000, mostSpeed: 240, mostSpeedTurbulent: 280, mostSpeedLight: null, legTime: 90 },
      { upTo: 34_000, mostSpeed: 265, mostSpeedTurbulent: 280, mostSpeedLight: null, legTime: 90 },
      { upTo: null, mostSpeed: null, mostSpeedTurbulent: null, mostSpeedLight: null, legTime: 90 }, // Mach 0.83
    ],
    turnRate: 3,
    mostBank: 25,
    mostBankFlightDirector: 25,
    slowWithin: null,
    outboundFactor: null,
    citation:
      "ICAO Doc 8168 PANS-OPS Vol. I, holding (speeds also Vol. II table II-4-1-2), as quoted in national publications",
  },
};

/**
 * Sectors of the heading on reaching the fix, from the inbound course toward the holding side's turn (clockwise for
 * right turns): from `from` up to `to`. Source: FAA AIM 5-3-8 j.7, FIG 5-3-4 (the 70 degree line); widths from memory.
 */
export const ENTRY_SECTORS = [
  { entry: "direct", from: 290, to: 110 },
  { entry: "teardrop", from: 110, to: 180 },
  { entry: "parallel", from: 180, to: 290 },
] as const;
export type HoldEntry = (typeof ENTRY_SECTORS)[number]["entry"];

/** Within this of a sector's border either entry is accepted. Source: FAA AIM 5-3-8 j.6(d). */
export const ENTRY_TOLERANCE: AngleSize = 5;

/**
 * Holds by distance: where the outbound leg ends, as a reading of the station's distance.
 * Source: FAA AIM 5-3-8 j.5, FIG 5-3-5 and 5-3-6 (printed examples).
 */
export const DISTANCE_EXAMPLES: readonly {
  readonly inboundToStation: boolean;
  readonly fix: NauticalMiles;
  readonly leg: NauticalMiles;
  readonly outboundEnds: NauticalMiles;
}[] = [
  { inboundToStation: true, fix: 10, leg: 5, outboundEnds: 15 },
  { inboundToStation: false, fix: 28, leg: 8, outboundEnds: 20 },
];

/** A published outbound distance should allow at least this much flight outbound, and this much inbound. Source: PANS-OPS Vol. II 1.3.2.3. */
export const DISTANCE_LEG_LEAST = { outbound: 60, inbound: 30 } as const satisfies Record<string, Seconds>;
