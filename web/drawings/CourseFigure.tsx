/** The figure of a course: needle, track angle error and wind against one axis, at the fixed scale, row under row. */
import { useRef } from "preact/hooks";
import { CourseCanvas } from "./CourseCanvas.tsx";
import { CursorRule } from "./CursorRule.tsx";
import type { CourseFacts, CourseRecord, CourseSeries, DocumentLeg } from "./contract.ts";
import { abscissa, isTimed } from "./courseColumns.ts";
import { limitDrawn, MINUTE_MS, margins, rowSize } from "./courseLayout.ts";
import type { Cursor } from "./cursor.ts";
import { InTurn } from "./InTurn.tsx";
import { cutRows } from "./rows.ts";
import { fixedScales, PX_PER_MM } from "./scale.ts";
import { silenceWords } from "./silences.ts";
import { type Surroundings, surroundings } from "./surroundings.ts";
import { useDrawnWidth } from "./useWidth.ts";
import { WindStrip } from "./WindStrip.tsx";
import { millimetreText } from "./words.ts";

/** On paper a course a little longer than a row is brought into one: a second row would cost a page. Own choice. */
const FITS_ON_PAPER = 1.35;

export interface CourseFigureProps {
  readonly exercise: CourseRecord;
  readonly series: CourseSeries;
  readonly legs: readonly DocumentLeg[];
  readonly cursor: Cursor;
  /** One row as wide as the column instead of the fixed scale; the figure says so. */
  readonly fit?: boolean;
}

export function CourseFigure({ exercise, series, legs, cursor, fit = false }: CourseFigureProps) {
  const box = useRef<HTMLDivElement>(null);
  const width = useDrawnWidth(box);
  const around = surroundings().value;
  const facts = exercise.facts;
  const x = abscissa(series);
  const span = finiteSpan(x);
  return (
    <div class="course-figure" ref={box}>
      {facts !== null && span !== null && width > 0 && (
        <Rows
          facts={facts}
          limit={limitDrawn(exercise)}
          {...{ title: exercise.title, series, legs, cursor, fit, around, width, span }}
        />
      )}
    </div>
  );
}

function Rows(props: {
  facts: CourseFacts;
  limit: number | null;
  title: string;
  series: CourseSeries;
  legs: readonly DocumentLeg[];
  cursor: Cursor;
  fit: boolean;
  around: Surroundings;
  width: number;
  span: { from: number; to: number };
}) {
  const { facts, limit, title, series, legs, cursor, around, width, span } = props;
  const { narrow, palette, paper } = around;
  const scales = fixedScales(narrow);
  const timed = isTimed(series);
  const m = margins(narrow);
  const unit = timed ? MINUTE_MS : 1;
  const mmPerUnit = timed ? scales.mmPerMinute : scales.mmPerMileOfChart;
  const roomPx = Math.max(40, width - m.left - m.right - 1);
  const fixedPx = (mmPerUnit * PX_PER_MM) / unit;
  const rowsNeeded = ((span.to - span.from) * fixedPx) / roomPx;
  const fit = props.fit || (paper && rowsNeeded > 1 && rowsNeeded <= FITS_ON_PAPER);
  const { rows, pxPerUnit } = cutRows({ ...span, pxPerUnit: fixedPx, step: unit, roomPx, fit });
  const per = timed ? "1 min" : "1 NM";
  const shownMm = millimetreText((pxPerUnit * unit) / PX_PER_MM);
  const full = `full scale = ${scales.mmPerFullScale} mm${timed ? `, 10° = ${scales.mmPerTenDegrees} mm` : ""}`;
  return (
    <>
      <InTurn>
        {rows.map((row, k) => {
          const given = {
            facts,
            limit,
            series,
            ...row,
            pxPerUnit,
            scales,
            narrow,
            continued: k > 0,
            palette,
          };
          return (
            <div class="course-row" key={row.from}>
              <CourseCanvas {...given} title={title} cursorSignal={cursor} paper={paper} />
              {timed && !paper && (
                <CursorRule
                  cursor={cursor}
                  timeMs={series.timeMs}
                  from={row.from}
                  to={row.to}
                  pxPerMs={pxPerUnit}
                  left={m.left}
                  top={m.top}
                  height={rowSize(given).height - m.top - m.bottom}
                />
              )}
              {timed && (
                <WindStrip
                  legs={legs}
                  from={row.from}
                  to={row.to}
                  pxPerMs={pxPerUnit}
                  left={m.left}
                  width={rowSize(given).width}
                  courseTrueDeg={facts.courseTrueDeg}
                />
              )}
            </div>
          );
        })}
      </InTurn>
      <p class="drawing-scale">
        {fit ? (
          <>
            <b>Fitted, not the fixed scale:</b> {per} = {shownMm}, {full}.
          </>
        ) : (
          <>
            Fixed scale: {per} = {shownMm}, {full}.{rows.length > 1 && " The course goes on in the next row."}
          </>
        )}
        {silenceWords(series.timeMs)}
      </p>
    </>
  );
}

function finiteSpan(x: Float64Array): { from: number; to: number } | null {
  let from = Number.POSITIVE_INFINITY;
  let to = Number.NEGATIVE_INFINITY;
  for (const value of x) {
    if (value < from) from = value;
    if (value > to) to = value;
  }
  return to > from ? { from, to } : null;
}
