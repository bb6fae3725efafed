/** A flown line, thick where it is judged and heavy beyond a limit there, dashes and dots across silences of the log. */
import { pathThrough } from "./path.ts";
import { beyondLimit } from "./Strip.tsx";
import type { Point } from "./windGeometry.ts";

export interface Weighted {
  readonly from: number;
  readonly to: number;
  readonly judged: boolean;
  /** A step across a silence. */
  readonly unseen: boolean;
}

export function JudgedLine(props: {
  stretches: readonly Weighted[];
  point: (row: number) => Point;
  /** Ordinates of the limits, with the side that is beyond (1: below). */
  limits?: readonly (readonly [y: number, far: 1 | -1])[];
}) {
  const { stretches, point, limits = [] } = props;
  const lines = stretches.map(({ from, to, judged, unseen }) => ({
    key: `${from}${unseen}`,
    judged: judged && !unseen,
    kind: unseen ? "flown unseen" : judged ? "flown" : "flown thin",
    points: Array.from({ length: to - from }, (_, k) => point(from + k)),
  }));
  return (
    <>
      {lines.map(({ key, kind, points }) => (
        <path key={key} class={kind} d={pathThrough(points)} />
      ))}
      {limits.length > 0 &&
        lines
          .filter(({ judged }) => judged)
          .map(({ key, points }) => (
            <path
              key={key}
              class="beyond"
              d={limits.map(([y, far]) => pathThrough(beyondLimit(points, y, far))).join("")}
            />
          ))}
    </>
  );
}
