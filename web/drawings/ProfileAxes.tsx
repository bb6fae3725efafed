/** The axes of a profile: feet up its left edge, and miles under everything that stands on them. */
import { count } from "./contract.ts";
import { line } from "./path.ts";

export function HeightAxis(props: {
  title: string;
  left: number;
  top: number;
  bottom: number;
  /** Labelled heights, ft. */
  ticks: readonly number[];
  y: (ft: number) => number;
}) {
  const { title, left, top, bottom, ticks, y } = props;
  return (
    <>
      <text class="lab b" x={0} y={12}>
        {title}
      </text>
      <path class="axis" d={line(left, top, left, bottom)} />
      {ticks.map((ft) => (
        <g key={ft}>
          <path class="axis" d={line(left - 4, y(ft), left, y(ft))} />
          <text class="lab" x={left - 8} y={y(ft) + 4} text-anchor="end">
            {count(ft)}
          </text>
        </g>
      ))}
    </>
  );
}

export function MileAxis(props: {
  words: string;
  left: number;
  right: number;
  /** Ordinate of the axis, px. */
  axis: number;
  /** Labelled distances to go, NM; past the end of the way they are negative. */
  ticks: readonly number[];
  x: (nm: number) => number;
}) {
  const { words, left, right, axis, ticks, x } = props;
  return (
    <>
      <path class="axis" d={line(left, axis, right, axis)} />
      {ticks.map((nm) => (
        <g key={nm}>
          <path class="axis" d={line(x(nm), axis, x(nm), axis + 4)} />
          <text class="lab" x={x(nm)} y={axis + 18} text-anchor="middle">
            {Math.abs(nm)}
          </text>
        </g>
      ))}
      <text class="lab-i" x={0} y={axis + 34}>
        {words}
      </text>
    </>
  );
}
