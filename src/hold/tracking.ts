/** How the inbound course was kept by the needle: from established on it to the mile before its station. */
import { sinDeg } from "../quantity/angle.ts";
import { acrossAt, type FullScale, needleOf } from "../quantity/needle.ts";
import type { Span } from "../quantity/span.ts";
import { utcText } from "../quantity/time.ts";
import type { Seconds, UtcMillis } from "../quantity/units.ts";
import { knownAtEnds, SPOKEN, strayedAcross, unseenOf, unseenRecord } from "../quantity/unseen.ts";
import { NEAR_STATION } from "../standard/needle.ts";
import { establishedRow } from "../track/index.ts";
import type { HoldLap } from "./facts.ts";
import { across95At, type HoldFrame, offInbound, rowsBetween, spedRows } from "./frame.ts";

/** The needle of an inbound course; `otherCourse`: the legs were surely flown to the fix on another one. */
export type InboundNeedle = FullScale & { readonly otherCourse: boolean };

/** The end of the inbound turn, from which a leg that was never established is judged, is told to about this. Tuned: as of the times of legs. */
const TURN_ENDS_95: Seconds = 2;

/** How a lap came onto the published inbound course, and how its needle was kept. */
export type Inbound = Pick<HoldLap, "joined" | "tracking">;
const NOTHING: Inbound = { joined: null, tracking: null };

/**
 * Nothing is told without such a leg or a scale. Not judged is a course that was joined within a mile of the station
 * only. A leg that was never established is judged all of it, for a needle that comes to the middle over the fix was
 * not kept there; one along another course to the station where it came to that mile.
 */
export function trackingOf(
  frame: HoldFrame,
  scale: InboundNeedle | null,
  leg: { readonly from: UtcMillis; readonly to: UtcMillis } | null,
): Inbound {
  if (!scale || !leg) return NOTHING;
  const whole = rowsBetween(frame, leg.from, leg.to);
  let { start, end } = whole;
  const near = (i: number) =>
    frame.along[i]! >= 0 ||
    (scale.kind === "angular" && Math.hypot(frame.along[i]!, frame.across[i]!) < NEAR_STATION);
  while (end > start && near(end - 1)) end--;
  const { time, across } = frame;
  const needle = across.map((a, i) => needleOf(scale, a, frame.along[i]!));
  const first = start;
  const established = establishedFrom(frame, { start, end }, needle);
  if (established === null && scale.kind === "angular" && !scale.otherCourse) {
    // nearer than a mile as wide as there
    const wide = across.map((a) => a / acrossAt(scale, 1, NEAR_STATION));
    if (establishedFrom(frame, { start: end, end: whole.end }, wide) !== null)
      return { joined: "near-station", tracking: null };
  }
  const joined = established === null ? "never" : "established";
  if (end - start < 2) return { joined, tracking: null };
  start = established ?? (scale.otherCourse ? end - 1 : start);
  const trackErrorDeg = frame.track.slice(first, end).map((track) => offInbound(frame, track));
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
  const speed = (frame.motion.groundSpeed[frame.start + first]! * TURN_ENDS_95) / 3600;
  const turnEnds95 =
    worst === first && established === null ? speed * Math.abs(sinDeg(trackErrorDeg[0]!)) : 0;
  const tracking = {
    establishedUtc: established === null ? null : utcText(time[start]!),
    seconds: (time[end - 1]! - time[start]!) / 1000,
    worstNeedle: needle[worst]!,
    worstAcrossNm: across[worst]!,
    worstUtc: utcText(time[worst]!),
    doubt95:
      Math.hypot(across95At(frame, time[worst]!), turnEnds95) / acrossAt(scale, 1, frame.along[worst]!),
    ...(unseen ? { unseen } : {}),
    beyondHalfS: beyond.half,
    beyondThreeQuarterS: beyond.threeQuarter,
  };
  return { joined, tracking };
}

/** The row from which some rows are established by a needle; null where they never are. */
function establishedFrom(frame: HoldFrame, { start, end }: Span, needle: Float64Array): number | null {
  const established = establishedRow({
    length: end - start,
    timed: true,
    timeMs: frame.time.subarray(start, end),
    crossTrackNm: frame.across.subarray(start, end),
    needle: needle.subarray(start, end),
    trackErrorDeg: frame.track.slice(start, end).map((track) => offInbound(frame, track)),
    turnRate: frame.motion.turnRate.subarray(frame.start + start, frame.start + end),
    gapBefore: new Uint8Array(end - start),
  });
  return established === null ? null : start + established;
}
