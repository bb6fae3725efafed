/** A row of the line-up: one exercise as a dot on the way from needle centred to full scale, always 52 mm. */

import { type CourseRecord, needleSize } from "./contract.ts";
import { Drawing } from "./Drawing.tsx";
import { line } from "./path.ts";
import { fixedScales, PX_PER_MM } from "./scale.ts";

const LEFT_PX = 4;
const FULL_PX = fixedScales(false).mmPerFullScaleOfLineUp * PX_PER_MM;
const WIDTH_PX = Math.ceil(LEFT_PX + FULL_PX + 46);
const HEIGHT_PX = 34;
const MIDDLE = HEIGHT_PX / 2;
/** A needle past full scale stands here, with its number beside it. */
const BEYOND_SHARE = 1.045;
const TICKS = [
  [0, "0"],
  [0.25, "¼"],
  [0.5, "½"],
  [0.75, "¾"],
  [1, "full"],
] as const;

const x = (share: number): number => LEFT_PX + share * FULL_PX;

/** Places of the marks of a row, as shares; null where the exercise was not flown or not compared. */
export function lineUpMarks(exercise: CourseRecord, rmsNeedle: number | null = null) {
  if (exercise.facts === null) return null;
  const { max, doubt95 } = exercise.facts.needle;
  const worst = Math.abs(max);
  const { scale, crossTrack } = exercise.facts;
  const rms = rmsNeedle ?? (scale.kind === "linear" ? crossTrack.rmsNm / scale.fullScaleNm : null);
  return {
    worst,
    beyond: worst > 1,
    whisker: [Math.max(0, Math.min(worst - doubt95, 1)), Math.min(worst + doubt95, BEYOND_SHARE)] as const,
    rms: rms === null ? null : Math.min(rms, 1),
  };
}

/** The root mean square of the judged needle, for the open dot. */
export function needleRms(needle: Float64Array, judged: Uint8Array): number | null {
  let sum = 0;
  let count = 0;
  for (let i = 0; i < needle.length; i++) {
    if (judged[i] !== 1 || !Number.isFinite(needle[i])) continue;
    sum += needle[i] ** 2;
    count++;
  }
  return count === 0 ? null : Math.sqrt(sum / count);
}

/** `rms` is the open dot's place as a share; without it a linear scale takes it from the facts. */
export function LineUpRow({ exercise, rms = null }: { exercise: CourseRecord; rms?: number | null }) {
  const marks = lineUpMarks(exercise, rms);
  const name = marks === null ? "not flown" : `needle at worst ${needleSize(marks.worst)}`;
  return (
    <Drawing kind="line-up" name={name} width={WIDTH_PX} height={HEIGHT_PX}>
      {TICKS.map(([share]) => (
        <path key={share} class="hair" d={line(x(share), 0, x(share), HEIGHT_PX)} />
      ))}
      {marks && (
        <>
          <path class="axis" d={line(x(0), MIDDLE, x(Math.min(marks.worst, 1)), MIDDLE)} />
          {marks.rms !== null && <circle class="dot-o" cx={x(marks.rms)} cy={MIDDLE} r={3} />}
          <path
            class="whisk"
            d={line(
              x(marks.beyond ? 1 : marks.whisker[0]),
              MIDDLE,
              x(marks.beyond ? BEYOND_SHARE : marks.whisker[1]),
              MIDDLE,
            )}
          />
          <circle class="dot" cx={x(marks.beyond ? BEYOND_SHARE : marks.worst)} cy={MIDDLE} r={3.6} />
          {marks.beyond && (
            <text class="lab" x={x(BEYOND_SHARE) + 7} y={MIDDLE + 4}>
              {marks.worst.toFixed(1)}
            </text>
          )}
        </>
      )}
    </Drawing>
  );
}

/** The ticks over a column of rows. */
export function LineUpHead() {
  return (
    <svg
      class="drawing line-up"
      aria-hidden="true"
      width={WIDTH_PX}
      height={16}
      viewBox={`0 0 ${WIDTH_PX} 16`}
    >
      {TICKS.map(([share, text]) => (
        <text key={share} class="lab" x={x(share)} y={12} text-anchor="middle">
          {text}
        </text>
      ))}
    </svg>
  );
}
