/** The moment replayed: the needle, the track against the course, and how long until the needle would tell. */

import { CourseReadout } from "./CourseReadout.tsx";
import type { CourseRecord, CourseSeries } from "./contract.ts";
import { isTimed } from "./courseColumns.ts";
import type { Cursor } from "./cursor.ts";
import { ReplayBar } from "./ReplayBar.tsx";
import { NeedleRule, TrackAgainstCourse } from "./readouts.tsx";
import { secondsToQuarter } from "./secondsToQuarter.ts";
import { besideCourse, sideWord } from "./words.ts";

export function Replay(props: { exercise: CourseRecord; series: CourseSeries; cursor: Cursor }) {
  const { exercise, series, cursor } = props;
  const { facts } = exercise;
  if (!isTimed(series) || facts === null) return null;
  return (
    <ReplayBar title={exercise.title} timeMs={series.timeMs} cursor={cursor}>
      {(row) => (
        <>
          <NeedleRule needle={series.needle[row]} />
          <TrackAgainstCourse exercise={exercise} error={series.trackAngleErrorDeg[row]} />
          <CourseReadout facts={facts} series={series} row={row} />
          <Sentence exercise={exercise} series={series} row={row} />
        </>
      )}
    </ReplayBar>
  );
}

function Sentence({ exercise, series, row }: { exercise: CourseRecord; series: CourseSeries; row: number }) {
  const facts = exercise.facts;
  if (facts === null) return null;
  const off = series.crossTrackNm[row];
  const needle = series.needle[row];
  const error = series.trackAngleErrorDeg[row];
  const speed = series.groundSpeedKt[row];
  const distance = series.distanceToFixNm[row];
  const seconds = secondsToQuarter(facts, {
    offNm: off,
    errorDeg: error,
    speedKt: speed,
    distanceNm: distance,
  });
  return (
    <div class="words">
      Aircraft <b>{besideCourse(off, needle)}</b>, needle{" "}
      <b>
        {Math.abs(needle).toFixed(2)} {sideWord(-needle)}
      </b>
      .{" "}
      {Number.isFinite(error) && (
        <>
          Track{" "}
          <b>
            {Math.abs(error).toFixed(0)}° {sideWord(error)}
          </b>{" "}
          of course.
        </>
      )}
      {seconds !== null && (
        <>
          {" "}
          At this rate the needle reaches a quarter in <b>{seconds} s</b>.
        </>
      )}
    </div>
  );
}
