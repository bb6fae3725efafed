/** The charts of an arc as a table, every five degrees of it. */
import { type ArcFacts, type ArcSeries, clockSeconds, offArc, sided, utcOf } from "../../src/index.ts";
import { columnCourse, columnHeading, judgedRows, knots, known, nearestRow } from "../drawings/index.ts";
import { ChartTable } from "./chart-table.tsx";

const STEP_DEG = 5;

export function ArcTable({ title, facts, series }: { title: string; facts: ArcFacts; series: ArcSeries }) {
  const within = judgedRows(series.judged);
  const rows = Array.from({ length: Math.floor(facts.sweepDeg / STEP_DEG) + 1 }, (_, k) =>
    nearestRow(series.goneDeg, k * STEP_DEG, STEP_DEG / 5, within),
  ).filter((row) => row !== null);
  return (
    <ChartTable
      what="The charts as a table"
      every={`every ${STEP_DEG}° of the arc`}
      title={title}
      head={
        <>
          <th>Radial</th>
          <th>UTC</th>
          <th class="r">From {facts.fix}</th>
          <th class="r">Off the arc</th>
          <th class="r">Track error</th>
          <th class="r">Heading, estimated</th>
          <th class="r">Over ground</th>
        </>
      }
    >
      {rows.map((row) => (
        <tr key={row}>
          <td>{columnCourse(series.radialTrueDeg[row]!, facts)}</td>
          <td>{Number.isFinite(series.timeMs[row]) ? clockSeconds(utcOf(series.timeMs[row]!)) : ""}</td>
          <td class="r">{known(series.distanceNm[row]!, (v) => `${v.toFixed(2)} NM`)}</td>
          <td class="r">{known(series.deviationNm[row]!, offArc)}</td>
          <td class="r">{known(series.trackAngleErrorDeg[row]!, (v) => sided(v, 0, "°"))}</td>
          <td class="r">{columnHeading(series.headingTrueDeg[row]!, facts)}</td>
          <td class="r">{knots(series.groundSpeedKt[row]!)}</td>
        </tr>
      ))}
    </ChartTable>
  );
}
