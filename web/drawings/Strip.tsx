/** One quantity against a distance: a chart of fixed height under a profile, with its quiet zone, limits and doubt. */
import type { ComponentChildren } from "preact";
import { line, pathThrough } from "./path.ts";
import { hachures } from "./plugins/coast.ts";
import type { Point } from "./windGeometry.ts";

export interface StripFrame {
  /** Edges of the plot, px. */
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
  /** Values at the upper and lower edge; the lower may be the larger. */
  readonly upper: number;
  readonly lower: number;
}

/** Where a value stands; beyond the edges at the edge, as a needle at its peg. */
export function stripY({ top, height, upper, lower }: StripFrame, value: number): number {
  const share = (value - upper) / (lower - upper);
  return top + height * Math.max(0, Math.min(1, share));
}

/** The stretches beyond a limit on the far side of zero, cut where the line crosses it. */
export function beyondLimit(points: readonly Point[], limitY: number, far: 1 | -1): Point[] {
  const out: Point[] = [];
  const isBeyond = (y: number) => (y - limitY) * far > 0;
  for (let i = 0; i < points.length; i++) {
    const [here, before] = [points[i], points[i - 1]];
    if (before && isBeyond(before[1]) !== isBeyond(here[1])) {
      const share = (limitY - before[1]) / (here[1] - before[1]);
      if (Number.isFinite(share)) out.push([before[0] + share * (here[0] - before[0]), limitY]);
      if (!isBeyond(here[1])) out.push([Number.NaN, Number.NaN]);
    }
    if (isBeyond(here[1])) out.push(here);
    else if (!Number.isFinite(here[1]) && out.length > 0) out.push([Number.NaN, Number.NaN]);
  }
  return out;
}

export function Strip(props: {
  frame: StripFrame;
  title: string;
  /** More room under the title, px. */
  titleUp?: number;
  ticks: readonly (readonly [value: number, words: string])[];
  /** The line that means nothing is off. */
  zero?: number;
  /** Half the height of the grey zone about zero, in units of the axis. */
  quiet?: number;
  /** A coast on either side of zero. */
  limit?: number | null;
  limitWords?: string;
  children: ComponentChildren;
}) {
  const { frame, title, titleUp = 0, ticks, zero = 0, quiet, limit = null, limitWords, children } = props;
  const { left, top, width, height } = frame;
  const y = (value: number) => stripY(frame, value);
  const right = left + width;
  const limits = limit === null ? [] : [-limit, limit];
  return (
    <g>
      <text class="lab b" x={0} y={top - 9 - titleUp}>
        {title}
      </text>
      {quiet !== undefined && (
        <rect
          class="quiet"
          x={left}
          y={Math.min(y(quiet), y(-quiet))}
          width={width}
          height={Math.abs(y(quiet) - y(-quiet))}
        />
      )}
      <path class="axis" d={line(left, top, left, top + height)} />
      {ticks.map(([value, words]) => (
        <g key={value}>
          <path class="axis" d={line(left - 4, y(value), left, y(value))} />
          <text class="lab" x={left - 8} y={y(value) + 4} text-anchor="end">
            {words}
          </text>
        </g>
      ))}
      <path class="course" d={line(left, y(zero), right, y(zero))} />
      {limits.map((value) => (
        <LevelCoast key={value} x1={left} x2={right} y={y(value)} far={y(value) > y(0) ? 1 : -1} />
      ))}
      {limitWords && limit !== null && (
        <text class="lab-i" x={right + 6} y={Math.max(y(limit), y(-limit)) + 4}>
          {limitWords}
        </text>
      )}
      {children}
    </g>
  );
}

/** A coast that lies level; `far` 1: what lies below it is beyond. */
export function LevelCoast({ x1, x2, y, far }: { x1: number; x2: number; y: number; far: 1 | -1 }) {
  return (
    <>
      <path class="limit" d={line(x1, y, x2, y)} />
      <path
        class="hach"
        d={hachures(x1, x2, y, far)
          .map((h) => line(...h))
          .join("")}
      />
    </>
  );
}

/** The band of doubt about a line, between its upper and lower edge. */
export function DoubtBand({ upper, lower }: { upper: readonly Point[]; lower: readonly Point[] }) {
  const known = upper.flatMap((point, i) =>
    Number.isFinite(point[1]) && Number.isFinite(lower[i][1]) ? [i] : [],
  );
  if (known.length < 2) return null;
  const edge = [...known.map((i) => upper[i]), ...known.toReversed().map((i) => lower[i])];
  return <path class="height-doubt" d={`${pathThrough(edge)}Z`} />;
}
