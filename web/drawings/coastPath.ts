/** A coast along a line of any shape as two SVG paths: the line, and the hachures on its far side. */
import { hachuresAlong } from "./coastAlong.ts";
import { line, pathThrough } from "./path.ts";
import type { Point } from "./windGeometry.ts";

export const coastPath = (points: readonly Point[], far: 1 | -1): { line: string; hachures: string } => ({
  line: pathThrough(points),
  hachures: hachuresAlong(points, far)
    .map(([[xa, ya], [xb, yb]]) => line(xa, ya, xb, yb))
    .join(""),
});
