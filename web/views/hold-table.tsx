/** The plan of a hold as a table, every half minute: where the aircraft was, on which leg of which lap. */
import { clockSeconds, type HoldFacts, type HoldSeries, sided, utcOf } from "../../src/index.ts";
import {
  columnCourse,
  columnHeading,
  HOLD_PARTS,
  holdMoment,
  InTurn,
  knots,
  known,
} from "../drawings/index.ts";
import { sampledRows } from "../half-minutes.ts";
import { ChartTable } from "./chart-table.tsx";

/** Over half an hour. */
const ROWS_A_TASK = 80;

interface Props {
  readonly title: string;
  readonly facts: HoldFacts;
  readonly series: HoldSeries;
}

export function HoldTable({ title, facts, series }: Props) {
  return (
    <ChartTable
      what="The plan as a table"
      every="every half minute"
      title={title}
      head={
        <>
          <th>UTC</th>
          <th>Lap</th>
          <th>Leg</th>
          <th class="r">From {facts.fix.ident ?? "the fix"}</th>
          <th class="r">Before the fix, along the course</th>
          <th class="r">Off the inbound course</th>
          <th class="r">Track</th>
          <th class="r">Heading, estimated</th>
          <th class="r">Over ground</th>
        </>
      }
    >
      <InTurn each={ROWS_A_TASK}>
        {sampledRows(series).map((row) => {
          const { lap, part, distanceNm } = holdMoment(facts, series, row);
          return (
            <tr key={row}>
              <td>{clockSeconds(utcOf(series.timeMs[row]!))}</td>
              <td>{lap}</td>
              <td>{HOLD_PARTS[part]}</td>
              <td class="r">{known(distanceNm, (v) => `${v.toFixed(1)} NM`)}</td>
              <td class="r">{known(-series.alongNm[row]!, (v) => `${v.toFixed(1)} NM`)}</td>
              <td class="r">{known(series.crossTrackNm[row]!, (v) => sided(v, 2, " NM"))}</td>
              <td class="r">{columnCourse(series.trackTrueDeg[row]!, facts)}</td>
              <td class="r">{columnHeading(series.headingTrueDeg[row]!, facts)}</td>
              <td class="r">{knots(series.groundSpeedKt[row]!)}</td>
            </tr>
          );
        })}
      </InTurn>
    </ChartTable>
  );
}
