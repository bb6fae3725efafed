/** The instruments of a moment on a course, in words: track, heading, wind, distance, height. */
import { type CourseFacts, type CourseSeries, count, windLabel } from "./contract.ts";
import { columnCourse, columnHeading, knots, known } from "./words.ts";

export function CourseReadout(props: { facts: CourseFacts; series: CourseSeries; row: number }) {
  const { facts, series, row } = props;
  const { fix, form, wind } = facts;
  const distance = fix === null ? "Along it" : `${form === "from" ? "From" : "To"} ${fix}`;
  return (
    <dl class="readout">
      <dt>Track</dt>
      <dd>{columnCourse(series.trackTrueDeg[row], facts)}</dd>
      <dt>Heading, estimated</dt>
      <dd>{columnHeading(series.headingTrueDeg[row], facts)}</dd>
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
