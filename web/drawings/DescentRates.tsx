/** The rate flown against the rate needed all the way; gradients where the log has no times. */
import type { DescentSeries } from "./contract.ts";
import type { DescentLayout } from "./descentLayout.ts";
import { JudgedLine, type Weighted } from "./JudgedLine.tsx";
import { pathThrough } from "./path.ts";
import { Strip, stripY } from "./Strip.tsx";
import type { Point } from "./windGeometry.ts";

/** Nearer to the point the way to go shrinks to nothing, and the rate needed means nothing, NM. Own choice. */
const NEEDED_UNTIL_NM = 0.3;

const TICKS_FPM = [
  [-500, "500 up"],
  [0, "0"],
  [500, "500"],
  [1000, "1,000"],
  [1500, "1,500"],
  [2000, "2,000"],
] as const;
const TICKS_FT_PER_NM = [
  [-200, "200 up"],
  [0, "0"],
  [200, "200"],
  [400, "400"],
  [600, "600"],
  [800, "800"],
] as const;

export function DescentRates(props: {
  series: DescentSeries;
  stretches: readonly Weighted[];
  l: DescentLayout;
  clip: string;
  narrow: boolean;
}) {
  const { series, stretches, l, clip, narrow } = props;
  const { distanceToGoNm: toGo, timeMs } = series;
  const [flown, needed] = l.timed
    ? [series.flownDownFpm, series.neededDownFpm]
    : [series.flownDownFtPerNm, series.neededDownFtPerNm];
  const unit = l.timed ? "ft/min" : "ft/NM";
  const asked: Point[] = Array.from(timeMs, (_, row) => [
    l.x(toGo[row]),
    toGo[row] > NEEDED_UNTIL_NM ? stripY(l.rate, needed[row]) : Number.NaN,
  ]);
  return (
    <Strip
      frame={l.rate}
      title={
        narrow ? `Down, ${unit}; dashed: needed` : `Descent, ${unit}; dashed: needed from there to the height`
      }
      ticks={l.timed ? TICKS_FPM : TICKS_FT_PER_NM}
    >
      <g clip-path={`url(#${clip})`}>
        {stretches
          .filter(({ unseen }) => !unseen)
          .map(({ from, to }) => (
            <path key={from} class="solved" d={pathThrough(asked.slice(from, to))} />
          ))}
        <JudgedLine stretches={stretches} point={(row) => [l.x(toGo[row]), stripY(l.rate, flown[row])]} />
      </g>
    </Strip>
  );
}
