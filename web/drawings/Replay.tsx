/** The moment replayed: the needle, the track against the course, and how long until the needle would tell. */
import { useEffect, useState } from "preact/hooks";
import type { CourseSeries, DocumentExercise } from "./contract.ts";
import { isTimed } from "./courseColumns.ts";
import { type Cursor, rowAt } from "./cursor.ts";
import { line } from "./path.ts";
import { hachures } from "./plugins/coast.ts";
import { secondsToQuarter } from "./secondsToQuarter.ts";
import { clockSecondsText, directionText, sideWord } from "./words.ts";

/** Played 32 times as fast as flown: a tick of 1/16 s moves by 2 s. Own choice. */
const TICK_MS = 62.5;
const STEP_MS = 2000;

export function Replay({
  exercise,
  series,
  cursor,
}: {
  exercise: DocumentExercise;
  series: CourseSeries;
  cursor: Cursor;
}) {
  const n = series.timeMs.length;
  const [from, to] = [series.timeMs[0], series.timeMs[n - 1]];
  const [own, setOwn] = useState(from);
  const [playing, setPlaying] = useState(false);
  const pointed = rowAt(series.timeMs, cursor.value);
  const row = pointed ?? rowAt(series.timeMs, own) ?? 0;
  useEffect(() => {
    if (!playing) return;
    const clock = setInterval(() => {
      const next = Math.min(to, (cursor.peek() ?? own) + STEP_MS);
      cursor.value = next;
      setOwn(next);
      if (next >= to) setPlaying(false);
    }, TICK_MS);
    return () => clearInterval(clock);
  }, [playing, own, to, cursor]);
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

/** Full scale is 100 px on this rule; the needle goes left when the aircraft is right of course. */
function NeedleRule({ needle }: { needle: number }) {
  const x = 125 - Math.max(-1, Math.min(1, needle)) * 100;
  const name = `needle ${Math.abs(needle).toFixed(2)} of full scale ${sideWord(-needle)}`;
  return (
    <svg class="drawing" width="250" height="58" viewBox="0 0 250 58" role="img" aria-label={name}>
      <title>{name}</title>
      <text class="lab-i" x="125" y="10" text-anchor="middle">
        needle
      </text>
      <rect class="quiet" x="100" y="31" width="50" height="12" />
      {[25, 50, 75, 100, 125, 150, 175, 200, 225].map((at) => (
        <path key={at} class="axis" d={line(at, 24, at, 30)} />
      ))}
      <path class="axis" d={line(17, 30, 233, 30)} />
      {([1, -1] as const).map((far) => (
        <g key={far} transform={`translate(${125 - far * 75} 24) rotate(90)`}>
          <path class="limit" d={line(0, 0, 20, 0)} />
          <path
            class="hach"
            d={hachures(0, 20, 0, far)
              .map((h) => line(...h))
              .join("")}
          />
        </g>
      ))}
      <path class="course" d={line(125, 22, 125, 44)} />
      {Number.isFinite(x) && <path class="needle-bar" d={line(x, 17, x, 46)} />}
      <text class="lab" x="17" y="57">
        full left
      </text>
      <text class="lab" x="233" y="57" text-anchor="end">
        full right
      </text>
    </svg>
  );
}

function TrackAgainstCourse({ exercise, error }: { exercise: DocumentExercise; error: number }) {
  const facts = exercise.facts;
  if (facts === null) return null;
  const magnetic = facts.courseMagneticDeg;
  const course = magnetic === null ? directionText(facts.courseTrueDeg, "T") : directionText(magnetic, "M");
  const known = Number.isFinite(error);
  const track = !known
    ? "not known"
    : magnetic === null
      ? directionText(facts.courseTrueDeg + error, "T")
      : directionText(magnetic + error, "M");
  const name = `course ${course}, track ${track}`;
  return (
    <svg class="drawing r2" width="210" height="58" viewBox="0 0 210 58" role="img" aria-label={name}>
      <title>{name}</title>
      <path class="course" d={line(95, 54, 95, 6)} />
      {known && (
        <g transform={`rotate(${error.toFixed(1)} 95 54)`}>
          <path class="flown" d={line(95, 54, 95, 8)} />
        </g>
      )}
      <circle class="fixdot" cx="95" cy="54" r="2.4" />
      <text class="lab" x="0" y="30">
        course {course}
      </text>
      <text class="lab b halo" x="118" y="48">
        track {track}
      </text>
    </svg>
  );
}

function Sentence({
  exercise,
  series,
  row,
}: {
  exercise: DocumentExercise;
  series: CourseSeries;
  row: number;
}) {
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
      Aircraft{" "}
      <b>
        {Math.abs(off).toFixed(2)} NM {sideWord(off)} of course
      </b>
      , needle{" "}
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
