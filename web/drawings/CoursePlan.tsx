/** A course seen from above, laid to the right: right of course is below the line, one mile is 10 mm both ways. */

import { useRef } from "preact/hooks";
import { CursorRing } from "./CursorRing.tsx";
import {
  type CourseRecord,
  type CourseSeries,
  flownDirection,
  type WindRecord,
  windName,
} from "./contract.ts";
import { limitDrawn } from "./courseLayout.ts";
import type { Cursor } from "./cursor.ts";
import { Drawing, PlanWindow } from "./Drawing.tsx";
import { FlownLine } from "./FlownLine.tsx";
import { MarkedWay } from "./MarkedWay.tsx";
import { usePanZoom } from "./panZoom.ts";
import { line, pathThrough } from "./path.ts";
import { fixPlaces, limitLines, planFrame } from "./planGeometry.ts";
import { Coast, FixSign, NorthArrow, ScaleBar } from "./planSigns.tsx";
import { ticksWithin } from "./rows.ts";
import { fixedScales, PX_PER_MM } from "./scale.ts";
import { rowsAfterSilence, silenceWords } from "./silences.ts";
import { surroundings } from "./surroundings.ts";
import { useDrawnWidth } from "./useWidth.ts";
import { WindSign } from "./WindArrow.tsx";
import { WorkedWay } from "./WorkedWay.tsx";
import type { Point } from "./windGeometry.ts";
import { millimetreText } from "./words.ts";

/** So small that it stands on the page of its chart, on Letter too. */
const PAPER_PX = 350;

export function CoursePlan(props: {
  exercise: CourseRecord;
  series: CourseSeries;
  wind: WindRecord | null;
  cursor: Cursor;
  fit?: boolean;
}) {
  const { exercise, series, wind, cursor, fit = false } = props;
  const box = useRef<HTMLDivElement>(null);
  const width = useDrawnWidth(box, PAPER_PX);
  const around = surroundings().value;
  const facts = exercise.facts;
  const fixed = fixedScales(around.narrow).mmPerMileOfPlan * PX_PER_MM;
  const frame = facts && width > 0 ? planFrame(facts, series, width, fixed, fit || around.paper) : null;
  const height = frame?.height ?? 0;
  const { view, moved, handlers } = usePanZoom(width, height);
  if (!facts || !frame) return <div class="course-plan" ref={box} />;
  const px = frame.pxPerMile * view.zoom;
  const place = (along: number, across: number): Point => [
    frame.left * view.zoom + (along - frame.startNm) * px + view.x,
    frame.middle * view.zoom + across * px + view.y,
  ];
  const limit = limitDrawn(exercise);
  const limits = limit === null ? [] : limitLines(facts, frame, limit);
  const flown = Array.from(series.alongNm, (along, i) => place(along, series.crossTrackNm[i]));
  const isFixed = !moved && Math.abs(frame.pxPerMile - fixed) < 1e-9;
  const scaleWords = `1 NM = ${millimetreText(px / PX_PER_MM)}${isFixed ? "" : moved ? ", moved by hand" : ", fitted"}`;
  const name = `${exercise.title} from above, drawn with the course to the right`;
  const silent = silenceWords(series.timeMs);
  const cutOff = isFixed && frame.neededPx > width;
  return (
    <div class="course-plan" ref={box}>
      <PlanWindow name={name} handlers={handlers}>
        <Drawing kind="plan" name={name} width={width} height={height}>
          {ticksWithin(frame.startNm, frame.endNm, frame.tickNm).map((mile) => {
            const [x, y] = place(mile, 0);
            return <path key={mile} class="axis" d={line(x, y - 3, x, y + 3)} />;
          })}
          <path class="course" d={pathThrough([place(frame.startNm, 0), place(frame.endNm, 0)])} />
          {limits.map(({ share, side, from, to }) => {
            const [a, b] = [place(...from), place(...to)];
            if (share === 1)
              return <path key={`${share}${side}`} class="fullscale" d={pathThrough([a, b])} />;
            return <Coast key={`${share}${side}`} from={a} to={b} side={side} />;
          })}
          <FlownLine points={flown} silent={rowsAfterSilence(series.timeMs)} />
          {fixPlaces(facts, series).map(({ ident, alongNm }) => {
            const [x, y] = place(alongNm, 0);
            const atEnd = alongNm > (frame.startNm + frame.endNm) / 2;
            return (
              <FixSign
                key={ident}
                x={x}
                y={y}
                ident={ident}
                dx={atEnd ? 9 : -6}
                dy={atEnd ? 4 : -10}
                anchor="start"
              />
            );
          })}
          <MarkedWay cursor={cursor} timeMs={series.timeMs} points={flown} />
          <WorkedWay
            exercise={exercise}
            series={series}
            place={place}
            noseAtNm={frame.startNm + (frame.endNm - frame.startNm) / 4}
          />
          <CursorRing cursor={cursor} timeMs={series.timeMs} points={flown} />
          {wind && (
            <g>
              <title>{windName(wind)}</title>
              <WindSign
                wind={wind}
                upTrueDeg={facts.courseTrueDeg - 90}
                trackTrueDeg={facts.courseTrueDeg}
                x={34}
                y={46}
              />
            </g>
          )}
          <NorthArrow x={width - 30} y={32} upTrueDeg={facts.courseTrueDeg - 90} />
          <text class="lab-i halo" x={84} y={20}>
            course {flownDirection(facts.courseTrueDeg, facts.courseMagneticDeg)} to the right
          </text>
          <ScaleBar x={8} y={height - 12} pxPerMile={px} words={scaleWords} />
        </Drawing>
      </PlanWindow>
      {silent && <p class="drawing-scale">{silent.trim()}</p>}
      {cutOff && (
        <p class="drawing-scale screen">
          The plan goes on to the right: drag it, or move it with the arrow keys.
        </p>
      )}
    </div>
  );
}
