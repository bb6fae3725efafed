/** The wind against height: a dot a band with its 95 % whisker, direction and speed beside each other. */

import { count, trueDirection, windLabel, windName } from "../../src/index.ts";
import { Drawing } from "./Drawing.tsx";
import { line } from "./path.ts";
import { ticksWithin } from "./rows.ts";
import { fixedScales } from "./scale.ts";
import { surroundings } from "./surroundings.ts";
import { TICK_DEG, TICK_KT } from "./windChartLayout.ts";
import { type HeightLayout, heightLayout, shownByHeight, type WindBands } from "./windHeights.ts";
import type { Level } from "./windStrokes.ts";
import { millimetreText } from "./words.ts";

export { shownByHeight };

const LEFT_PX = 54;
const TOP_PX = 24;
const FOOT_PX = 24;
const BETWEEN_PX = 40;
/** Room for "360°T 120 kt" at the right of each band. */
const LABEL_PX = 96;

export function WindHeight({ bands }: { bands: WindBands | undefined }) {
  const { narrow } = surroundings().value;
  if (!shownByHeight(bands)) return null;
  const scales = fixedScales(narrow);
  const l = heightLayout(bands, scales);
  const shown = l.window.direction;
  // on a narrow window the speed stands under the direction
  const speedX = LEFT_PX + (shown && !narrow ? l.directionWidth + BETWEEN_PX : 0);
  const speedY = TOP_PX + (shown && narrow ? l.height + FOOT_PX + TOP_PX + 10 : 0);
  const width = Math.ceil(Math.max(speedX + l.speedWidth + LABEL_PX, LEFT_PX + l.directionWidth + 20));
  const height = Math.ceil(speedY + l.height + FOOT_PX);
  const said = bands.map(
    ({ lowFt, highFt, wind }) => `${count(lowFt)} to ${count(highFt)} ft ${windName(wind)}`,
  );
  const name = `Wind against height, with 95 % doubt: ${said.join("; ")}`;
  const mm = millimetreText(l.mmPerThousandFeet);
  const across = `30° = ${scales.mmPerThirtyDegreesOfWind} mm, 10 kt = ${scales.mmPerTenKnots} mm`;
  return (
    <>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by the keyboard */}
      <section class="scroll" tabIndex={0} aria-label="Wind against height">
        <Drawing kind="wind-height" name={name} width={width} height={height}>
          {shown && (
            <Plot
              {...{
                l,
                x: LEFT_PX,
                y: TOP_PX,
                width: l.directionWidth,
                heights: true,
                title: "Wind from, true",
              }}
              {...{ min: shown.min, max: shown.max, step: TICK_DEG }}
              text={trueDirection}
              level={(mark) => mark.direction}
            />
          )}
          <Plot
            {...{
              l,
              x: speedX,
              y: speedY,
              width: l.speedWidth,
              heights: narrow || !shown,
              title: "Speed, kt",
            }}
            {...{ min: 0, max: l.window.topKt, step: TICK_KT }}
            text={String}
            level={(mark) => mark.speed}
          />
          {l.marks.map((mark) => (
            <text class="lab wi" key={mark.band.lowFt} x={speedX + l.speedWidth + 8} y={speedY + mark.y + 4}>
              {mark.direction ? windLabel(mark.band.wind) : `${Math.round(mark.speed?.value ?? 0)} kt`}
            </text>
          ))}
        </Drawing>
      </section>
      <p class="drawing-scale">
        {l.fitted ? <b>Fitted, not the fixed scale:</b> : "Fixed scale:"} 1,000 ft = {mm}; {across}.
      </p>
    </>
  );
}

/** One quantity against height. */
function Plot(props: {
  l: HeightLayout;
  x: number;
  y: number;
  width: number;
  heights: boolean;
  title: string;
  min: number;
  max: number;
  step: number;
  text: (value: number) => string;
  level: (mark: HeightLayout["marks"][number]) => Level | null;
}) {
  const { l, width, min, max, text } = props;
  const at = (value: number) => ((Math.max(min, Math.min(max, value)) - min) / (max - min)) * width;
  // every tick has its line; a name needs 34 px
  const every = (props.step / (max - min)) * width >= 34 ? 1 : 2;
  return (
    <g transform={`translate(${props.x} ${props.y})`}>
      <text class="lab b" x={props.heights ? -props.x : 0} y={-11}>
        {props.heights
          ? `Height, ft; ${props.title.charAt(0).toLowerCase()}${props.title.slice(1)}`
          : props.title}
      </text>
      {l.ticks.map(({ ft, y }) => (
        <g key={ft}>
          <path class="hair" d={line(0, y, width, y)} />
          {props.heights && (
            <text class="lab" x={-8} y={y + 4} text-anchor="end">
              {count(ft)}
            </text>
          )}
        </g>
      ))}
      {ticksWithin(min, max, props.step).map((value, k) => (
        <g key={value}>
          <path class="hair" d={line(at(value), 0, at(value), l.height)} />
          <path class="axis" d={line(at(value), l.height, at(value), l.height + 4)} />
          {k % every === 0 && (
            <text class="lab" x={at(value)} y={l.height + 18} text-anchor="middle">
              {text(value)}
            </text>
          )}
        </g>
      ))}
      <path class="axis" d={line(0, l.height, width, l.height)} />
      <path class="axis" d={line(0, 0, 0, l.height)} />
      {l.marks.map((mark) => {
        const level = props.level(mark);
        return (
          level && (
            <g key={mark.band.lowFt}>
              <path class="windwhisk" d={line(at(level.low), mark.y, at(level.high), mark.y)} />
              <circle class="winddot" cx={at(level.value)} cy={mark.y} r={3.4} />
            </g>
          )
        );
      })}
    </g>
  );
}
