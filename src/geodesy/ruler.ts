/** A ruler laid along a course: along and across for many places, fast, each reading starting from the last. */
import { direction } from "../quantity/angle.ts";
import { DEGREES_PER_RADIAN, RADIANS_PER_DEGREE } from "../quantity/factor.ts";
import type { Degrees, Metres, TrueDegrees } from "../quantity/units.ts";
import type { Course } from "./course.ts";
import { E2, lineThrough, requirePosition, WGS84 } from "./earth.ts";
import { alongAcrossExact } from "./exact.ts";
import { type Mark, markAt } from "./mark.ts";

const { sin, cos, atan, atan2, asin, sqrt, abs, round } = Math;

/** Marks stand this far apart, m: 2 NM, tuned so that what the ruler leaves out between marks stays under 0.1 mm. */
const SPACING = 3704;
/** Beyond this from a mark, m (30 NM), the exact form measures instead: what is left out grows with the cube. */
const REACH = 55_560;
/** Nearer the pole than this, m, the azimuth is taken from GeographicLib, as east and north are ill defined. */
const POLE = 10;

/** One reading, overwritten by the next: copy what is to be kept. */
export interface Ruler {
  along: Metres;
  across: Metres;
  courseAtFoot: TrueDegrees;
  /** Measures a place; the readings are in the fields above. */
  measure(latitude: Degrees, longitude: Degrees): void;
}

/**
 * A ruler for one course, unbounded both ways.
 *
 * Method: at a mark every 2 NM of the geodesic its place, direction and curvatures are known in space. In the frame
 * of the nearest mark a place at offset h below the normal has x = (rho - h) sin(s / rho), z = (rho - h) cos(s / rho)
 * - rho, so that s = rho atan(x / (rho + z)); and across = rho' asin(y / rho'), with rho and rho' the radii of normal
 * curvature along and across (Euler's theorem). Left out: the geodesic torsion, which moves the foot by
 * across^3 / (6 R^2) * flattening at most.
 * Errors against `alongAcrossExact`: under 1 mm to 10 NM off the course, under 1 cm to 30 NM; exact beyond `reach`.
 * A place that is not a number reads NaN, which means unknown, and leaves the ruler where it lay.
 */
export function courseRuler(course: Course, reach: Metres = REACH): Ruler {
  requirePosition("course origin", course.origin);
  const line = lineThrough(WGS84, course.origin, course.azimuth);
  const marks = new Map<number, Mark>();
  let index = 0;
  let mark = markAt(line, 0);
  marks.set(0, mark);

  function moveTo(to: number): void {
    index = to;
    const known = marks.get(to);
    mark = known ?? markAt(line, to * SPACING);
    if (!known) marks.set(to, mark);
  }

  const ruler: Ruler = {
    along: Number.NaN,
    across: Number.NaN,
    courseAtFoot: Number.NaN,
    measure(latitude, longitude) {
      if (!(abs(latitude) <= 90) || !Number.isFinite(longitude)) {
        ruler.along = ruler.across = ruler.courseAtFoot = Number.NaN;
        return;
      }
      const phi = latitude * RADIANS_PER_DEGREE;
      const lambda = longitude * RADIANS_PER_DEGREE;
      const sinPhi = sin(phi);
      const nu = WGS84.a / sqrt(1 - E2 * sinPhi * sinPhi);
      const p = nu * cos(phi);
      const px = p * cos(lambda);
      const py = p * sin(lambda);
      const pz = nu * (1 - E2) * sinPhi;
      for (let hops = 0; hops < 2; hops++) {
        const m = mark;
        const dx = px - m.x;
        const dy = py - m.y;
        const dz = pz - m.z;
        if (dx * dx + dy * dy + dz * dz > reach * reach) break;
        const ahead = dx * m.tx + dy * m.ty + dz * m.tz;
        const right = dx * m.rx + dy * m.ry + dz * m.rz;
        const up = dx * m.ux + dy * m.uy + dz * m.uz;
        const turn = atan(ahead / (m.rhoAlong + up));
        const s = turn * m.rhoAlong;
        if (abs(s) > 0.55 * SPACING) {
          moveTo(index + round(s / SPACING)); // 0.55, not 0.5: a place between two marks must not hop to and fro
          continue;
        }
        ruler.along = index * SPACING + s;
        ruler.across = m.rhoAcross * asin(right / m.rhoAcross);
        ruler.courseAtFoot = azimuthAt(m, turn) ?? direction(line.Position(ruler.along).azi2!);
        return;
      }
      const exact = alongAcrossExact(course, { latitude, longitude });
      ruler.along = exact.along;
      ruler.across = exact.across;
      ruler.courseAtFoot = exact.courseAtFoot;
      moveTo(round(exact.along / SPACING));
    },
  };
  return ruler;
}

/** The azimuth of the geodesic at a small turn about the centre of its curvature from a mark; null at a pole. */
function azimuthAt(m: Mark, turn: number): TrueDegrees | null {
  const s = sin(turn);
  const c = cos(turn);
  const k = m.rhoAlong;
  const x = m.x + k * (s * m.tx - (1 - c) * m.ux);
  const y = m.y + k * (s * m.ty - (1 - c) * m.uy);
  const z = m.z + k * (s * m.tz - (1 - c) * m.uz);
  const p = sqrt(x * x + y * y);
  if (p < POLE) return null;
  const tx = c * m.tx - s * m.ux;
  const ty = c * m.ty - s * m.uy;
  const tz = c * m.tz - s * m.uz;
  const zn = z / (1 - E2);
  const east = (x * ty - y * tx) / p;
  const north = (tz * sqrt(p * p + zn * zn)) / p; // tz = north * cos(latitude)
  return direction(atan2(east, north) * DEGREES_PER_RADIAN);
}

/**
 * Along (m), across (m, right positive) and the course at the foot (degrees true) for columns of places;
 * NaN where a place is not a number. Beyond `reach` of the course by the exact form, which is 100 times slower.
 */
export function measureColumns(
  course: Course,
  latitude: Float64Array,
  longitude: Float64Array,
  reach: Metres = REACH,
): { readonly along: Float64Array; readonly across: Float64Array; readonly courseAtFoot: Float64Array } {
  const n = latitude.length;
  if (longitude.length !== n)
    throw new RangeError(`invalid columns: ${n} latitudes, ${longitude.length} longitudes`);
  const along = new Float64Array(n);
  const across = new Float64Array(n);
  const courseAtFoot = new Float64Array(n);
  const ruler = courseRuler(course, reach);
  for (let i = 0; i < n; i++) {
    ruler.measure(latitude[i]!, longitude[i]!);
    along[i] = ruler.along;
    across[i] = ruler.across;
    courseAtFoot[i] = ruler.courseAtFoot;
  }
  return { along, across, courseAtFoot };
}
