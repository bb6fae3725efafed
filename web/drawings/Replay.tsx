/** The moment replayed: the needle, the track against the course, and how long until the needle would tell. */
import { useEffect, useRef, useState } from "preact/hooks";
import { offCourse } from "../../src/index.ts";
import type { CourseRecord, CourseSeries } from "./contract.ts";
import { isTimed } from "./courseColumns.ts";
import { type Cursor, rowAt } from "./cursor.ts";
import { NeedleRule, TrackAgainstCourse } from "./readouts.tsx";
import { secondsToQuarter } from "./secondsToQuarter.ts";
import { clockSecondsText, sideWord } from "./words.ts";

/** Played 32 times as fast as flown: a tick of 1/16 s moves by 2 s. Own choice. */
const TICK_MS = 62.5;
const STEP_MS = 2000;

export function Replay({
  exercise,
  series,
  cursor,
}: {
  exercise: CourseRecord;
  series: CourseSeries;
  cursor: Cursor;
}) {
  const n = series.timeMs.length;
  const [from, to] = [series.timeMs[0], series.timeMs[n - 1]];
  const [own, setOwn] = useState(from);
  const [playing, setPlaying] = useState(false);
  const pointed = rowAt(series.timeMs, cursor.value);
  const row = pointed ?? rowAt(series.timeMs, own) ?? 0;
  const at = useRef(own);
  at.current = own;
  useEffect(() => {
    if (!playing) return;
    const clock = setInterval(() => {
      const next = Math.min(to, (cursor.peek() ?? at.current) + STEP_MS);
      at.current = next;
      cursor.value = next;
      setOwn(next);
      if (next >= to) setPlaying(false);
    }, TICK_MS);
    return () => clearInterval(clock);
  }, [playing, to, cursor]);
  if (!isTimed(series) || exercise.facts === null) return null;
  const move = (moment: number) => {
    setOwn(moment);
    cursor.value = moment;
  };
  return (
    <section class="replay" aria-label={`Replay, ${exercise.title}`}>
      <div class="clockbox">
        <div class="clock">{clockSecondsText(series.timeMs[row])}</div>
        <button
          type="button"
          onClick={() => {
            if (!playing && own >= to) move(from);
            setPlaying(!playing);
          }}
        >
          {playing ? "Pause" : "Play"}
        </button>
      </div>
      <NeedleRule needle={series.needle[row]} />
      <TrackAgainstCourse exercise={exercise} error={series.trackAngleErrorDeg[row]} />
      <Sentence exercise={exercise} series={series} row={row} />
      <label class="scrub">
        <input
          type="range"
          aria-label={`Moment of ${exercise.title}`}
          aria-valuetext={clockSecondsText(series.timeMs[row])}
          min={from}
          max={to}
          step={1000}
          value={series.timeMs[row]}
          onInput={(event) => move(Number(event.currentTarget.value))}
        />
      </label>
    </section>
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
      Aircraft <b>{offCourse(off)}</b>, needle{" "}
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
          of course
          {Number.isFinite(speed) && `, ${Math.round(speed)} kt over the ground`}
          {facts.fix !== null &&
            `, ${distance.toFixed(1)} NM ${facts.form === "from" ? "from" : "to"} ${facts.fix}`}
          .
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
