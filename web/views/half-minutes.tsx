/** The chart of a course as a table, for those who read numbers, and for screen readers. */
import type { CourseFacts, CourseSeries } from "../../src/index.ts";
import { clockSeconds, sided, utcOf } from "../../src/index.ts";
import { InTurn, knots, known } from "../drawings/index.ts";
import { sampledRows } from "../half-minutes.ts";
import { ChartTable } from "./chart-table.tsx";

interface Props {
  readonly title: string;
  readonly facts: CourseFacts;
  readonly columns: CourseSeries;
}

/** Over half an hour. */
const ROWS_A_TASK = 80;

export function HalfMinutes({ title, facts, columns }: Props) {
  const timed = Number.isFinite(columns.timeMs[0]);
  const fitted = facts.form === "fitted";
  const distance = fitted
    ? "NM flown"
    : `NM ${facts.form === "from" ? "from" : "to"} ${facts.fix ?? "the end"}`;
  return (
    <ChartTable
      what="The chart as a table"
      every={`every half ${timed ? "minute" : "mile"}`}
      title={title}
      head={
        <>
          {timed && <th>UTC</th>}
          <th class="r">{distance}</th>
          <th class="r">Off course, NM</th>
          {!fitted && <th class="r">Needle</th>}
          <th class="r">Track error</th>
          <th class="r">Over ground</th>
        </>
      }
    >
      <InTurn each={ROWS_A_TASK}>
        {sampledRows(columns).map((i) => (
          <tr key={i}>
            {timed && <td>{clockSeconds(utcOf(columns.timeMs[i]!))}</td>}
            <td class="r">
              {known((fitted ? columns.alongNm : columns.distanceToFixNm)[i]!, (v) => v.toFixed(1))}
            </td>
            <td class="r">{known(columns.crossTrackNm[i]!, (v) => sided(v, 2))}</td>
            {/* The needle points to where the course is: left when right of it. */}
            {!fitted && <td class="r">{known(columns.needle[i]!, (v) => sided(-v, 2))}</td>}
            <td class="r">{known(columns.trackAngleErrorDeg[i]!, (v) => sided(v, 0, "°"))}</td>
            <td class="r">{knots(columns.groundSpeedKt[i]!)}</td>
          </tr>
        ))}
      </InTurn>
    </ChartTable>
  );
}
