/** The profile of a descent as a table, every mile of the way. */
import { clockSeconds, count, type DescentFacts, type DescentSeries, utcOf } from "../../src/index.ts";
import { knots, known, nearestRow } from "../drawings/index.ts";
import { ChartTable } from "./chart-table.tsx";

/** A mile more than the descent took, so that the level flight before it is seen. */
const BEFORE_NM = 1;

const tens = (value: number): string => {
  const size = count(Math.abs(Math.round(value / 10) * 10));
  return size === "0" || value > 0 ? size : `${size} up`;
};

export function DescentTable(props: { title: string; facts: DescentFacts; series: DescentSeries }) {
  const { title, facts, series } = props;
  const timed = Number.isFinite(series.timeMs[0]);
  const far = Math.ceil(facts.began?.toGoNm ?? 4) + BEFORE_NM;
  const rows = Array.from({ length: far + 2 }, (_, k) => far - k).flatMap((nm) => {
    const row = nearestRow(series.distanceToGoNm, nm, 0.1);
    return row === null ? [] : [{ nm, row }];
  });
  const [flown, needed] = timed
    ? [series.flownDownFpm, series.neededDownFpm]
    : [series.flownDownFtPerNm, series.neededDownFtPerNm];
  return (
    <ChartTable
      what="The profile as a table"
      every="every mile"
      title={title}
      head={
        <>
          <th class="r">NM to go</th>
          {timed && <th>UTC</th>}
          <th class="r">Height</th>
          <th class="r">Flown down, {timed ? "ft/min" : "ft/NM"}</th>
          <th class="r">Needed</th>
          <th class="r">Over ground</th>
        </>
      }
    >
      {rows.map(({ nm, row }) => (
        <tr key={nm}>
          <td class="r">{nm}</td>
          {timed && <td>{clockSeconds(utcOf(series.timeMs[row]!))}</td>}
          <td class="r">{known(series.altitudeFt[row]!, (v) => `${count(v)} ft`)}</td>
          <td class="r">{known(flown[row]!, tens)}</td>
          <td class="r">{nm > 0 ? known(needed[row]!, tens) : ""}</td>
          <td class="r">{knots(series.groundSpeedKt[row]!)}</td>
        </tr>
      ))}
    </ChartTable>
  );
}
