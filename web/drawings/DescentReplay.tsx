/** The moment of a descent replayed: to go, to lose, the rate flown and the one needed. */
import {
  count,
  type DescentFacts,
  type DescentRecord,
  type DescentSeries,
  trueDirection,
} from "./contract.ts";
import type { Cursor } from "./cursor.ts";
import { type ReadoutProps, ReplayOf } from "./ReplayOf.tsx";
import { knots, known } from "./words.ts";

export function DescentReplay(props: { exercise: DescentRecord; series: DescentSeries; cursor: Cursor }) {
  return <ReplayOf {...props} Readout={Readout} />;
}

/** Down positive in these columns. */
export const downFpm = (fpm: number): string => {
  const size = count(Math.abs(Math.round(fpm / 10) * 10));
  return size === "0" ? "0 ft/min" : `${size} ft/min ${fpm > 0 ? "down" : "up"}`;
};

function Readout({ facts, series, row }: ReadoutProps<DescentFacts, DescentSeries>) {
  const toGo = series.distanceToGoNm[row];
  const where = `${Math.abs(toGo).toFixed(1)} NM ${toGo < 0 ? "past" : "before"} the point`;
  return (
    <dl class="readout">
      <dt>Where</dt>
      <dd class="wide">{where}</dd>
      <dt>Height by the log</dt>
      <dd>{known(series.altitudeFt[row], (ft) => `${count(ft)} ft`)}</dd>
      <dt>To lose</dt>
      <dd>{known(series.altitudeFt[row] - facts.toFt, (ft) => `${count(Math.max(0, ft))} ft`)}</dd>
      <dt>Flown</dt>
      <dd>{known(series.flownDownFpm[row], downFpm)}</dd>
      <dt>Needed</dt>
      <dd>{toGo > 0 ? known(series.neededDownFpm[row], downFpm) : "the point is past"}</dd>
      <dt>Over the ground</dt>
      <dd>{knots(series.groundSpeedKt[row])}</dd>
      <dt>Track</dt>
      <dd>{known(series.trackTrueDeg[row], trueDirection)}</dd>
    </dl>
  );
}
