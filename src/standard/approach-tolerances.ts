/** Tolerances of approaches in tests of skill: published numbers as data, clause by clause, no logic. */
import type { AngleSize, Feet, Knots, NauticalMiles, Share } from "../quantity/units.ts";

/** How a limit is worded: reaching it is still in (`within`), or already out (`less-than`). */
export type Edge = "within" | "less-than";

export interface ApproachTolerance {
  readonly standard: "acs-8c" | "acs-8b" | "part-fcl";
  /** The part of the approach that it is for. */
  readonly part:
    | "non-precision-before"
    | "non-precision-final"
    | "precision-before"
    | "precision-final"
    | "missed"
    | "circling"
    | "arc"
    | "linear-final"
    | "angular-final"
    | "decision";
  readonly altitudeOver: Feet | null;
  readonly altitudeUnder: Feet | null;
  readonly heading: AngleSize | null;
  readonly speed: Knots | null;
  readonly lateral: Share | null;
  readonly vertical: Share | null;
  readonly edge: Edge;
  readonly citation: string;
}

const ACS = { heading: null, vertical: null } as const;

/** Trap: 8B says "less than 3/4-scale", 8C "within" or "no more than": at exactly 3/4 the first is out, the second in. */
export const APPROACH_TOLERANCES: readonly ApproachTolerance[] = [
  {
    ...ACS,
    standard: "acs-8c",
    part: "non-precision-before",
    altitudeOver: 100,
    altitudeUnder: 100,
    heading: 10,
    speed: 10,
    lateral: 0.75,
    edge: "within",
    citation: "FAA-S-ACS-8C VI.A.S9",
  },
  {
    ...ACS,
    standard: "acs-8c",
    part: "non-precision-final",
    altitudeOver: 100,
    altitudeUnder: 0,
    speed: 10,
    lateral: 0.75,
    edge: "within",
    citation: "FAA-S-ACS-8C VI.A.S12: MDA +100/-0 ft to the visual descent point or missed approach point",
  },
  {
    ...ACS,
    standard: "acs-8c",
    part: "precision-before",
    altitudeOver: 100,
    altitudeUnder: 100,
    heading: 10,
    speed: 10,
    lateral: 0.75,
    edge: "within",
    citation: "FAA-S-ACS-8C VI.B.S9",
  },
  {
    ...ACS,
    standard: "acs-8c",
    part: "precision-final",
    altitudeOver: null,
    altitudeUnder: null,
    speed: 10,
    lateral: 0.75,
    vertical: 0.75,
    edge: "within",
    citation: "FAA-S-ACS-8C VI.B.S12",
  },
  {
    ...ACS,
    standard: "acs-8c",
    part: "missed",
    altitudeOver: 100,
    altitudeUnder: 100,
    heading: 10,
    speed: 10,
    lateral: null,
    edge: "within",
    citation: "FAA-S-ACS-8C VI.C.S7",
  },
  {
    ...ACS,
    standard: "acs-8c",
    part: "circling",
    altitudeOver: 100,
    altitudeUnder: 0,
    heading: 10,
    speed: 10,
    lateral: null,
    edge: "within",
    citation: "FAA-S-ACS-8C VI.D.S5",
  },
  {
    ...ACS,
    standard: "acs-8c",
    part: "arc",
    altitudeOver: 100,
    altitudeUnder: 100,
    heading: 5,
    speed: 10,
    lateral: null,
    edge: "within",
    citation: "FAA-S-ACS-8C V.A.S5, S6: DME arc ±1 NM",
  },
  {
    ...ACS,
    standard: "acs-8b",
    part: "non-precision-final",
    altitudeOver: 100,
    altitudeUnder: 0,
    speed: 10,
    lateral: 0.75,
    edge: "less-than",
    citation: "FAA-S-ACS-8B VI.A, as quoted: less than 3/4-scale, MDA +100/-0 ft",
  },
  {
    ...ACS,
    standard: "part-fcl",
    part: "angular-final",
    altitudeOver: null,
    altitudeUnder: null,
    heading: 5,
    speed: 5,
    lateral: 0.5,
    vertical: 0.5,
    edge: "within",
    citation: "Part-FCL Appendix 7, flight test tolerances: half scale, azimuth and glide path",
  },
  {
    ...ACS,
    standard: "part-fcl",
    part: "decision",
    altitudeOver: 50,
    altitudeUnder: 0,
    heading: 5,
    speed: 5,
    lateral: null,
    edge: "within",
    citation:
      "Part-FCL Appendix 7: go-around at decision, minimum descent height or missed approach point +50/-0 ft",
  },
  {
    ...ACS,
    standard: "part-fcl",
    part: "linear-final",
    altitudeOver: 75,
    altitudeUnder: 75,
    heading: 5,
    speed: 5,
    lateral: 0.5,
    edge: "within",
    citation:
      "Part-FCL Appendix 7: normally at most half of the RNP value, brief excursions to the value; never more than 75 ft below the path, at most 75 ft above at or below 1,000 ft",
  },
];

/** Off the distance of an arc. */
export const ARC_TOLERANCE: { readonly distance: NauticalMiles; readonly citation: string } = {
  distance: 1,
  citation: "FAA-S-ACS-8C V.A.S6",
};
