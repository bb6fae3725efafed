/** Where in a hold a moment lies: which lap, which leg, for how long, and with what wind correction. */
import type { HoldFacts, HoldSeries } from "./contract.ts";

export interface HoldMoment {
  /** From 1; null in the entry and after the last pass. */
  readonly lap: number | null;
  readonly part: "outbound" | "inbound" | "turn" | "entry" | "after";
  /** Since the leg began by the timing rule, s; null outside of legs. */
  readonly seconds: number | null;
  /** Estimated heading less the leg's own direction, right positive, degrees; null outside of legs or where not known. */
  readonly correctionDeg: number | null;
  readonly distanceNm: number;
}

/** A part as it is called. */
export const HOLD_PARTS: Readonly<Record<HoldMoment["part"], string>> = {
  outbound: "outbound",
  inbound: "inbound",
  turn: "in the turn",
  entry: "entry",
  after: "after the last pass",
};

const turnTo = (from: number, to: number): number => ((((to - from + 180) % 360) + 360) % 360) - 180;

export function holdMoment(facts: HoldFacts, series: HoldSeries, row: number): HoldMoment {
  const time = series.timeMs[row];
  const index = series.lap[row];
  const distanceNm = Math.hypot(series.alongNm[row], series.crossTrackNm[row]);
  const lap = index < 0 ? null : (facts.laps[index] ?? null);
  if (!lap) {
    const before = !facts.laps[0] || time < Date.parse(facts.laps[0].startUtc);
    return {
      lap: null,
      part: before ? "entry" : "after",
      seconds: null,
      correctionDeg: null,
      distanceNm,
    };
  }
  for (const part of ["outbound", "inbound"] as const) {
    const leg = lap[part];
    if (!leg || time < Date.parse(leg.fromUtc) || time > Date.parse(leg.toUtc)) continue;
    const direction = facts.inboundTrueDeg + (part === "outbound" ? 180 : 0);
    const heading = series.headingTrueDeg[row];
    return {
      lap: index + 1,
      part,
      seconds: (time - Date.parse(leg.fromUtc)) / 1000,
      correctionDeg: Number.isFinite(heading) ? turnTo(direction, heading) : null,
      distanceNm,
    };
  }
  return { lap: index + 1, part: "turn", seconds: null, correctionDeg: null, distanceNm };
}
