/** A hold for the next flight, as typed and as read: what the solver is asked in a pilot's own units. */
import type { Issue } from "../quantity/issue.ts";
import type { TurnSide } from "../standard/holding.ts";
import type { HoldLeg } from "./racetrack-question.ts";

/** As typed. Empty and absent are the same; only the first three must be given. */
export interface TypedHold {
  /** `247`, `247T`: magnetic unless marked true. */
  readonly inbound?: string;
  /** True airspeed, kt. */
  readonly tas?: string;
  /** `192/20`, `192T/20`, `calm`: where it comes from, in the reference of the inbound course unless marked. */
  readonly wind?: string;
  readonly turns?: string;
  /** `1 min`, `90 s`, `4 NM`; else what the standard gives for the height. */
  readonly leg?: string;
  /** ft. */
  readonly altitude?: string;
  /** Whose timing: `us` times the inbound leg, `icao` the outbound one. */
  readonly timing?: string;
  /** Most bank in the turns, degrees; else the standard's. */
  readonly bank?: string;
  /** Turn rate, deg/s; else the standard's. */
  readonly rate?: string;
  /** Half-width of the 95 % interval in every direction, kt. */
  readonly windDoubt?: string;
  /** `3E`, `2.5W`: needed only where course and wind are in different references, or the declination is given. */
  readonly variation?: string;
  /** `3E`, `2.5W`: the station's own, which a magnetic course is by, where it is not the variation of the day. */
  readonly declination?: string;
}
export type HoldField = keyof TypedHold;

/** The same as numbers. Every direction is in the one `reference`; headings and the wind read `compassDeg` more than the course. */
export interface AskedHold {
  readonly reference: "magnetic" | "true";
  readonly inboundDeg: number;
  readonly turns: TurnSide;
  readonly trueAirspeedKt: number;
  readonly windFromDeg: number;
  readonly windKt: number;
  readonly wind95Kt: number | null;
  readonly timing: "us" | "icao";
  readonly leg: HoldLeg;
  /** Whether the leg was typed, or is the standard's. */
  readonly legGiven: boolean;
  /** The station's declination less the variation; 0 where they are not told apart. */
  readonly compassDeg: number;
  readonly altitudeFt: number | null;
  readonly turnRateDegS: number;
  readonly mostBankDeg: number;
}

export interface ReadHold {
  /** Null where an issue stands in the way. */
  readonly asked: AskedHold | null;
  /** `where.path` is the field. */
  readonly issues: readonly Issue[];
}
