/** The moment of a hold replayed: a ring in the plan, and in words the leg, heading, track and wind correction. */
import { type HoldFacts, type HoldRecord, type HoldSeries, offCourse, sided } from "./contract.ts";
import type { Cursor } from "./cursor.ts";
import { HOLD_PARTS, holdMoment } from "./holdMoment.ts";
import { type ReadoutProps, ReplayOf } from "./ReplayOf.tsx";
import { columnCourse, columnHeading, knots } from "./words.ts";

export function HoldReplay(props: { exercise: HoldRecord; series: HoldSeries; cursor: Cursor }) {
  return <ReplayOf {...props} Readout={Readout} />;
}

function Readout({ facts, series, row }: ReadoutProps<HoldFacts, HoldSeries>) {
  const moment = holdMoment(facts, series, row);
  const where = [
    ...(moment.lap === null ? [] : [`Lap ${moment.lap}`]),
    HOLD_PARTS[moment.part],
    ...(moment.seconds === null ? [] : [`${Math.round(moment.seconds)} s into the leg`]),
  ].join(", ");
  return (
    <dl class="readout">
      <dt>Where</dt>
      <dd class="wide">{where}</dd>
      <dt>Heading, estimated</dt>
      <dd>{columnHeading(series.headingTrueDeg[row], facts)}</dd>
      <dt>Track</dt>
      <dd>{columnCourse(series.trackTrueDeg[row], facts)}</dd>
      <dt>Wind correction</dt>
      <dd>{moment.correctionDeg === null ? "none to tell" : sided(moment.correctionDeg, 0, "°")}</dd>
      <dt>Off the inbound course</dt>
      <dd>{offCourse(series.crossTrackNm[row]).replace(" of course", "")}</dd>
      <dt>From {facts.fix.ident ?? "the fix"}</dt>
      <dd>{moment.distanceNm.toFixed(1)} NM</dd>
      <dt>Over the ground</dt>
      <dd>{knots(series.groundSpeedKt[row])}</dd>
    </dl>
  );
}
