/** A descent from the side: what was flown with the doubt of its height, what would have fitted, and the rate needed beneath. */
import { useId, useMemo, useRef } from "preact/hooks";
import { CursorUpright } from "./CursorUpright.tsx";
import type { DescentRecord, DescentSeries } from "./contract.ts";
import type { Cursor } from "./cursor.ts";
import { DescentMarks } from "./DescentMarks.tsx";
import { DescentRates } from "./DescentRates.tsx";
import { Drawing } from "./Drawing.tsx";
import { descentLayout } from "./descentLayout.ts";
import { heightDoubts } from "./heightDoubt.ts";
import { JudgedLine } from "./JudgedLine.tsx";
import { MarkedWay } from "./MarkedWay.tsx";
import { nearestRow, stretchesOf } from "./nearestRow.ts";
import { PointedAlong } from "./PointedAlong.tsx";
import { HeightAxis, MileAxis } from "./ProfileAxes.tsx";
import { tickStep, ticksWithin } from "./rows.ts";
import { DoubtBand } from "./Strip.tsx";
import { fixedScales } from "./scale.ts";
import { silenceWords } from "./silences.ts";
import { surroundings } from "./surroundings.ts";
import { useDrawnWidth } from "./useWidth.ts";
import type { Point } from "./windGeometry.ts";
import { millimetreText } from "./words.ts";

export function DescentProfile(props: { exercise: DescentRecord; series: DescentSeries; cursor: Cursor }) {
  const { exercise, series, cursor } = props;
  const box = useRef<HTMLDivElement>(null);
  const width = useDrawnWidth(box);
  const { narrow } = surroundings().value;
  const clip = useId();
  const stretches = useMemo(() => stretchesOf(series.judged, series.timeMs), [series]);
  const { facts } = exercise;
  if (!facts || width === 0) return <div class="descent-profile" ref={box} />;
  const scales = fixedScales(narrow);
  const l = descentLayout(facts, series, width, scales, narrow);
  const { distanceToGoNm: toGo, altitudeFt } = series;
  const doubts = heightDoubts(facts, altitudeFt);
  const edge = (times: number, from = 0, to = toGo.length): Point[] =>
    Array.from(toGo.subarray(from, to), (nm, i) => [
      l.x(nm),
      l.y(altitudeFt[from + i] + (doubts ? times * doubts[from + i] : 0)),
    ]);
  const heightStep = tickStep((l.y(0) - l.y(1000)) / 1000, 17, [500, 1000, 2000, 5000]);
  const mileStep = tickStep(l.pxPerMile, 22, [1, 2, 5, 10]);
  const isFixed =
    l.mmPerMile === scales.mmPerMileOfDescent && l.mmPerThousandFeet === scales.mmPerThousandFeet;
  return (
    <div class="descent-profile" ref={box}>
      <PointedAlong
        cursor={cursor}
        timeMs={series.timeMs}
        plot={l}
        rowAt={(px) => nearestRow(toGo, l.farNm - px / l.pxPerMile, 0.1)}
      >
        <Drawing
          kind="profile"
          name={`${exercise.title} from the side: height and rate of descent against the distance to go`}
          width={l.width}
          height={l.height}
        >
          <clipPath id={clip}>
            <rect x={l.left} y={l.top} width={l.right - l.left} height={l.height - l.top} />
          </clipPath>
          <HeightAxis
            title="Height by the log, ft"
            {...{ left: l.left, top: l.top, bottom: l.bottom, y: l.y }}
            ticks={ticksWithin(l.bottomFt, l.topFt, heightStep)}
          />
          <g clip-path={`url(#${clip})`}>
            {doubts &&
              stretches
                .filter(({ unseen }) => !unseen)
                .map(({ from, to }) => (
                  <DoubtBand key={from} upper={edge(1, from, to)} lower={edge(-1, from, to)} />
                ))}
          </g>
          <DescentMarks {...{ exercise, facts, series, l, clip, narrow }} />
          <g clip-path={`url(#${clip})`}>
            <JudgedLine stretches={stretches} point={(row) => [l.x(toGo[row]), l.y(altitudeFt[row])]} />
            <MarkedWay cursor={cursor} timeMs={series.timeMs} points={edge(0)} />
          </g>
          <DescentRates {...{ series, stretches, l, clip, narrow }} />
          <MileAxis
            words="NM to the point, along the way flown"
            {...{ left: l.left, right: l.right, axis: l.axis, x: l.x }}
            ticks={ticksWithin(Math.ceil(l.nearNm), l.farNm, mileStep)}
          />
          <CursorUpright
            cursor={cursor}
            timeMs={series.timeMs}
            xOf={(row) => (toGo[row] <= l.farNm && toGo[row] >= l.nearNm ? l.x(toGo[row]) : Number.NaN)}
            top={l.top - 4}
            bottom={l.axis}
            ringsAt={(row) => [l.y(altitudeFt[row])]}
          />
        </Drawing>
      </PointedAlong>
      <p class="drawing-scale">
        {isFixed ? "Fixed scale:" : <b>Too large for the fixed scale:</b>} 1 NM ={" "}
        {millimetreText(l.mmPerMile)}, 1,000 ft = {millimetreText(l.mmPerThousandFeet)}. Thick: from where it
        began to the point. {doubts && "Grey: what an altimeter may have shown (95 %). "}Dashed: constant
        descents that would just have met the height.{silenceWords(series.timeMs)}
      </p>
    </div>
  );
}
