/** A habit over all flights: a dot an exercise with its doubt, coasts at the tolerance, the robust mean at the right. */
import { type Habit, SMALL } from "../../src/index.ts";
import { Drawing } from "./Drawing.tsx";
import { flightTicks, MOST, PANEL, panelPaths, panelScale } from "./habitGeometry.ts";
import { line } from "./path.ts";

const { width, height, left, right, meanX, axis } = PANEL;

/** Hachures beyond the tolerance, away from the middle. */
function hachures(y: number, away: number): string {
  let d = "";
  for (let x = left + 3; x < right; x += 6) d += line(x, y, x - 1.5, y + away * 4.5);
  return d;
}

interface Props {
  readonly habit: Habit;
  readonly flights: number;
  readonly title: string;
  /** Names of the sides above 0 and below. */
  readonly sides: { readonly more: string; readonly less: string };
}

export function HabitPanel({ habit, flights, title, sides }: Props) {
  const scale = panelScale(habit, flights);
  const { x, y, up } = scale;
  const { dots, whiskers, past } = panelPaths(habit, scale);
  const { mean, trend } = habit;
  const [above, below] = up > 0 ? [sides.more, sides.less] : [sides.less, sides.more];
  const name = `${title}, each exercise over ${flights} ${flights === 1 ? "flight" : "flights"}`;
  const few = habit.status === "too-few";
  const [top, bottom] = [y(up), y(-up)];
  return (
    <Drawing kind="habit-panel" name={name} width={width} height={height}>
      <rect
        class="quiet"
        x={left}
        y={y(up * SMALL)}
        width={right - left}
        height={y(-up * SMALL) - y(up * SMALL)}
      />
      <path class="limit" d={line(left, top, right, top)} />
      <path class="hach" d={hachures(top, -1)} />
      {!habit.oneSided && (
        <>
          <path class="limit" d={line(left, bottom, right, bottom)} />
          <path class="hach" d={hachures(bottom, 1)} />
        </>
      )}
      <path class="course" d={line(left, y(0), right, y(0))} />
      <text class="lab-i" x={left - 6} y={y(up * MOST) + 9} text-anchor="end">
        {above}
      </text>
      <text class="lab" x={left - 6} y={top + 4} text-anchor="end">
        1
      </text>
      <text class="lab" x={left - 6} y={y(0) + 4} text-anchor="end">
        0
      </text>
      {!habit.oneSided && (
        <text class="lab" x={left - 6} y={bottom + 4} text-anchor="end">
          1
        </text>
      )}
      {!habit.oneSided && (
        <text class="lab-i" x={left - 6} y={y(-up * MOST) - 1} text-anchor="end">
          {below}
        </text>
      )}
      <path class="axis" d={line(x(0), axis, x(flights - 1), axis)} />
      {flightTicks(flights).map((n) => (
        <g key={n}>
          <path class="axis" d={line(x(n - 1), axis, x(n - 1), axis + 4)} />
          <text class="lab" x={x(n - 1)} y={axis + 17} text-anchor="middle">
            {n}
          </text>
        </g>
      ))}
      {trend && (
        <path
          class="trend"
          d={line(x(0), y(trend.from), x(flights - 1), y(trend.from + trend.perFlight * (flights - 1)))}
        />
      )}
      <path class="whisk o" d={whiskers} />
      <path class={few ? "dot-o" : "dot"} d={dots} />
      <path class={few ? "dot-o" : "dot"} d={past} />
      {mean && (
        <>
          <path class="whisk" d={line(meanX, y(mean.low95), meanX, y(mean.high95))} />
          <circle class="dot" cx={meanX} cy={y(mean.value)} r={4} />
        </>
      )}
    </Drawing>
  );
}
