/** The rows of an approach as lines: how it was joined, what is judged, and how it went on; and the row at a distance. */
import type { ApproachSeries } from "./contract.ts";
import { cutAtSilences, rowsAfterSilence } from "./silences.ts";

export interface Stretch {
  /** Rows from, and to (the first that is no more drawn). */
  readonly from: number;
  readonly to: number;
  readonly judged: boolean;
  /** A step across a silence of the log. */
  readonly unseen: boolean;
}

/** Turned farther from the final than this, the way leads back along it and would be drawn over itself, degrees. */
const TURNED_BACK_DEG = 90;

/** Whether a row leads along the final toward the runway or on over it. */
export function leadsOn({ trackAngleErrorDeg }: ApproachSeries, row: number): boolean {
  return !(Math.abs(trackAngleErrorDeg[row]) > TURNED_BACK_DEG);
}

/** Stretches of one weight, each up to the first row of the next, so that the line goes on; the way back left out, and cut at the silences of the log. */
export function stretchesAlong(series: ApproachSeries): Stretch[] {
  const { judged } = series;
  const stretches: Omit<Stretch, "unseen">[] = [];
  for (let from = 0; from < judged.length; ) {
    let to = from + 1;
    const on = leadsOn(series, from);
    while (to < judged.length && judged[to] === judged[from] && leadsOn(series, to) === on) to++;
    if (on) stretches.push({ from, to: Math.min(judged.length, to + 1), judged: judged[from] === 1 });
    from = to;
  }
  return stretches.flatMap((stretch) => cutAtSilences(stretch, rowsAfterSilence(series.timeMs)));
}

/** Farther from all of the way in than this, a pointer is beside what was flown, NM. Own choice. */
const BESIDE_NM = 0.1;

/** The row nearest to a distance before the threshold, on the way that leads in and on over the runway; null off both. */
export function rowAtDistance(series: ApproachSeries, distanceNm: number): number | null {
  const { distanceToThresholdNm: distance, judged } = series;
  const middle = judged.indexOf(1);
  if (middle < 0) return null;
  const off = (row: number) => Math.abs(distance[row] - distanceNm);
  let best = middle;
  for (let i = middle; i >= 0 && leadsOn(series, i); i--) if (off(i) < off(best)) best = i;
  for (let i = middle; i < distance.length && leadsOn(series, i); i++) if (off(i) < off(best)) best = i;
  return off(best) < BESIDE_NM ? best : null;
}
