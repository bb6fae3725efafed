/** A flown line, thick where it is judged and heavy beyond a limit there. */
import { pathThrough } from "./path.ts";
import { beyondLimit } from "./Strip.tsx";
import type { Point } from "./windGeometry.ts";

export interface Weighted {
  readonly from: number;
  readonly to: number;
  readonly judged: boolean;
}

export function JudgedLine(props: {
  stretches: readonly Weighted[];
  point: (row: number) => Point;
  /** Ordinates of the limits, with the side that is beyond (1: below). */
  limits?: readonly (readonly [y: number, far: 1 | -1])[];
}) {
  const { stretches, point, limits = [] } = props;
  const lines = stretches.map(({ from, to, judged }) => ({
    from,
    judged,
    points: Array.from({ length: to - from }, (_, k) => point(from + k)),
  }));
  return (
    <>
      {lines.map(({ from, judged, points }) => (
        <path key={from} class={judged ? "flown" : "flown thin"} d={pathThrough(points)} />
      ))}
      {limits.length > 0 &&
        lines
          .filter(({ judged }) => judged)
          .map(({ from, points }) => (
            <path
              key={from}
              class="beyond"
              d={limits.map(([y, far]) => pathThrough(beyondLimit(points, y, far))).join("")}
            />
          ))}
    </>
  );
}
