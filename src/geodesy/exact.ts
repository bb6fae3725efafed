/** Where a place lies along and across a course, to full precision, by GeographicLib. */
import { cosDeg, direction, sinDeg } from "../quantity/angle.ts";
import type { AlongAcross, Course } from "./course.ts";
import { type Earth, lineThrough, requirePosition, WGS84 } from "./earth.ts";
import type { Position } from "./position.ts";

const { sin, cos, tan, atan, atan2, abs, sign } = Math;

/** A step under this is rounding, m. */
const SETTLED = 1e-8;
/** Each step leaves about flattening * (offset / radius)^2 of the last, so thirty are ample short of a quarter of the earth. */
const MOST_STEPS = 30;

/**
 * Along and across by the foot of the perpendicular from the place to the whole geodesic (unbounded both ways).
 *
 * Method: S. Baselga and J. C. Martinez-Llario, "Intersection and point-to-line solutions for geodesics on the
 * ellipsoid", Studia Geophysica et Geodaetica 62 (2018), 353-363: solve the right spherical triangle for the way
 * along, move there on the ellipsoid, and repeat; all geodesics by GeographicLib.
 * Valid for: offsets short of a quarter of the earth. Errors: under 1 um where the place is within 1000 km.
 * A geodesic comes round the earth: the foot is sought on the half turn either way from the origin.
 * `earth` is there for sources that use another ellipsoid or a sphere.
 */
export function alongAcrossExact(course: Course, position: Position, earth: Earth = WGS84): AlongAcross {
  requirePosition("position", position);
  const line = lineThrough(earth, course.origin, course.azimuth);
  const radius = earth.a;
  let along = 0;
  for (let step = 0; ; step++) {
    const at = line.Position(along);
    const way = earth.Inverse(at.lat2!, at.lon2!, position.latitude, position.longitude);
    const distance = way.s12!;
    const angle = way.azi1! - at.azi2!;
    const theta = distance / radius;
    // The first guess may be half a turn away; later ones are near the foot, where tan is the better conditioned form.
    const ahead =
      step === 0
        ? radius * atan2(sin(theta) * cosDeg(angle), cos(theta))
        : radius * atan(tan(theta) * cosDeg(angle));
    along += ahead;
    if (abs(ahead) < SETTLED || step === MOST_STEPS) {
      return { along, across: distance * sign(sinDeg(angle)), courseAtFoot: direction(at.azi2!) };
    }
  }
}
