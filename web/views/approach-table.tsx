/** The profile of an approach and its strips as a table, every half mile of the way in. */
import {
  type ApproachFacts,
  type ApproachSeries,
  clockSeconds,
  count,
  sided,
  utcOf,
} from "../../src/index.ts";
import { knots, known, rowAtDistance } from "../drawings/index.ts";
import { high, upOrDown } from "../gate-rows.ts";
import { ChartTable } from "./chart-table.tsx";

const STEP_NM = 0.5;
const LEAST_NM = -0.5;

export function ApproachTable(props: { title: string; facts: ApproachFacts; series: ApproachSeries }) {
  const { title, facts, series } = props;
  const far = Math.floor(Math.max(facts.judged.fromNm, facts.intercept?.joinedDistanceNm ?? 0) / STEP_NM);
  const miles = Array.from(
    { length: Math.max(0, far - LEAST_NM / STEP_NM + 1) },
    (_, k) => (far - k) * STEP_NM,
  );
  const rows = miles.flatMap((nm) => {
    const row = rowAtDistance(series, nm);
    return row === null ? [] : [{ nm, row }];
  });
  return (
    <ChartTable
      what="The profile as a table"
      every="every half mile"
      title={title}
      head={
        <>
          <th class="r">NM to go</th>
          <th>UTC</th>
          <th class="r">Altitude</th>
          <th class="r">Off the final, NM</th>
          <th class="r">of full scale</th>
          {facts.glidePath && <th class="r">Glide path</th>}
          <th class="r">Rate, ft/min</th>
          <th class="r">Needed</th>
          <th class="r">Over ground</th>
        </>
      }
    >
      {rows.map(({ nm, row }) => (
        <tr key={nm}>
          <td class="r">{nm.toFixed(1)}</td>
          <td>{Number.isFinite(series.timeMs[row]) ? clockSeconds(utcOf(series.timeMs[row]!)) : ""}</td>
          <td class="r">{known(series.altitudeFt[row]!, (v) => `${count(v)} ft`)}</td>
          <td class="r">{known(series.crossTrackNm[row]!, (v) => sided(v, 2))}</td>
          <td class="r">{known(series.needle[row]!, (v) => sided(v, 2))}</td>
          {facts.glidePath && <td class="r">{known(series.glidePathNeedle[row]!, high)}</td>}
          <td class="r">{known(series.verticalFpm[row]!, upOrDown)}</td>
          <td class="r">{nm > 0 ? known(series.neededFpm[row]!, upOrDown) : ""}</td>
          <td class="r">{knots(series.groundSpeedKt[row]!)}</td>
        </tr>
      ))}
    </ChartTable>
  );
}
