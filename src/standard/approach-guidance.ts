/** What full-scale deflection means on an approach, aid by aid: published numbers as data, no logic. */
import type { AngleSize, Feet, Metres, NauticalMiles, Share } from "../quantity/units.ts";

export type GuidanceKind =
  | "localizer"
  | "vor"
  | "lnav"
  | "lpv"
  | "lnav-vnav"
  | "rnp"
  /** No aid: the extended centre line of a runway, from its two ends. */
  | "centre-line";

/** Feet and angles from one side to the other, as localizers are published. */
export interface LocalizerStandard {
  readonly widthAtThreshold: Feet;
  readonly leastWidth: AngleSize;
  readonly mostWidth: AngleSize;
  /** The antenna stands so far beyond the far end of the runway where nobody says otherwise. */
  readonly antennaBeyondEnd: Feet;
  readonly citation: string;
}

/** Trap: 700 ft and 3° to 6° are the whole width, fly-left to fly-right; full scale is half of it. */
export const LOCALIZER: LocalizerStandard = {
  widthAtThreshold: 700,
  leastWidth: 3,
  mostWidth: 6,
  antennaBeyondEnd: 1000,
  citation:
    "FAA AIM 1-1-9 b.1: 700 ft wide at the threshold; 3° to 6° in all; antenna 1,000 ft beyond the end: common practice, no source",
};

/** Half of the glide path's width, centre to full deflection, and where its antenna stands. */
export const GLIDE_PATH = {
  fullScale: 0.7,
  usualAngle: 3,
  antennaPastThreshold: [750, 1250],
  citation: "FAA AIM 1-1-9 d: 1.4° in all",
} as const satisfies {
  fullScale: AngleSize;
  usualAngle: AngleSize;
  antennaPastThreshold: readonly [Feet, Feet];
  citation: string;
};

/** Height of the path over the threshold where the brief gives none. Common practice, no source: 50 ft. */
export const THRESHOLD_CROSSING: Feet = 50;

/** Linear scales of satellite guidance and the ramp between them. */
export const LNAV = {
  terminal: 1,
  final: 0.3,
  /** The scale shrinks from so far before the final fix to the fix. */
  ramp: 2,
  citation: "FAA AIM 1-1-17: ±1 NM to ±0.3 NM from 2 NM before the final approach fix to the fix",
} as const satisfies {
  terminal: NauticalMiles;
  final: NauticalMiles;
  ramp: NauticalMiles;
  citation: string;
};

/** Angular final of satellite guidance with vertical path: LPV and LNAV/VNAV. */
export const SATELLITE_ANGULAR = {
  widthAtThreshold: 700,
  most: 0.3,
  /** The point that the angle comes from stands so far beyond the far end (flight path alignment point) of the runway. */
  originBeyondEnd: 305,
  citation:
    "FAA AIM 1-1-18: ±1 NM until 2 NM before the final fix, then angular, at most ±0.3 NM, usually 700 ft wide at the threshold; GARP 305 m beyond the FPAP (ICAO Annex 10, as quoted)",
} as const satisfies {
  widthAtThreshold: Feet;
  most: NauticalMiles;
  originBeyondEnd: Metres;
  citation: string;
};

/** Vertical full scale of satellite guidance: a share of the angle between linear limits. From memory: DO-229 was not at hand. */
export const SATELLITE_VERTICAL = {
  share: 0.25,
  least: 15,
  most: 150,
  citation: "RTCA DO-229, from memory: a quarter of the glide path angle, between ±15 m and ±150 m",
} as const satisfies { share: Share; least: Metres; most: Metres; citation: string };

/** Full scale is the RNP value where nobody says otherwise. RNP APCH: 1 NM before the final segment, 0.3 NM on it. */
export const RNP = {
  final: 0.3,
  citation: "FAA AIM 1-2-2, table 1-2-1: the RNP value is the distance each side of the course",
} as const satisfies { final: NauticalMiles; citation: string };

/** Half-width of a localizer by the distance from its antenna to the threshold: printed values, centre to one side. Source: arithmetic of the 700 ft definition with its limits. */
export const LOCALIZER_BY_ANTENNA: readonly { readonly antenna: Feet; readonly half: AngleSize }[] = [
  { antenna: 6679, half: 3 },
  { antenna: 8000, half: 2.505 },
  { antenna: 9000, half: 2.227 },
  { antenna: 10_000, half: 2.005 },
  { antenna: 12_000, half: 1.671 },
  { antenna: 13_366, half: 1.5 },
];
