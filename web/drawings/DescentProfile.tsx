/** A descent from the side: what was flown with the doubt of its height, what would have fitted, and the rate needed beneath. */
import { useId, useMemo, useRef } from "preact/hooks";
import { CursorUpright } from "./CursorUpright.tsx";
import { count, type DescentRecord, type DescentSeries } from "./contract.ts";
import type { Cursor } from "./cursor.ts";
import { DescentMarks } from "./DescentMarks.tsx";
import { DescentRates } from "./DescentRates.tsx";
import { Drawing } from "./Drawing.tsx";
import { descentLayout } from "./descentLayout.ts";
import { heightDoubts } from "./heightDoubt.ts";
import { JudgedLine } from "./JudgedLine.tsx";
import { MarkedWay } from "./MarkedWay.tsx";
import { nearestRow, stretchesOf } from "./nearestRow.ts";
import { line } from "./path.ts";
import { tickStep, ticksWithin } from "./rows.ts";
import { DoubtBand } from "./Strip.tsx";
import { fixedScales, PAPER_PX } from "./scale.ts";
import { surroundings } from "./surroundings.ts";
import { useWidth } from "./useWidth.ts";
import type { Point } from "./windGeometry.ts";
import { millimetreText } from "./words.ts";

export function DescentProfile(props: { exercise: DescentRecord; series: DescentSeries; cursor: Cursor }) {
  const { exercise, series, cursor } = props;
  const box = useRef<HTMLDivElement>(null);
  const column = useWidth(box);
  const { narrow, paper } = surroundings().value;
  const clip = useId();
  const stretches = useMemo(() => stretchesOf(series.judged), [series]);
  const { facts } = exercise;
  const width = paper ? PAPER_PX : column;
  if (!facts || width === 0) return <div class="descent-profile" ref={box} />;
  const scales = fixedScales(narrow);
  const l = descentLayout(facts, series, width, scales, narrow);
  const { distanceToGoNm: toGo, altitudeFt } = series;
  const doubts = heightDoubts(facts, altitudeFt);
  const edge = (times: number): Point[] =>
    Array.from(toGo, (nm, i) => [l.x(nm), l.y(altitudeFt[i] + (doubts ? times * doubts[i] : 0))]);
  const point = (event: PointerEvent) => {
    const at = event.clientX - (event.currentTarget as Element).getBoundingClientRect().left;
    const row =
      at < l.left || at > l.right ? null : nearestRow(toGo, l.farNm - (at - l.left) / l.pxPerMile, 0.1);
    cursor.value = row === null || !Number.isFinite(series.timeMs[row]) ? null : series.timeMs[row];
  };
  const heightStep = tickStep((l.y(0) - l.y(1000)) / 1000, 17, [500, 1000, 2000, 5000]);
  const mileStep = tickStep(l.pxPerMile, 22, [1, 2, 5, 10]);
  const isFixed =
    l.mmPerMile === scales.mmPerMileOfDescent && l.mmPerThousandFeet === scales.mmPerThousandFeet;
  return (
    <div class="descent-profile" ref={box}>
      <div
        onPointerMove={point}
        onPointerDown={point}
        onPointerLeave={() => {
          cursor.value = null;
        }}
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
          <text class="lab b" x={0} y={12}>
            Height by the log, ft
          </text>
          <path class="axis" d={line(l.left, l.top, l.left, l.bottom)} />
          {ticksWithin(l.bottomFt, l.topFt, heightStep).map((ft) => (
            <g key={ft}>
              <path class="axis" d={line(l.left - 4, l.y(ft), l.left, l.y(ft))} />
              <text class="lab" x={l.left - 8} y={l.y(ft) + 4} text-anchor="end">
                {count(ft)}
              </text>
            </g>
          ))}
          <g clip-path={`url(#${clip})`}>{doubts && <DoubtBand upper={edge(1)} lower={edge(-1)} />}</g>
          <DescentMarks {...{ exercise, facts, series, l, clip, narrow }} />
          <g clip-path={`url(#${clip})`}>
            <JudgedLine stretches={stretches} point={(row) => [l.x(toGo[row]), l.y(altitudeFt[row])]} />
            <MarkedWay cursor={cursor} timeMs={series.timeMs} points={edge(0)} />
          </g>
          <DescentRates {...{ series, stretches, l, clip, narrow }} />
          <path class="axis" d={line(l.left, l.axis, l.right, l.axis)} />
          {ticksWithin(Math.ceil(l.nearNm), l.farNm, mileStep).map((nm) => (
            <g key={nm}>
              <path class="axis" d={line(l.x(nm), l.axis, l.x(nm), l.axis + 4)} />
              <text class="lab" x={l.x(nm)} y={l.axis + 18} text-anchor="middle">
                {Math.abs(nm)}
              </text>
            </g>
          ))}
          <text class="lab-i" x={0} y={l.axis + 34}>
            NM to the point, along the way flown
          </text>
          <CursorUpright
            cursor={cursor}
            timeMs={series.timeMs}
            xOf={(row) => (toGo[row] <= l.farNm && toGo[row] >= l.nearNm ? l.x(toGo[row]) : Number.NaN)}
            top={l.top - 4}
            bottom={l.axis}
            ringsAt={(row) => [l.y(altitudeFt[row])]}
          />
        </Drawing>
      </div>
      <p class="drawing-scale">
        {isFixed ? "Fixed scale:" : <b>Too large for the fixed scale:</b>} 1 NM ={" "}
        {millimetreText(l.mmPerMile)}, 1,000 ft = {millimetreText(l.mmPerThousandFeet)}. Thick: from where it
        began to the point. {doubts && "Grey: what an altimeter may have shown (95 %). "}Dashed: constant
        descents that would just have met the height.
      </p>
    </div>
  );
}
