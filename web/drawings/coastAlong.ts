/** Hachures along a line of any shape: short strokes on the side where one should not be. */
import type { Point } from "./windGeometry.ts";

/** As on a straight coast, px. */
const EVERY = 6;
const LONG = 5;
const LEAN = 1.5;

/** Strokes along a line, as pairs of points; `far` 1: on its right hand as the points run (y down), else on its left. */
export function hachuresAlong(points: readonly Point[], far: 1 | -1): (readonly [Point, Point])[] {
  const strokes: (readonly [Point, Point])[] = [];
  let left = EVERY / 2;
  for (let i = 1; i < points.length; i++) {
    const [[xa, ya], [xb, yb]] = [points[i - 1], points[i]];
    const length = Math.hypot(xb - xa, yb - ya);
    if (!(length > 0)) continue;
    const [ux, uy] = [(xb - xa) / length, (yb - ya) / length];
    for (; left <= length; left += EVERY) {
      const [x, y] = [xa + ux * left, ya + uy * left];
      strokes.push([
        [x, y],
        [x - ux * LEAN - uy * LONG * far, y - uy * LEAN + ux * LONG * far],
      ]);
    }
    left -= length;
  }
  return strokes;
}
