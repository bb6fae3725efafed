/** Stabilised approaches as published: heights, limits and what else they ask for, as data with citations, no logic. */
import type { AngleSize, Feet, FeetPerMinute, Knots, Share } from "../quantity/units.ts";

export interface StabilisedCriteria {
  readonly id: "flight-safety-foundation" | "faa-handbook" | "transport-canada";
  /** Stable from here, above the airport or touchdown zone: in instrument and in visual conditions. */
  readonly instrument: Feet;
  readonly visual: Feet;
  readonly mostSink: FeetPerMinute;
  /** Needle, as a share of full scale; null where the text has none. */
  readonly lateral: Share | null;
  readonly vertical: Share | null;
  /** Over and under the reference (indicated) speed. */
  readonly speedOver: Knots | null;
  readonly speedUnder: Knots | null;
  /** Bank at `BANK_FROM` above ground and below. */
  readonly mostBankLow: AngleSize | null;
  readonly citation: string;
}

/** One of the usual two dots to a side. From memory: indicators with two dots; those with five have 2 in the same place. */
const ONE_DOT: Share = 0.5;

export const STABILISED: readonly StabilisedCriteria[] = [
  {
    id: "flight-safety-foundation",
    instrument: 1000,
    visual: 500,
    mostSink: 1000,
    lateral: ONE_DOT,
    vertical: ONE_DOT,
    speedOver: 20,
    speedUnder: 0,
    mostBankLow: null,
    citation:
      "Flight Safety Foundation, ALAR: within one dot, at most 1,000 ft/min, reference speed to reference +20 kt, by 1,000 ft (500 ft visual) above the airport, as quoted",
  },
  {
    id: "faa-handbook",
    instrument: 1000,
    visual: 500,
    mostSink: 1000,
    lateral: null,
    vertical: null,
    speedOver: null,
    speedUnder: null,
    mostBankLow: 15,
    citation:
      "FAA-H-8083-16, Instrument Procedures Handbook, from a poor copy: more than about 1,000 ft/min is unacceptable below 1,000 ft; bank under 15° below 500 ft",
  },
  {
    id: "transport-canada",
    instrument: 1000,
    visual: 500,
    mostSink: 1000,
    lateral: 0.5,
    vertical: 0.5,
    speedOver: 20,
    speedUnder: 0,
    mostBankLow: null,
    citation: "Transport Canada TP 9939: within half scale, at most 1,000 ft/min, +20/-0 kt, as quoted",
  },
];

/** From here down the bank has a limit. Source: the Instrument Procedures Handbook above. */
export const BANK_FROM: Feet = 500;

/** Heights above the threshold at which an approach is looked at. In all three of the texts above. */
export const GATES: readonly Feet[] = [1000, 500];

/** What the texts ask for and a track log cannot show. */
export const NOT_SHOWN = ["configuration", "power", "indicated-airspeed", "checklists", "pitch"] as const;
