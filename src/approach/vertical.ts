/** Where the aircraft stands against a glide path: in degrees, in feet, and on the needle's scale. */
import type { ApproachExercise } from "../brief/brief.ts";
import { angleSeen, type PathShape, pathHeight } from "../geodesy/index.ts";
import { tanDeg } from "../quantity/angle.ts";
import { gradientOf } from "../quantity/descent.ts";
import { feetFromMetres, METRES_PER_FOOT, metresFromNauticalMiles } from "../quantity/factor.ts";
import type { AngleSize, Feet, NauticalMiles, Share, TurnDegrees } from "../quantity/units.ts";
import { GLIDE_PATH, SATELLITE_VERTICAL, THRESHOLD_CROSSING } from "../standard/approach-guidance.ts";

export interface PathGuide {
  readonly angle: AngleSize;
  /** Above the threshold. */
  readonly crossing: Feet;
  readonly shape: PathShape;
  /** Whose full scale: a glide path antenna's, or satellite guidance's. */
  readonly scale: "radio" | "satellite";
  readonly label: string;
  readonly citation: string;
  /** No vertical needle belongs to this guidance: what a glide path's would have shown. */
  readonly supposed: boolean;
}

export interface PathDeviation {
  /** Above the path positive. */
  readonly degrees: TurnDegrees;
  readonly feet: Feet;
  /** Share of full scale, above the path positive (the needle goes the other way). */
  readonly needle: Share;
  /** Share of full scale that one foot makes there. */
  readonly needlePerFoot: number;
}

/** Null where the approach has no glide path. */
export function pathGuideOf({ glidePath, guidance }: ApproachExercise): PathGuide | null {
  if (!glidePath) return null;
  const satellite = guidance.kind === "lpv" || guidance.kind === "lnav-vnav";
  const supposed = !satellite && guidance.kind !== "localizer";
  const { citation } = satellite ? SATELLITE_VERTICAL : GLIDE_PATH;
  const shape = guidance.kind === "lnav-vnav" ? "level-referenced" : "straight";
  const size = satellite ? "a quarter of the angle" : `±${GLIDE_PATH.fullScale}°`;
  const scale = satellite ? "satellite" : "radio";
  return { ...glidePath, shape, scale, supposed, citation, label: `Glide path ${glidePath.angle}°, ${size}` };
}

/** The path's height above the threshold, so far before it (negative: past it). */
export function heightOnPath(
  { angle, crossing, shape }: Pick<PathGuide, "angle" | "crossing" | "shape">,
  distance: NauticalMiles,
): Feet {
  const start = (crossing * METRES_PER_FOOT) / tanDeg(angle); // past the threshold, where the path meets its level
  return feetFromMetres(pathHeight(angle, metresFromNauticalMiles(distance) + start, shape));
}

/** Full scale at a distance from where the path begins, as an angle. */
function fullScale(guide: PathGuide, distance: number): AngleSize {
  if (guide.scale === "radio") return GLIDE_PATH.fullScale;
  const share = guide.angle * SATELLITE_VERTICAL.share;
  const metres = Math.min(
    SATELLITE_VERTICAL.most,
    Math.max(SATELLITE_VERTICAL.least, distance * tanDeg(share)),
  );
  return angleSeen(distance, metres, "level-referenced");
}

/**
 * Against the path, so far before the threshold, at a height above it. Angles are seen from where the path meets the
 * level of the threshold; null past that.
 */
export function deviationFrom(guide: PathGuide, distance: NauticalMiles, height: Feet): PathDeviation | null {
  const start = (guide.crossing * METRES_PER_FOOT) / tanDeg(guide.angle);
  const away = metresFromNauticalMiles(distance) + start;
  if (!(away > 0) || Number.isNaN(height)) return null;
  const seen = angleSeen(away, height * METRES_PER_FOOT, guide.shape);
  const degrees = seen - guide.angle;
  const feet = height - feetFromMetres(pathHeight(guide.angle, away, guide.shape));
  const full = fullScale(guide, away);
  // derivative of the angle by the height at a distance, degrees a foot
  const perFoot = angleSeen(away, METRES_PER_FOOT, "level-referenced");
  return { degrees, feet, needle: degrees / full, needlePerFoot: perFoot / full };
}

/**
 * Where a descent at an angle from a minimum meets the threshold crossing height: the visual descent point, before
 * the threshold. The rule of thumb, height over 300, leaves out the crossing height and takes 2.8 degrees.
 */
export function visualDescentPoint(
  minimumAboveThreshold: Feet,
  angle: AngleSize = GLIDE_PATH.usualAngle,
  crossing: Feet = THRESHOLD_CROSSING,
): NauticalMiles {
  return (minimumAboveThreshold - crossing) / gradientOf(angle);
}
