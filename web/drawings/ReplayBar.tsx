/** The moment replayed, whatever the exercise: clock, play, slider, and between them what the exercise shows of it. */
import type { ComponentChildren } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import { type Cursor, rowAt } from "./cursor.ts";
import { clockSecondsText } from "./words.ts";

/** Played 32 times as fast as flown: a tick of 1/16 s moves by 2 s. Own choice. */
const TICK_MS = 62.5;
const STEP_MS = 2000;

export function ReplayBar(props: {
  title: string;
  timeMs: Float64Array;
  cursor: Cursor;
  /** What is shown of a row. */
  children: (row: number) => ComponentChildren;
}) {
  const { title, timeMs, cursor, children } = props;
  const [from, to] = [timeMs[0], timeMs[timeMs.length - 1]];
  const [own, setOwn] = useState(from);
  const [playing, setPlaying] = useState(false);
  const row = rowAt(timeMs, cursor.value) ?? rowAt(timeMs, own) ?? 0;
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
  const move = (moment: number) => {
    setOwn(moment);
    cursor.value = moment;
  };
  return (
    <section class="replay" aria-label={`Replay, ${title}`}>
      <div class="clockbox">
        <div class="clock">{clockSecondsText(timeMs[row])}</div>
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
      {children(row)}
      <label class="scrub">
        <input
          type="range"
          aria-label={`Moment of ${title}`}
          aria-valuetext={clockSecondsText(timeMs[row])}
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
