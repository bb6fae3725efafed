/** The ends of a time window as sliders, for hand and keyboard. */
import { endStep } from "./making.ts";
import { clockText, type TimeAxis } from "./times-geometry.ts";
import { LEAST_WINDOW_MS, setWindow, type Window } from "./window.ts";

const KEY_STEP_S = 10;

export function Handles({ index, window, axis }: { index: number; window: Window; axis: TimeAxis }) {
  const set = (end: 0 | 1, seconds: number) => {
    const ms = axis.start + seconds * 1000;
    const next: Window =
      end === 0
        ? [Math.min(ms, window[1] - LEAST_WINDOW_MS), window[1]]
        : [window[0], Math.max(ms, window[0] + LEAST_WINDOW_MS)];
    setWindow(index, next);
  };
  const length = Math.round((axis.end - axis.start) / 1000);
  return (
    <div class="handles">
      {([0, 1] as const).map((end) => (
        <label key={end} class="fine">
          {end === 0 ? "Begins" : "Ends"}
          <input
            type="range"
            min={0}
            max={length}
            step={KEY_STEP_S}
            value={Math.round((window[end] - axis.start) / 1000)}
            aria-valuetext={`${clockText(window[end])} UTC`}
            onInput={(event) => set(end, Number(event.currentTarget.value))}
            onChange={endStep}
          />
        </label>
      ))}
    </div>
  );
}
