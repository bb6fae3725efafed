/** Numbers to SVG path texts. */
import type { Point } from "./windGeometry.ts";

/** One decimal: a tenth of a pixel is finer than any line here. */
const n = (value: number): string => String(Math.round(value * 10) / 10);

/** A path through the points; a point that is not finite breaks the line. */
export function pathThrough(points: Iterable<Point>): string {
  let d = "";
  let pen = "M";
  for (const [x, y] of points) {
    if (!Number.isFinite(x) || !Number.isFinite(y)) {
      pen = "M";
      continue;
    }
    d += `${pen}${n(x)} ${n(y)}`;
    pen = "L";
  }
  return d;
}

export const line = (x1: number, y1: number, x2: number, y2: number): string =>
  pathThrough([
    [x1, y1],
    [x2, y2],
  ]);
