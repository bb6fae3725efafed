/** The flight along time: its altitude, its turns, and when each exercise was flown; dragging sets the times of the one that is open. */
import { useMemo, useRef, useState } from "preact/hooks";
import { count } from "../../src/index.ts";
import { pathThrough, useWidth } from "../drawings/index.ts";
import type { Flight } from "../flight.ts";
import { Handles } from "./handles.tsx";
import { change, chosen, endStep, said, values } from "./making.ts";
import { resultOf } from "./outcome.tsx";
import { exercisesOf } from "./reading.ts";
import {
  altitudeDrawn,
  BARS_PX,
  clockText,
  FOOT_PX,
  HEIGHT_PX,
  type TimeAxis,
  ticksOf,
  timeAxis,
  turnsOf,
} from "./times-geometry.ts";
import { LEAST_WINDOW_MS, setWindow, type Window, windowOf } from "./window.ts";

export function Times({ flight }: { flight: Flight }) {
  const box = useRef<HTMLDivElement>(null);
  const width = useWidth(box);
  const { path } = flight.series;
  const axis = useMemo(() => (width > 0 ? timeAxis(path, width) : null), [path, width]);
  return (
    <div ref={box} class="times">
      {axis && <Drawn flight={flight} axis={axis} />}
      {width > 0 && !axis && (
        <p class="fine">The log has no times, so exercises are found by their geometry.</p>
      )}
    </div>
  );
}

function Drawn({ flight, axis }: { flight: Flight; axis: TimeAxis }) {
  const { path } = flight.series;
  const [grip, setGrip] = useState<number | null>(null);
  const [drawn, setDrawn] = useState<Window | null>(null);
  const ground = useMemo(
    () => ({
      altitude: altitudeDrawn(path, axis),
      turns: turnsOf(path, axis),
      ticks: ticksOf(axis),
    }),
    [path, axis],
  );
  const index = chosen.value;
  const exercises = exercisesOf(values.value).length;
  const own = index === null ? null : (drawn ?? windowOf(index, axis));
  const msAt = (event: PointerEvent): number =>
    axis.toMs(event.clientX - (event.currentTarget as Element).getBoundingClientRect().left);
  const words =
    index === null
      ? "Open an exercise to set its times here."
      : own
        ? `Exercise ${index + 1}: ${clockText(own[0])} to ${clockText(own[1])} UTC.`
        : `Drag over the time of exercise ${index + 1}; else it is looked for.`;
  return (
    <>
      <p class="fine save">
        {words}{" "}
        {index !== null && own && (
          <button
            type="button"
            onClick={() => {
              change(["exercises", index, "between"], undefined);
              said.value = `Exercise ${index + 1} is looked for.`;
            }}
          >
            Look for it instead
          </button>
        )}
      </p>
      <svg
        class="drawing times-chart"
        role="img"
        width={axis.width}
        height={HEIGHT_PX}
        viewBox={`0 0 ${axis.width} ${HEIGHT_PX}`}
        aria-label={`The flight along time: altitude, turns in grey, and when each exercise was flown. ${words}`}
        onPointerDown={(event) => {
          if (index === null || event.button !== 0) return;
          event.currentTarget.setPointerCapture(event.pointerId);
          setGrip(msAt(event));
        }}
        onPointerMove={(event) => {
          if (grip === null) return;
          const ms = msAt(event);
          setDrawn([Math.min(grip, ms), Math.max(grip, ms)]);
        }}
        onPointerUp={() => {
          if (index !== null && drawn && drawn[1] - drawn[0] >= LEAST_WINDOW_MS) {
            setWindow(index, drawn);
            endStep();
          }
          setGrip(null);
          setDrawn(null);
        }}
        onPointerCancel={() => {
          setGrip(null);
          setDrawn(null);
        }}
      >
        {ground.turns.map(([from, to]) => (
          <rect
            key={from}
            class="turn-band"
            x={from}
            y={BARS_PX}
            width={Math.max(1, to - from)}
            height={HEIGHT_PX - BARS_PX - FOOT_PX}
          />
        ))}
        {ground.altitude && (
          <>
            <path class="flown thin" d={pathThrough(ground.altitude.points)} />
            <text class="lab halo" x={2} y={BARS_PX + 10}>
              {count(ground.altitude.highFt)} ft
            </text>
            <text class="lab halo" x={2} y={HEIGHT_PX - FOOT_PX - 3}>
              {count(ground.altitude.lowFt)} ft
            </text>
          </>
        )}
        <path class="axis-line" d={`M0 ${HEIGHT_PX - 20}H${axis.width}`} />
        {ground.ticks.map((ms) => (
          <text key={ms} class="lab" x={axis.toPx(ms)} y={HEIGHT_PX - 5} text-anchor="middle">
            {clockText(ms).slice(0, 5)}
          </text>
        ))}
        {Array.from({ length: exercises }, (_, i) => (
          <Bar key={i} index={i} axis={axis} />
        ))}
        {own && (
          <rect
            class="window"
            x={axis.toPx(own[0])}
            y={2}
            width={Math.max(2, axis.toPx(own[1]) - axis.toPx(own[0]))}
            height={HEIGHT_PX - 24}
          />
        )}
      </svg>
      {index !== null && own && !drawn && <Handles index={index} window={own} axis={axis} />}
    </>
  );
}

/** When an exercise was flown, as matched: its number over a bar. */
function Bar({ index, axis }: { index: number; axis: TimeAxis }) {
  const result = resultOf(index);
  if (!result?.startUtc || !result.endUtc) return null;
  const [from, to] = [axis.toPx(Date.parse(result.startUtc)), axis.toPx(Date.parse(result.endUtc))];
  const y = 16 + (index % 2) * 14;
  return (
    <g class={index === chosen.value ? "bar here" : "bar"}>
      <path d={`M${from} ${y + 4}H${Math.max(to, from + 2)}`} />
      <text class="lab b halo" x={(from + to) / 2} y={y} text-anchor="middle">
        {index + 1}
      </text>
    </g>
  );
}
