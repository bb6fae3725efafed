/** The drawings of one course: chart, plan and replay, all pointed at one moment, at the fixed scale unless asked. */
import { useMemo, useState } from "preact/hooks";
import type { CourseRecord, CourseSeries, DocumentLeg } from "../../src/index.ts";
import { CourseFigure, CoursePlan, type Cursor, InTurn, Replay, thinned } from "../drawings/index.ts";

interface Props {
  readonly exercise: CourseRecord;
  readonly series: CourseSeries;
  readonly legs: readonly DocumentLeg[];
  readonly cursor: Cursor;
}

function ScaleSwitch({ fit, set }: { fit: boolean; set: (fit: boolean) => void }) {
  return (
    <span class="fit screen">
      <b>{fit ? "Fitted to this page" : "Fixed scale"}</b>{" "}
      <button type="button" onClick={() => set(!fit)}>
        {fit ? "back to the fixed scale" : "fit this one"}
      </button>
    </span>
  );
}

export function CourseDrawings({ exercise, series, legs, cursor }: Props) {
  const [fit, setFit] = useState(false);
  const drawn = useMemo(() => thinned(series), [series]);
  const angular = exercise.facts?.scale.kind === "angular";
  return (
    <InTurn>
      <figure>
        <CourseFigure exercise={exercise} series={drawn} legs={legs} cursor={cursor} fit={fit} />
        <figcaption>
          Right of course is drawn below the line, as on a plan turned with the course to the right; the
          needle itself moves the other way.{" "}
          {angular &&
            "Dashed lines join points equally far off course: near the station the same distance moves the needle more. "}
          Grey: needle under a quarter, track error under 3°. <ScaleSwitch fit={fit} set={setFit} />
        </figcaption>
      </figure>
      {/* On paper the plan of a straight line says no more than the chart above it. */}
      <figure class={exercise.source === "fitted" ? "screen" : ""}>
        <CoursePlan
          exercise={exercise}
          series={drawn}
          wind={exercise.facts?.wind ?? null}
          cursor={cursor}
          fit={fit}
        />
      </figure>
      <Replay exercise={exercise} series={series} cursor={cursor} />
    </InTurn>
  );
}
