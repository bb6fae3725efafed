/** The moment replayed, whatever the exercise: clock, play, speed, slider, and between them what the exercise shows of it. */
import { useComputed, useSignal } from "@preact/signals";
import type { ComponentChildren } from "preact";
import { useEffect, useState } from "preact/hooks";
import { type Cursor, rowAt } from "./cursor.ts";
import { clockSecondsText } from "./words.ts";

/** Times as fast as flown. */
const SPEEDS: readonly number[] = [1, 2, 5, 10, 20];
const USUAL = 10;
/** A frame that comes later than this does not make the replay jump, ms. */
const LONGEST_FRAME_MS = 200;

const faster = (speed: number, by: number): number =>
  SPEEDS[Math.max(0, Math.min(SPEEDS.length - 1, SPEEDS.indexOf(speed) + by))];

export function ReplayBar(props: {
  title: string;
  timeMs: Float64Array;
  cursor: Cursor;
  /** What is shown of a row. */
  children: (row: number) => ComponentChildren;
}) {
  const { title, timeMs, cursor, children } = props;
  const [from, to] = [timeMs[0], timeMs[timeMs.length - 1]];
  const own = useSignal(from);
  const [playing, setPlaying] = useState(false);
  const [speed, setSpeed] = useState(USUAL);
  // drawn anew only when the row changes, not with every frame, nor when another exercise is replayed
  const row = useComputed(() => rowAt(timeMs, cursor.value) ?? rowAt(timeMs, own.value) ?? 0).value;
  useEffect(() => {
    if (!playing) return;
    let last = performance.now();
    let frame = 0;
    const onward = (now: number) => {
      const pointed = cursor.peek();
      const here = pointed !== null && rowAt(timeMs, pointed) !== null ? pointed : own.peek();
      const next = Math.min(to, here + Math.min(LONGEST_FRAME_MS, now - last) * speed);
      last = now;
      own.value = next;
      cursor.value = next;
      if (next >= to) setPlaying(false);
      else frame = requestAnimationFrame(onward);
    };
    frame = requestAnimationFrame(onward);
    return () => cancelAnimationFrame(frame);
  }, [playing, speed, to, timeMs, cursor, own]);
  const move = (moment: number) => {
    own.value = moment;
    cursor.value = moment;
  };
  const toggle = () => {
    if (!playing && own.peek() >= to) move(from);
    setPlaying(!playing);
  };
  const key = (event: KeyboardEvent) => {
    const onSlider = event.target instanceof HTMLInputElement;
    if (event.key === " " && onSlider) toggle();
    else if (event.key === "+") setSpeed(faster(speed, 1));
    else if (event.key === "-") setSpeed(faster(speed, -1));
    else return;
    event.preventDefault();
  };
  return (
    <section class="replay" aria-label={`Replay, ${title}`} onKeyDown={key}>
      <div class="clockbox">
        <div class="clock">{clockSecondsText(timeMs[row])}</div>
        <button type="button" onClick={toggle}>
          {playing ? "Pause" : "Play"}
        </button>{" "}
        <label class="speed">
          <span class="vh">Times as fast as flown</span>
          <select value={speed} onChange={(event) => setSpeed(Number(event.currentTarget.value))}>
            {SPEEDS.map((times) => (
              <option key={times} value={times}>
                × {times}
              </option>
            ))}
          </select>
        </label>
      </div>
      {children(row)}
      <label class="scrub">
        <input
          type="range"
          aria-label={`Moment of ${title}`}
          aria-valuetext={clockSecondsText(timeMs[row])}
          aria-keyshortcuts="Space + -"
          title="Arrow keys move by a second, space plays, + and − change the speed"
          min={from}
          max={to}
          step={1000}
          value={timeMs[row]}
          onInput={(event) => move(Number(event.currentTarget.value))}
        />
      </label>
    </section>
  );
}
