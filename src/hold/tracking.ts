/** How the inbound course was kept by the needle: from established on it to the mile before its station. */
import { acrossAt, type FullScale, needleOf } from "../quantity/needle.ts";
import { utcText } from "../quantity/time.ts";
import type { UtcMillis } from "../quantity/units.ts";
import { knownAtEnds, SPOKEN, strayedAcross, unseenOf, unseenRecord } from "../quantity/unseen.ts";
import { NEAR_STATION } from "../standard/needle.ts";
import { ESTABLISHED_NEEDLE, establishedRow } from "../track/index.ts";
import type { HoldLap } from "./facts.ts";
import { across95At, type HoldFrame, offInbound, rowsBetween, spedRows, valueAt } from "./frame.ts";

/** The needle of an inbound course; `otherCourse`: the legs were surely flown to the fix on another one. */
export type InboundNeedle = FullScale & { readonly otherCourse: boolean };

/**
 * Null where there is nothing to judge: no such leg, no scale, or the course was joined within a mile of the station
 * only. A leg along another course to the station is judged where it came to that mile.
 */
export function trackingOf(
  frame: HoldFrame,
  scale: InboundNeedle | null,
  leg: { readonly from: UtcMillis; readonly to: UtcMillis } | null,
): HoldLap["tracking"] {
  if (!scale || !leg) return null;
  let { start, end } = rowsBetween(frame, leg.from, leg.to);
  const near = (i: number) =>
    frame.along[i]! >= 0 ||
    (scale.kind === "angular" && Math.hypot(frame.along[i]!, frame.across[i]!) < NEAR_STATION);
  while (end > start && near(end - 1)) end--;
  if (end - start < 2) return null;
  const { time, across } = frame;
  const needle = across.map((a, i) => needleOf(scale, a, frame.along[i]!));
  const trackErrorDeg = frame.track.slice(start, end).map((track) => offInbound(frame, track));
  const first = start;
  const established = establishedRow({
    length: end - start,
    timed: true,
    timeMs: time.subarray(start, end),
    crossTrackNm: across.subarray(start, end),
    needle: needle.subarray(start, end),
    trackErrorDeg,
    turnRate: frame.motion.turnRate.subarray(frame.start + start, frame.start + end),
    gapBefore: new Uint8Array(end - start),
  });
  if (established === null && scale.kind === "angular" && !scale.otherCourse) {
    const atFix = Math.abs(valueAt(frame, across, leg.to));
    if (atFix <= acrossAt(scale, ESTABLISHED_NEEDLE, NEAR_STATION)) return null;
  }
  // what was never established is judged where the leg ended
  start = established === null ? end - 1 : start + established;
  let worst = start;
  const beyond = { half: 0, threeQuarter: 0 };
  for (let i = start; i < end; i++) {
    const size = Math.abs(needle[i]!);
    if (size > Math.abs(needle[worst]!)) worst = i;
    const seconds = i > start ? (time[i]! - time[i - 1]!) / 1000 : 0;
    if (size > 0.5) beyond.half += seconds;
    if (size > 0.75) beyond.threeQuarter += seconds;
  }
  const full = (i: number) => acrossAt(scale, 1, frame.along[Math.max(start, i)]!);
  const strayed = (speed: number, seconds: number, i: number) =>
    strayedAcross(speed, seconds, knownAtEnds(trackErrorDeg, i - first)) / ((full(i - 1) + full(i)) / 2);
  const unseen = unseenRecord(
    unseenOf(spedRows(frame), { start, end }, needle, strayed),
    needle[worst]!,
    SPOKEN,
  );
  return {
    establishedUtc: established === null ? null : utcText(time[start]!),
    seconds: (time[end - 1]! - time[start]!) / 1000,
    worstNeedle: needle[worst]!,
    worstAcrossNm: across[worst]!,
    worstUtc: utcText(time[worst]!),
    doubt95: across95At(frame, time[worst]!) / acrossAt(scale, 1, frame.along[worst]!),
    ...(unseen ? { unseen } : {}),
    beyondHalfS: beyond.half,
    beyondThreeQuarterS: beyond.threeQuarter,
  };
}
