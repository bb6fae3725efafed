/** The instruments of a moment on a course, in words: track, heading, wind, distance, height. */
import { type CourseFacts, type CourseSeries, count, windLabel } from "./contract.ts";
import { directionsBeside, knots, known } from "./words.ts";

export function CourseReadout(props: { facts: CourseFacts; series: CourseSeries; row: number }) {
  const { facts, series, row } = props;
  const { courseTrueDeg, courseMagneticDeg, fix, form, wind } = facts;
  const flown = directionsBeside(courseTrueDeg, courseMagneticDeg);
  const distance = fix === null ? "Along it" : `${form === "from" ? "From" : "To"} ${fix}`;
  return (
    <dl class="readout">
      <dt>Track</dt>
      <dd>{flown(series.trackTrueDeg[row])}</dd>
      <dt>Heading, estimated</dt>
      <dd>{flown(series.headingTrueDeg[row])}</dd>
      <dt>Wind here</dt>
      <dd>{wind ? windLabel(wind) : "not known"}</dd>
      <dt>{distance}</dt>
      <dd>{known(series.distanceToFixNm[row], (nm) => `${nm.toFixed(1)} NM`)}</dd>
      <dt>Over the ground</dt>
      <dd>{knots(series.groundSpeedKt[row])}</dd>
      <dt>Height by the log</dt>
      <dd>{known(series.altitudeFt[row], (ft) => `${count(Math.round(ft))} ft`)}</dd>
    </dl>
  );
}
