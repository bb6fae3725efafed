/** What full scale of the needle means at each distance from the threshold, guidance by guidance. */
import type { ApproachExercise } from "../brief/brief.ts";
import { alongAcrossExact, inverse, type Position } from "../geodesy/index.ts";
import {
  DEGREES_PER_RADIAN,
  feetFromMetres,
  METRES_PER_FOOT,
  METRES_PER_NAUTICAL_MILE,
  nauticalMilesFromMetres,
} from "../quantity/factor.ts";
import { acrossAt, type FullScale, needleOf } from "../quantity/needle.ts";
import type { AngleSize, Feet, NauticalMiles, Share } from "../quantity/units.ts";
import { type GuidanceKind, LNAV, LOCALIZER, RNP, SATELLITE_ANGULAR } from "../standard/approach-guidance.ts";
import { NEAR_STATION, NEEDLE_SCALES } from "../standard/needle.ts";

export interface NeedleGuide {
  readonly kind: GuidanceKind;
  readonly label: string;
  readonly citation: string;
  /** No needle was there (or its width is not known): this is what a usual one would have shown. */
  readonly supposed: boolean;
  /** Centre to full deflection, and where the angle has its origin; null where the scale is linear. */
  readonly halfAngle: AngleSize | null;
  /** How far before the threshold the station stands that the needle swings at overhead; null where none does. */
  readonly station: NauticalMiles | null;
  /** Full scale, and the distance to the origin of an angle, so far before the threshold (negative: past it). */
  at(distance: NauticalMiles): { readonly scale: FullScale; readonly reach: NauticalMiles };
}

export function needleAt(guide: NeedleGuide, distance: NauticalMiles, across: NauticalMiles): Share {
  const { scale, reach } = guide.at(distance);
  return needleOf(scale, across, reach);
}

/** Beside a station the needle swings by a few feet, and is not judged; a localizer keeps its width to the threshold. */
export const nearStation = (
  { station }: NeedleGuide,
  distance: NauticalMiles,
  across: NauticalMiles,
): boolean => station !== null && Math.hypot(distance - station, across) < NEAR_STATION;

/** Whether full scale rests on a length of the runway that nobody gave: the antenna, or the origin of the angle, stands past its end. */
export const restsOnAssumedLength = ({
  guidance: { kind, antenna, width },
  runway,
}: ApproachExercise): boolean =>
  runway.lengthAssumed === true &&
  (kind === "localizer"
    ? antenna === null && width === null
    : kind === "lpv" || kind === "lnav-vnav" || kind === "centre-line");

/** Half of the width between the two full deflections. */
export function fullScaleAt(guide: NeedleGuide, distance: NauticalMiles): NauticalMiles {
  const { scale, reach } = guide.at(distance);
  return acrossAt(scale, 1, reach);
}

/** How far a place lies before the threshold along the final course, and off it, right positive. */
export function onFinal(
  { course }: ApproachExercise,
  place: Position,
): { readonly before: NauticalMiles; readonly aside: NauticalMiles } {
  const { along, across } = alongAcrossExact(course, place);
  return { before: -nauticalMilesFromMetres(along), aside: nauticalMilesFromMetres(across) };
}

const nauticalMilesFromFeet = (feet: Feet): NauticalMiles =>
  (feet * METRES_PER_FOOT) / METRES_PER_NAUTICAL_MILE;

export function guideOf(exercise: ApproachExercise): NeedleGuide {
  const { guidance, runway, finalFix } = exercise;
  const length = inverse(runway.threshold, runway.end).distance;
  const fixAt = finalFix && onFinal(exercise, finalFix).before;
  switch (guidance.kind) {
    case "localizer":
    case "centre-line":
      return localizer(guidance, feetFromMetres(length));
    case "vor": {
      const station = guidance.station ? onFinal(exercise, guidance.station).before : 0;
      const { fullScaleDeg, label, citation } = vorScale();
      const scale: FullScale = { kind: "angular", fullScaleDeg };
      // nearer than that the width stays as it is there, to tell whether the final was joined
      const at = (distance: NauticalMiles) => ({
        scale,
        reach: Math.max(NEAR_STATION, Math.abs(distance - station)),
      });
      return { kind: "vor", label, citation, supposed: false, halfAngle: fullScaleDeg, station, at };
    }
    case "lnav":
      return linear(
        "lnav",
        "LNAV, ±1 NM, ±0.3 NM from the final fix",
        LNAV.citation,
        fixAt,
        () => LNAV.final,
      );
    case "rnp": {
      const { rnp } = guidance;
      if (rnp === null)
        return linear("rnp", "RNP, ±1 NM, ±0.3 NM from the final fix", RNP.citation, fixAt, () => RNP.final);
      return linear("rnp", `RNP ${rnp}, ±${rnp} NM`, RNP.citation, null, () => rnp);
    }
    case "lpv":
    case "lnav-vnav": {
      const origin = nauticalMilesFromMetres(length + SATELLITE_ANGULAR.originBeyondEnd);
      const half = nauticalMilesFromFeet(SATELLITE_ANGULAR.widthAtThreshold / 2);
      const width = (distance: NauticalMiles) =>
        // past the threshold the width stays that of the threshold
        Math.min(SATELLITE_ANGULAR.most, (half * (origin + Math.max(0, distance))) / origin);
      const label = guidance.kind === "lpv" ? "LPV, angular" : "LNAV/VNAV, angular";
      const guide = linear(guidance.kind, label, SATELLITE_ANGULAR.citation, fixAt, width);
      return { ...guide, halfAngle: Math.atan2(half, origin) * DEGREES_PER_RADIAN };
    }
  }
}

function vorScale() {
  const { vor } = NEEDLE_SCALES;
  if (vor.kind !== "angular") throw new RangeError("invalid scale of a VOR: not angular");
  return vor;
}

function localizer({ kind, width, antenna }: ApproachExercise["guidance"], runway: Feet): NeedleGuide {
  const half = LOCALIZER.widthAtThreshold / 2;
  const tailored = (reach: Feet) =>
    Math.min(
      LOCALIZER.mostWidth / 2,
      Math.max(LOCALIZER.leastWidth / 2, Math.atan2(half, reach) * DEGREES_PER_RADIAN),
    );
  const usual = runway + LOCALIZER.antennaBeyondEnd;
  // a width alone says where its antenna stands, because it is 700 ft at the threshold
  const reach = antenna ?? (width === null ? usual : half / Math.tan(width / 2 / DEGREES_PER_RADIAN));
  const halfAngle = width === null ? tailored(reach) : width / 2;
  const scale: FullScale = { kind: "angular", fullScaleDeg: halfAngle };
  const beyond = nauticalMilesFromFeet(reach);
  const supposed = kind === "centre-line" || (antenna === null && width === null);
  const angle = halfAngle.toFixed(2);
  return {
    kind,
    label:
      kind === "localizer"
        ? `Localizer, ±${angle}°`
        : `Extended centre line, ±${angle}° as a localizer would show`,
    citation: LOCALIZER.citation,
    supposed,
    halfAngle,
    station: null,
    at: (distance) => ({ scale, reach: distance + beyond }),
  };
}

/** A linear scale that shrinks from 1 NM to that of the final between 2 NM before the final fix and the fix. */
function linear(
  kind: GuidanceKind,
  label: string,
  citation: string,
  fixAt: NauticalMiles | null,
  final: (distance: NauticalMiles) => NauticalMiles,
): NeedleGuide {
  const at = (distance: NauticalMiles) => {
    const before = fixAt === null ? 0 : Math.min(1, Math.max(0, (distance - fixAt) / LNAV.ramp));
    const inside = final(distance);
    const fullScaleNm = inside + before * Math.max(0, LNAV.terminal - inside);
    return { scale: { kind: "linear", fullScaleNm } as const, reach: distance };
  };
  return { kind, label, citation, supposed: false, halfAngle: null, station: null, at };
}
