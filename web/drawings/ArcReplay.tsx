/** The moment of an arc replayed: radial, distance, how far off, heading, track, and the correction. */
import { type ArcFacts, type ArcRecord, type ArcSeries, offArc, sided } from "./contract.ts";
import type { Cursor } from "./cursor.ts";
import { type ReadoutProps, ReplayOf } from "./ReplayOf.tsx";
import { ON_ARC, secondsToQuarter } from "./secondsToQuarter.ts";
import { columnCourse, columnHeading, knots, known } from "./words.ts";

export function ArcReplay(props: { exercise: ArcRecord; series: ArcSeries; cursor: Cursor }) {
  return <ReplayOf {...props} Readout={Readout} />;
}

function Readout({ facts, series, row }: ReadoutProps<ArcFacts, ArcSeries>) {
  const seconds = secondsToQuarter(ON_ARC, {
    offNm: series.crossTrackNm[row],
    errorDeg: series.trackAngleErrorDeg[row],
    speedKt: series.groundSpeedKt[row],
    distanceNm: facts.radiusNm,
  });
  return (
    <dl class="readout">
      <dt>Radial</dt>
      <dd>{columnCourse(series.radialTrueDeg[row], facts)}</dd>
      <dt>From {facts.fix}</dt>
      <dd>{known(series.distanceNm[row], (nm) => `${nm.toFixed(2)} NM`)}</dd>
      <dt>Off the arc</dt>
      <dd>{known(series.deviationNm[row], offArc)}</dd>
      <dt>Track</dt>
      <dd>{columnCourse(series.trackTrueDeg[row], facts)}</dd>
      <dt>Against the tangent</dt>
      <dd>{known(series.trackAngleErrorDeg[row], (deg) => sided(deg, 0, "°"))}</dd>
      <dt>A quarter mile off</dt>
      <dd>{seconds === null ? "not at this rate" : `in ${seconds} s`}</dd>
      <dt>Heading, estimated</dt>
      <dd>{columnHeading(series.headingTrueDeg[row], facts)}</dd>
      <dt>Over the ground</dt>
      <dd>{knots(series.groundSpeedKt[row])}</dd>
    </dl>
  );
}
