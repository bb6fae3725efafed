/** What a silence of the log at either end of a leg may hide of its time, and which legs lie in a silence whole. */
import { inverse } from "../geodesy/index.ts";
import { cosDeg, turnFrom } from "../quantity/angle.ts";
import type { Span } from "../quantity/span.ts";
import { utcText } from "../quantity/time.ts";
import type { AngleSize, NauticalMiles, Seconds, UtcMillis } from "../quantity/units.ts";
import { strayedAcross, type UnseenRecord } from "../quantity/unseen.ts";
import { median } from "../quantity/weigh.ts";
import { radiusOf } from "../wind/index.ts";
import type { HoldFacts } from "./facts.ts";
import type { FoundHold } from "./found.ts";
import { type HoldFrame, offInbound, spedRows, valueAt } from "./frame.ts";
import { RATE_ONE } from "./slowness.ts";

/** A silence is longer than so many usual intervals, and than this. Chosen: what is shorter is in the usual doubt of a time. */
const USUAL_STEPS = 2;
const LEAST_SILENCE: Seconds = 6;
/** Smoothing moves an end that lies so near to a silence. Chosen. */
const BESIDE: Seconds = 3;
/** Where the track changes by less than this over a silence, nothing was turned in it: a place is passed when its distance says. Chosen. */
const FLOWN_ON: AngleSize = 10;

/** A silence that a moment lies in. */
interface SilenceThere extends UnseenRecord {
  readonly seconds: Seconds;
  /** The row that ends it. */
  readonly row: number;
}

/** How far an end may lie from where it was read, and the silence that it lies in; null where there is none. */
function silenceAt({ time, track }: HoldFrame, at: UtcMillis): SilenceThere | null {
  const least = Math.max(LEAST_SILENCE, USUAL_STEPS * usualStep(time));
  let found: SilenceThere | null = null;
  for (let i = 1; i < time.length; i++) {
    const [a, b] = [time[i - 1]!, time[i]!];
    const seconds = (b - a) / 1000;
    if (seconds <= least || at < a - BESIDE * 1000 || at > b + BESIDE * 1000) continue;
    if (Math.abs(turnFrom(track[i - 1]!, track[i]!)) < FLOWN_ON) continue;
    const most = Math.max(Math.abs(at - a), Math.abs(b - at)) / 1000;
    if (!found || most > found.most) found = { most, seconds, row: i };
  }
  return found;
}

/** The usual time between rows. */
export const usualStep = (time: Float64Array): Seconds =>
  median(time.subarray(1).map((t, i) => (t - time[i]!) / 1000));

/** By how much the time of a leg may be otherwise: at its beginning, read in one way or another, and at its end. */
export function silenceOfLeg(
  frame: HoldFrame,
  begins: readonly UtcMillis[],
  ends: UtcMillis,
): { readonly unseen?: UnseenRecord } {
  const first = begins.map((t) => silenceAt(frame, t)).filter((silence) => silence !== null);
  const last = silenceAt(frame, ends);
  if (first.length === 0 && !last) return {};
  const most = Math.max(0, ...first.map((f) => f.most)) + (last?.most ?? 0);
  return { unseen: { most, seconds: Math.max(last?.seconds ?? 0, ...first.map((f) => f.seconds ?? 0)) } };
}

/**
 * What a silence may hide of where a turn ended across the inbound course: any place between its ends, and as far off
 * that as its time allows. Null where it ended in none.
 */
export function rollOutUnseen(
  frame: HoldFrame,
  at: UtcMillis,
): { readonly acrossNm: NauticalMiles; readonly seconds: Seconds } | null {
  const silence = silenceAt(frame, at);
  if (!silence) return null;
  const { row, seconds } = silence;
  const read = valueAt(frame, frame.across, at);
  const ends = [frame.across[row - 1]!, frame.across[row]!];
  const { groundSpeedKt } = spedRows(frame);
  const cuts = [row - 1, row].map((i) => Math.abs(offInbound(frame, frame.track[i]!)));
  const cut = Math.min(90, RATE_ONE * seconds, Math.max(...cuts));
  const speed = (groundSpeedKt[row - 1]! + groundSpeedKt[row]!) / 2;
  // so far a turn at standard rate leads on, until it is along the course
  const turnedOn = radiusOf(RATE_ONE, speed) * (1 - cosDeg(cut));
  const off = Math.max(turnedOn, ...ends.map((across) => Math.abs(across - read)));
  return { acrossNm: off + strayedAcross(speed, seconds), seconds };
}

/** A silence so soon after a hold, and no farther from its fix than so many times what it was, may hide more of it. Chosen: a lap. */
const SOON: Seconds = 300;
const STILL_NEAR = 1.3;

/**
 * The longest silence in which whole legs may lie: between two laps, or where the log falls silent before the hold can
 * have been left or begun. Null where none is.
 */
export function legsInSilence(
  { motion }: HoldFrame,
  { span, fix }: FoundHold,
  laps: readonly { readonly from: UtcMillis; readonly to: UtcMillis }[],
): HoldFacts["legsUnseen"] {
  const { time } = motion;
  const milesOff = (row: number) =>
    inverse(fix, { latitude: motion.latitude[row]!, longitude: motion.longitude[row]! }).distance;
  let farthest = 0;
  for (let i = span.start; i < span.end; i++) farthest = Math.max(farthest, milesOff(i));
  const [begins, ends] = [laps[0]?.from, laps.at(-1)?.to];
  if (begins === undefined || ends === undefined) return null;
  const hidden = motion.spans.slice(1).filter(({ start: row }) => {
    const [a, b] = [time[row - 1]!, time[row]!];
    const between = laps.some(({ to }, i) => laps[i + 1] && a >= to - 1000 && b <= laps[i + 1]!.from + 1000);
    const after = a >= ends - 1000 && a - ends < SOON * 1000 && milesOff(row - 1) < STILL_NEAR * farthest;
    const before = b <= begins + 1000 && begins - b < SOON * 1000 && milesOff(row) < STILL_NEAR * farthest;
    return between || after || before;
  });
  const silent = ({ start: row }: Span): Seconds => (time[row]! - time[row - 1]!) / 1000;
  const [longest] = hidden.sort((a, b) => silent(b) - silent(a));
  if (!longest) return null;
  const { start: row } = longest;
  return { fromUtc: utcText(time[row - 1]!), toUtc: utcText(time[row]!), seconds: silent(longest) };
}
