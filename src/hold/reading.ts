/** One way to read a row of half turns as a hold: which of them begin over the fix, and how well all else agrees. */
import { cosDeg, directionOf, sinDeg, turnFrom } from "../quantity/angle.ts";
import { METRES_PER_SECOND_PER_KNOT } from "../quantity/factor.ts";
import type { Span } from "../quantity/span.ts";
import type { Metres, UtcMillis } from "../quantity/units.ts";
import type { Ground, Place } from "./ground.ts";
import { type Line, lastStraight } from "./inbound-line.ts";
import type { TurnEdges } from "./turn-edges.ts";

export interface Row {
  /** 1 right, -1 left. */
  readonly side: 1 | -1;
  readonly arms: readonly Span[];
  /** `turns[i]` leads from `arms[i]` to `arms[i + 1]`. */
  readonly turns: readonly TurnEdges[];
}

export interface Pass {
  readonly time: UtcMillis;
  readonly place: Place;
  /** How far from the fix. */
  readonly distance: Metres;
}

export interface Reading {
  /** 0: the first turn begins over the fix; 1: the second. */
  readonly first: 0 | 1;
  readonly fix: Place;
  /** Over the fix before the first turn of the row: of a teardrop or parallel entry. */
  readonly before: Pass | null;
  /** Over the fix after the last turn of the row, where that led inbound. */
  readonly after: Pass | null;
  readonly inbound: readonly Line[];
  readonly score: number;
}

/** Turns over the fix begin within so many seconds of flight, those at the far end within so many (150 and 450 m at 100 kt). Tuned. */
const NEAR_SECONDS = 3;
const FAR_SECONDS = 9;
/** A pass that nobody planned is anywhere within so many seconds of flight. Chosen. */
const CHANCE_SECONDS = 40;
/** A pass over the fix is this good, in seconds of flight to the side: wind drifts the badly flown lap. Tuned. */
const PASS_SECONDS = 6;
/** How long before the first turn the fix was passed in a teardrop and in a parallel entry, and how long an inbound leg may last, s. */
const TEARDROP_BACK: readonly [number, number] = [25, 200];
const PARALLEL_BACK: readonly [number, number] = [70, 400];
const INBOUND_SECONDS = 300;
/** What speaks against a reading: it begins inbound without an entry, it ends outbound. Tuned. */
const NO_ENTRY = -1.5;
const LEFT_OUTBOUND = -2.5;
/** Inbound legs end on one line, outbound legs do not, degrees. Tuned. */
const INBOUND_SPREAD = 3;
const OUTBOUND_SPREAD = 8;
/** A pass expected and not found costs no more than this. Chosen. */
const MISSED = -2;

/** Minus log of Student's t of 3 degrees but for a constant: a few wild values do not decide. */
const odd = (x: number, sd: number): number => 2 * Math.log(1 + (x / sd) ** 2 / 3) + Math.log(sd);

export function readRow(ground: Ground, row: Row, first: 0 | 1): Reading {
  const { turns, side } = row;
  const metres = ground.trueAirspeed * METRES_PER_SECOND_PER_KNOT;
  const n = turns.length;
  const places = turns.map((t) => ground.place(t.start));
  const overFix = places.filter((_, i) => i % 2 === first);
  const far = places.filter((_, i) => i % 2 !== first);
  const fix = middleOf(overFix);
  const lastInbound = (n - first) % 2 === 0;
  let score = 0;

  const { start } = turns[0]!;
  const back = first === 0 ? PARALLEL_BACK : TEARDROP_BACK;
  const before = nearest(ground, fix, start - back[1] * 1000, start - back[0] * 1000);
  const turned = before ? side * (turns[0]!.before - ground.headingAt(before.time)) : 0;
  const fits = first === 0 ? turned < -120 : Math.abs(turned) < 100;
  const gain = before && fits ? passGain(before.distance, metres) : MISSED;
  const entered = gain > 0 ? before : null;
  score += entered ? gain : first === 1 ? NO_ENTRY : 0;

  const end = turns[n - 1]!.end;
  const after = lastInbound ? nearest(ground, fix, end, end + INBOUND_SECONDS * 1000) : null;
  score += after ? passGain(after.distance, metres) : LEFT_OUTBOUND;

  const inbound: Line[] = [];
  const inboundTracks: number[] = [];
  const outboundTracks: number[] = [];
  for (let i = 0; i < n; i++) {
    const isInbound = i % 2 !== first; // the arm after turn i
    const from = turns[i]!.end;
    const to = i + 1 < n ? turns[i + 1]!.start : isInbound && after ? after.time : null;
    if (to === null || to - from < 5000) continue;
    const line = lastStraight(ground, from, to);
    // without an entry the first arm inbound is only how the aircraft arrived
    if (isInbound && (i > 0 || entered)) inbound.push(line);
    if (i + 1 === n) continue; // the other reading does not see it
    (isInbound ? inboundTracks : outboundTracks).push(line.direction);
    const bend = Math.abs(ground.headingAt(to - 3000) - ground.headingAt(Math.min(from + 3000, to - 3000)));
    score -= isInbound
      ? -Math.log(0.5 * Math.exp(-odd(bend, 4)) + 0.5 * Math.exp(-odd(bend, 20)))
      : odd(bend, 5);
  }
  score -=
    scatterOfDirections(inboundTracks, INBOUND_SPREAD) + scatterOfDirections(outboundTracks, OUTBOUND_SPREAD);
  const axis =
    inboundTracks.length > 0
      ? meanDirection(inboundTracks)
      : meanDirection(outboundTracks.map((t) => t + 180));
  score -= alongScatter(overFix, axis, NEAR_SECONDS * metres) + alongScatter(far, axis, FAR_SECONDS * metres);
  return { first, fix, before: entered, after, inbound, score };
}

/** How much more likely a pass so near is if it was meant than by chance. */
const passGain = (distance: Metres, metres: number) =>
  Math.max(
    MISSED,
    odd(CHANCE_SECONDS * metres, CHANCE_SECONDS * metres) - odd(distance, PASS_SECONDS * metres),
  );

function middleOf(places: readonly Place[]): Place {
  return { east: median(places.map((p) => p.east)), north: median(places.map((p) => p.north)) };
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
}

/** Surprise of places along an axis about their middle; one place says nothing. */
function alongScatter(places: readonly Place[], axis: number, sd: Metres): number {
  const n = places.length;
  if (n < 2) return 0;
  const along = places.map((p) => p.east * sinDeg(axis) + p.north * cosDeg(axis));
  const middle = median(along);
  let sum = 0;
  for (const x of along) sum += odd(x - middle, sd);
  return (sum * (n - 1)) / n;
}

const meanDirection = (tracks: readonly number[]): number =>
  directionOf(
    tracks.reduce((s, t) => s + sinDeg(t), 0),
    tracks.reduce((s, t) => s + cosDeg(t), 0),
  );

function scatterOfDirections(tracks: readonly number[], sd: number): number {
  const n = tracks.length;
  if (n < 2) return 0;
  const mean = meanDirection(tracks);
  let sum = 0;
  for (const t of tracks) sum += odd(turnFrom(mean, t), sd);
  return (sum * (n - 1)) / n;
}

/** The nearest that the flight came to a place in a time; null where the log has nothing then. */
export function nearest(ground: Ground, to: Place, from: UtcMillis, until: UtcMillis): Pass | null {
  let best: Pass | null = null;
  const [first, last] = ground.times;
  for (let t = Math.max(from, first); t <= Math.min(until, last); t += 1000) {
    const place = ground.place(t);
    const distance = Math.hypot(place.east - to.east, place.north - to.north);
    if (!best || distance < best.distance) best = { time: t, place, distance };
  }
  return best;
}
