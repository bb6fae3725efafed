/** The leading indicator on charts without a time axis: A the track turns off, B the needle or distance tells, C the first correction. */
import { type ExcursionRecord, worstExcursion } from "./contract.ts";
import { rowAt } from "./cursor.ts";
import type { Point } from "./windGeometry.ts";

interface Props {
  readonly excursions: readonly ExcursionRecord[];
  readonly timeMs: Float64Array;
  /** Where a row stands on the chart of the needle or distance, and on that of the track error where there is one. */
  readonly off: (row: number) => Point;
  readonly error?: (row: number) => Point;
  /** Ordinates of nothing off on these charts: a letter stands outside the curve, before it comes to the ring or after. */
  readonly zero: { readonly off: number; readonly error?: number };
}

export function LeadMarks({ excursions, timeMs, off, error, zero }: Props) {
  const worst = worstExcursion(excursions);
  if (!worst) return null;
  const at = (utc: string | null, point: (row: number) => Point): Point | null => {
    const row = utc === null ? null : rowAt(timeMs, Date.parse(utc));
    return row === null ? null : point(row);
  };
  const track = error ?? off;
  const trackZero = zero.error ?? zero.off;
  const marks: (readonly [letter: string, point: Point | null, zero: number])[] = [
    ["A", at(worst.trackOffUtc, track), trackZero],
    ["B", at(worst.quarterUtc, off), zero.off],
    ["C", at(worst.correctedUtc, off), zero.off],
    ...(error ? [["C", at(worst.correctedUtc, error), trackZero] as const] : []),
  ];
  return (
    <g>
      {marks.map(
        ([letter, point, level], k) =>
          point && (
            <g key={k}>
              <circle class="ringed outer" cx={point[0]} cy={point[1]} r={3.2} />
              <text
                class="lab-i halo"
                x={point[0] + (letter === "C" ? 7 : -7)}
                y={point[1] + (point[1] >= level ? 14 : -4)}
                text-anchor={letter === "C" ? "start" : "end"}
              >
                {letter}
              </text>
            </g>
          ),
      )}
    </g>
  );
}

/** What the letters mean, for the line under a chart; empty where none is drawn. `reached`: as in "the needle at a quarter". */
export function leadWords(excursions: readonly ExcursionRecord[], reached: string): string {
  const worst = worstExcursion(excursions);
  if (!worst) return "";
  const { quarterUtc, silentS, leadS } = worst;
  const after = (s: number) => `${Math.round(s)} s after`;
  const told = quarterUtc === null || silentS === null ? [] : [`B ${reached}, ${after(silentS)}`];
  const corrected = leadS === null ? [] : [`C the first correction, ${after(leadS)}`];
  return ` A: the track turns off; ${[...told, ...corrected].join("; ") || "nothing told of it"}.`;
}
