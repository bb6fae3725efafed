/** An arc as charts: the distance off it and the track angle error beneath, against the radial, at the fixed scale. */
import { useId, useMemo, useRef } from "preact/hooks";
import { type ArcLayout, arcLayout, arcLimit } from "./arcWindow.ts";
import { CursorUpright } from "./CursorUpright.tsx";
import type { ArcFacts, ArcRecord, ArcSeries } from "./contract.ts";
import { QUIET_DEG } from "./courseLayout.ts";
import type { Cursor } from "./cursor.ts";
import { Drawing } from "./Drawing.tsx";
import { JudgedLine } from "./JudgedLine.tsx";
import { LeadMarks, leadWords } from "./LeadMarks.tsx";
import { MarkedWay } from "./MarkedWay.tsx";
import { judgedRows, nearestRow, stretchesOf } from "./nearestRow.ts";
import { PointedAlong } from "./PointedAlong.tsx";
import { line } from "./path.ts";
import { tickStep, ticksWithin } from "./rows.ts";
import { Strip, stripY } from "./Strip.tsx";
import { fixedScales } from "./scale.ts";
import { silenceWords } from "./silences.ts";
import { surroundings } from "./surroundings.ts";
import { useDrawnWidth } from "./useWidth.ts";
import { columnCourse, fractionText, millimetreText } from "./words.ts";

export function ArcFigure(props: { exercise: ArcRecord; series: ArcSeries; cursor: Cursor }) {
  const { exercise, series, cursor } = props;
  const box = useRef<HTMLDivElement>(null);
  const width = useDrawnWidth(box);
  const { narrow } = surroundings().value;
  const clip = useId();
  const stretches = useMemo(() => stretchesOf(series.judged, series.timeMs), [series]);
  const { facts } = exercise;
  if (!facts || width === 0) return <div class="arc-figure" ref={box} />;
  const scales = fixedScales(narrow);
  const l = arcLayout(facts, width, scales, narrow);
  const limit = arcLimit(exercise.verdicts);
  const { goneDeg, crossTrackNm, trackAngleErrorDeg: error } = series;
  const y = {
    off: (row: number) => stripY(l.deviation, crossTrackNm[row]),
    error: (row: number) => stripY(l.error, error[row]),
  };
  const rightIs = facts.turns === "right" ? "in" : "out";
  const leftIs = facts.turns === "right" ? "out" : "in";
  const isFixed = l.mmPerTenDegrees === scales.mmPerTenDegreesOfArc;
  return (
    <div class="arc-figure" ref={box}>
      <PointedAlong
        cursor={cursor}
        timeMs={series.timeMs}
        plot={l}
        rowAt={(px) => nearestRow(goneDeg, l.fromDeg + px / l.pxPerDegree, 1, judgedRows(series.judged))}
      >
        <Drawing
          kind="arc-chart"
          name={`${exercise.title}: distance off the arc and track angle error against the radial`}
          width={l.width}
          height={l.height}
        >
          <clipPath id={clip}>
            <rect x={l.left} y={0} width={l.right - l.left} height={l.height} />
          </clipPath>
          <Strip
            frame={l.deviation}
            title={`Off the arc, NM (${facts.radiusNm} NM from ${facts.fix})`}
            titleUp={20}
            ticks={[
              [-1, `1 ${leftIs}`],
              [-0.5, "½"],
              [0, "0"],
              [0.5, "½"],
              [1, `1 ${rightIs}`],
            ]}
            limit={limit}
            limitWords={narrow ? "" : `${fractionText(limit)} NM`}
          >
            <g clip-path={`url(#${clip})`}>
              <JudgedLine
                stretches={stretches}
                point={(row) => [l.x(goneDeg[row]), y.off(row)]}
                limits={[
                  [stripY(l.deviation, limit), 1],
                  [stripY(l.deviation, -limit), -1],
                ]}
              />
            </g>
          </Strip>
          <Strip
            frame={l.error}
            title={narrow ? "Track angle error" : "Track angle error, against the tangent of the arc"}
            ticks={[
              [-20, "20° L"],
              [-10, "10° L"],
              [0, "0°"],
              [10, "10° R"],
              [20, "20° R"],
            ]}
            quiet={QUIET_DEG}
          >
            <g clip-path={`url(#${clip})`}>
              <JudgedLine stretches={stretches} point={(row) => [l.x(goneDeg[row]), y.error(row)]} />
            </g>
          </Strip>
          <g clip-path={`url(#${clip})`}>
            {[y.off, y.error].map((of, k) => (
              <MarkedWay
                key={k}
                cursor={cursor}
                timeMs={series.timeMs}
                points={Array.from(goneDeg, (gone, row) => [l.x(gone), of(row)])}
              />
            ))}
          </g>
          <Radials facts={facts} l={l} />
          <Turns facts={facts} series={series} l={l} narrow={narrow} />
          <LeadMarks
            excursions={facts.excursions ?? []}
            timeMs={series.timeMs}
            off={(row) => [l.x(goneDeg[row]), y.off(row)]}
            error={(row) => [l.x(goneDeg[row]), y.error(row)]}
            zero={{ off: stripY(l.deviation, 0), error: stripY(l.error, 0) }}
          />
          <CursorUpright
            cursor={cursor}
            timeMs={series.timeMs}
            xOf={(row) =>
              goneDeg[row] >= l.fromDeg && goneDeg[row] <= l.toDeg ? l.x(goneDeg[row]) : Number.NaN
            }
            top={l.deviation.top - 4}
            bottom={l.error.top + l.error.height}
            ringsAt={(row) => [y.off(row), y.error(row)]}
          />
        </Drawing>
      </PointedAlong>
      <p class="drawing-scale">
        {isFixed ? "Fixed scale:" : <b>Too long for the fixed scale:</b>} 10° of the arc ={" "}
        {millimetreText(l.mmPerTenDegrees)}, 1 NM off it = {scales.mmPerMileOffArc} mm, 10° of track error ={" "}
        {scales.mmPerTenDegrees} mm. Thick: what is judged. Drawn with the arc to the right: right of it, here{" "}
        {rightIs === "in" ? "inside" : "outside"}, lies below the line.
        {leadWords(facts.excursions ?? [], "a quarter of a mile off")}
        {silenceWords(series.timeMs)}
      </p>
    </div>
  );
}

/** Radials along the axis, the first and last of the arc through both charts. */
function Radials({ facts, l }: { facts: ArcFacts; l: ArcLayout }) {
  const bottom = l.error.top + l.error.height;
  const step = tickStep(l.pxPerDegree, 44, [5, 10, 20, 30]);
  const side = facts.turns === "right" ? 1 : -1;
  const radial = (gone: number) => columnCourse(facts.fromRadialTrueDeg + side * gone, facts);
  return (
    <g>
      <path class="axis" d={line(l.left, bottom, l.right, bottom)} />
      {ticksWithin(0, facts.sweepDeg, step).map((gone) => (
        <g key={gone}>
          <path class="axis" d={line(l.x(gone), bottom, l.x(gone), bottom + 4)} />
          <text class="lab" x={l.x(gone)} y={bottom + 18} text-anchor="middle">
            {radial(gone)}
          </text>
        </g>
      ))}
      {[0, facts.sweepDeg].map((gone) => (
        <path key={gone} class="gate thin" d={line(l.x(gone), l.deviation.top, l.x(gone), bottom)} />
      ))}
      <text class="lab-i" x={0} y={bottom + 36}>
        radial from {facts.fix}
      </text>
    </g>
  );
}

/** Where the arc was joined, and where the turn off it began and should have. */
function Turns(props: { facts: ArcFacts; series: ArcSeries; l: ArcLayout; narrow: boolean }) {
  const { facts, l, narrow } = props;
  const { turnOff, sweepDeg } = facts;
  if (!turnOff) return null;
  const top = l.deviation.top;
  const begun = l.x(sweepDeg - turnOff.leadDeg);
  const needed = turnOff.neededDeg === null ? null : l.x(sweepDeg - turnOff.neededDeg);
  return (
    <g>
      {needed !== null && <path class="solved" d={line(needed, top, needed, l.error.top + l.error.height)} />}
      <path class="dim" d={line(begun, top, begun, l.error.top + l.error.height)} />
      <text class="lab halo" x={l.right} y={top - 5} text-anchor="end">
        <tspan class="out">turn off begun{narrow ? "" : ` ${turnOff.leadDeg.toFixed(1)}° before`}</tspan>
        {turnOff.neededDeg !== null && (
          <tspan class="sol"> (needed{narrow ? "" : ` ${turnOff.neededDeg.toFixed(1)}°`}, dashed)</tspan>
        )}
      </text>
    </g>
  );
}
