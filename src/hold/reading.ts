/** One way to read a row of half turns as a hold: which of them begin over the fix, and how well all else agrees. */
import { cosDeg, directionOf, sinDeg, turnFrom } from "../quantity/angle.ts";
import { METRES_PER_SECOND_PER_KNOT } from "../quantity/factor.ts";
import type { Span } from "../quantity/span.ts";
import type { AngleSize, Metres, Seconds, Share, TrueDegrees, UtcMillis } from "../quantity/units.ts";
import { rateOfBank } from "../wind/index.ts";
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

/** Which turns of a row are the hold's: all but the first `lead` and the last `tail`, and which of those begins over the fix. */
export interface Sense {
  readonly lead: 0 | 1;
  readonly tail: 0 | 1;
  /** 0: the first of the hold's turns begins over the fix; 1: the second. */
  readonly first: 0 | 1;
}

export interface Reading {
  readonly sense: Sense;
  /** The hold's turns. */
  readonly turns: readonly TurnEdges[];
  readonly fix: Place;
  /** Over the fix before the first of them: of a teardrop or parallel entry. */
  readonly before: Pass | null;
  /** Over the fix after the last of them, where that led inbound. */
  readonly after: Pass | null;
  readonly inbound: readonly Line[];
  readonly score: number;
}

/** How long before the first turn the fix was passed in a teardrop and in a parallel entry: least, s; most, s at rate one and legs. Chosen. */
const TEARDROP_BACK: readonly [Seconds, Seconds, number] = [25, 40, 2];
const PARALLEL_BACK: readonly [Seconds, Seconds, number] = [70, 150, 3.5];
/** How long an inbound leg may last, s. */
const INBOUND_SECONDS = 450;
/** Turns begin so near abeam the fix when it is watched, and when it is not, seconds of flight. Tuned. */
const ABEAM = [1.2, 5] as const;
/** Turns at the far end begin within so many seconds of flight of each other. Tuned. */
const FAR_SECONDS = 9;
/** The fix is passed so near to the side, when the course was joined and when it was not, seconds of flight. Tuned. */
const ASIDE = [2, 10] as const;
/** What nobody planned is anywhere within so many seconds of flight, and degrees. Chosen. */
const CHANCE_SECONDS = 160;
const CHANCE_DEGREES = 180;
/** Inbound legs end on one line, outbound legs do not, degrees. Tuned. */
const INBOUND_SPREAD = 3;
const OUTBOUND_SPREAD = 8;
/** Headings go to and fro on a leg by this, with this spread: outbound, inbound when it was joined well, inbound when it was cut into, degrees. Tuned. */
const OUTBOUND_BEND: readonly [AngleSize, AngleSize] = [4.5, 2.5];
const INBOUND_BEND: readonly [AngleSize, AngleSize] = [5, 3];
const CUT_BEND: readonly [AngleSize, AngleSize] = [22, 12];
/** Share of the well watched, well joined. Chosen. */
const WELL: Share = 0.6;
/** The log of what speaks against a reading: a turn that has nothing to do with the hold; it begins inbound without an entry; it ends outbound; it never comes back. Tuned. */
const STRAY = -0.7;
const NO_ENTRY = -3;
const LEFT_OUTBOUND = -0.7;
const MISSED = -2;
/** A log that shows so much before a turn inbound shows how the aircraft came there. Chosen. */
const SEEN_MS = 225_000;
/** Without another inbound leg the last one shows the course so long after its turn. Chosen. */
const LAST_LOOK_MS = 45_000;
/** A known fix speaks so much (log) for a reading that hangs on it, the less the farther off, seconds of flight. Chosen. */
const KNOWN_FIX = 6;
const KNOWN_FIX_SECONDS = 8;
/** A pass makes an entry when it is so much more likely (log) than by chance. Chosen. */
const ENTERED = 0.5;
/** The way back of a parallel entry shows it besides the pass: that may be so much farther off. Tuned. */
const PARALLEL_ROOM = 2;
/** An inbound leg comes to the fix within this of the inbound direction, and so does a parallel entry, degrees. Chosen. */
const TOWARD = 50;
const PARALLEL_TOWARD = 75;

/** All senses in which a row may be read, best first; known fixes speak for those that hang on one. */
export function readRow(ground: Ground, row: Row, fixes: readonly Place[] = []): Reading[] {
  const arms = armsOf(ground, row);
  const readings: Reading[] = [];
  for (const lead of [0, 1] as const)
    for (const tail of [0, 1] as const)
      for (const first of [0, 1] as const)
        if (row.turns.length - lead - tail - first >= 2)
          readings.push(byFix(ground, readAs(ground, row, arms, { lead, tail, first }), fixes));
  return readings.sort((a, b) => b.score - a.score);
}

/** The reading, and how far a known fix speaks for it. */
function byFix(ground: Ground, reading: Reading, fixes: readonly Place[]): Reading {
  const metres = ground.trueAirspeed * METRES_PER_SECOND_PER_KNOT;
  const gain = fixes.reduce((most, { east, north }) => {
    const seconds = Math.hypot(reading.fix.east - east, reading.fix.north - north) / metres;
    return Math.max(most, KNOWN_FIX - 2 * Math.log(1 + (seconds / KNOWN_FIX_SECONDS) ** 2 / 3));
  }, 0);
  return { ...reading, score: reading.score + gain };
}

interface Arm {
  /** Null where it is too short. */
  readonly line: Line | null;
  readonly bend: AngleSize;
  readonly seconds: Seconds;
}

/** The arms between the turns. */
function armsOf(ground: Ground, { turns }: Row): Arm[] {
  return turns.slice(1).map((next, i) => {
    const from = turns[i]!.end;
    const to = next.start;
    if (to - from < 5000) return { line: null, bend: 0, seconds: (to - from) / 1000 };
    return {
      line: lastStraight(ground, from, to),
      bend: bendIn(ground, from, to),
      seconds: (to - from) / 1000,
    };
  });
}

/** How far the heading goes to and fro on a leg, its ends left out. */
export function bendIn(ground: Ground, from: UtcMillis, to: UtcMillis): AngleSize {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let t = from + 4000; t <= to - 4000; t += 2000) {
    const heading = (ground.headingAt(t - 2000) + ground.headingAt(t) + ground.headingAt(t + 2000)) / 3;
    low = Math.min(low, heading);
    high = Math.max(high, heading);
  }
  return Math.max(0, high - low);
}

function readAs(ground: Ground, row: Row, arms: readonly Arm[], sense: Sense): Reading {
  const { lead, tail, first } = sense;
  const { side } = row;
  const turns = row.turns.slice(lead, row.turns.length - tail);
  const metres = ground.trueAirspeed * METRES_PER_SECOND_PER_KNOT;
  const n = turns.length;
  const places = turns.map((t) => ground.place(t.start));
  const overFix = places.filter((_, i) => i % 2 === first);
  // the first of them follows no inbound leg: it may have begun well past the fix
  const fix = middleOf(first === 0 && overFix.length > 1 ? overFix.slice(1) : overFix);
  let score = (lead + tail) * (STRAY - Math.log(CHANCE_SECONDS));

  // legs: inbound ones end on one line, outbound ones are flown on one heading
  const tracks: [number[], number[]] = [[], []]; // outbound, inbound
  arms.forEach(({ line, bend }, k) => {
    if (!line) return;
    const i = k - lead; // the arm after turn i of the hold
    if (i < 0 || i >= n - 1) {
      score += Math.log(about(bend, CUT_BEND) / CHANCE_DEGREES);
      return;
    }
    const inbound = i % 2 !== first;
    tracks[inbound ? 1 : 0].push(line.direction);
    score += Math.log(
      inbound
        ? WELL * about(bend, INBOUND_BEND) + (1 - WELL) * about(bend, CUT_BEND)
        : about(bend, OUTBOUND_BEND),
    );
  });
  const [outward, inward] = tracks.map(meanDirection) as [number, number];
  const { end } = turns[n - 1]!;
  const lastInbound = (n - first) % 2 === 0;
  const last =
    lastInbound && end + LAST_LOOK_MS < ground.times[1]
      ? lastStraight(ground, end, end + LAST_LOOK_MS)
      : null;
  const axis = tracks[1].length > 0 ? inward : last ? last.direction : outward + 180;
  score += together(
    tracks[0].map((t) => turnFrom(outward, t)),
    (x) => student(x, OUTBOUND_SPREAD),
    CHANCE_DEGREES,
  );
  score += together(
    tracks[1].map((t) => turnFrom(inward, t)),
    (x) => student(x, INBOUND_SPREAD),
    CHANCE_DEGREES,
  );

  // turns over the fix begin abeam of it, those at the far end where the time is up
  const along = places.map((p) => (p.east * sinDeg(axis) + p.north * cosDeg(axis)) / metres);
  for (const end of [0, 1] as const) {
    const group = along.filter((_, i) => i % 2 === end);
    const middle = median(group);
    const density = (x: number) =>
      end === first
        ? WELL * student(x, ABEAM[0]) + (1 - WELL) * student(x, ABEAM[1])
        : student(x, FAR_SECONDS);
    score += together(
      group.map((x) => x - middle),
      density,
      CHANCE_SECONDS,
    );
  }

  const legSeconds = Math.max(30, ...arms.slice(lead, lead + n - 1).map((arm) => arm.seconds));
  const before = entryPass(ground, turns[0]!, side, first, axis, fix, legSeconds);
  const room = first === 0 ? PARALLEL_ROOM : 1;
  const gain = before ? passGain(before.distance / metres / room) : MISSED;
  const entered = gain > ENTERED ? before : null;
  if (entered) score += gain;
  else if (first === 1 && turns[0]!.start - ground.times[0] > SEEN_MS) score += NO_ENTRY;

  const until = tail === 1 ? Math.max(end + 1000, row.turns[lead + n]!.start) : end + INBOUND_SECONDS * 1000;
  const passed = lastInbound ? nearest(ground, fix, end, until) : null;
  const after = passed && Math.abs(turnFrom(axis, trackAt(ground, passed.time))) < TOWARD ? passed : null;
  score += !lastInbound ? LEFT_OUTBOUND : after ? passGain(after.distance / metres) : MISSED;

  // without an entry the first arm inbound is only how the aircraft arrived
  const lines = arms.flatMap(({ line }, k) => {
    const i = k - lead;
    return line && i >= 0 && i < n - 1 && i % 2 !== first && (i > 0 || entered) ? [line] : [];
  });
  if (after && after.time - end >= 5000) lines.push(lastStraight(ground, end, after.time));
  return { sense, turns, fix, before: entered, after, inbound: lines, score };
}

/** Log density of values about their middle, which itself is anywhere. */
function together(off: readonly number[], density: (x: number) => number, chance: number): number {
  const n = off.length;
  if (n === 0) return 0;
  const sum = off.reduce((s, x) => s + Math.log(density(x)), 0);
  return (n > 1 ? (sum * (n - 1)) / n : 0) - Math.log(chance);
}

/** Over the fix on the way into a teardrop (the first turn leads inbound) or a parallel entry (it leads outbound). */
function entryPass(
  ground: Ground,
  turn: TurnEdges,
  side: 1 | -1,
  first: 0 | 1,
  axis: TrueDegrees,
  fix: Place,
  legSeconds: Seconds,
): Pass | null {
  const [least, shortest, legs] = first === 0 ? PARALLEL_BACK : TEARDROP_BACK;
  const slow = 3 / Math.min(3, rateOfBank(25, ground.trueAirspeed));
  const most = shortest * slow + legs * legSeconds;
  const pass = nearest(ground, fix, turn.start - most * 1000, turn.start - least * 1000);
  if (!pass || pass.time < ground.times[0] + 20_000) return null;
  const turned = (t: UtcMillis) => side * (turn.before - ground.headingAt(t));
  if (first === 0) {
    const toward = Math.abs(turnFrom(axis, turn.before)) < PARALLEL_TOWARD;
    return toward && turned(pass.time) < -120 ? pass : null;
  }
  for (let t = pass.time - 20_000; t < turn.start; t += 5000)
    if (turned(t) < -75 || turned(t) > 100) return null;
  return pass;
}

/** The log of how much more likely a pass so near, in seconds of flight, is if it was meant than by chance. */
const passGain = (seconds: number): number =>
  Math.max(
    MISSED,
    Math.log(
      ((2 * WELL * student(seconds, ASIDE[0]) + 2 * (1 - WELL) * student(seconds, ASIDE[1])) *
        CHANCE_SECONDS) /
        2,
    ),
  );

const trackAt = (ground: Ground, time: UtcMillis): number => {
  const a = ground.place(time - 2000);
  const b = ground.place(time + 2000);
  return directionOf(b.east - a.east, b.north - a.north);
};

function middleOf(places: readonly Place[]): Place {
  return { east: median(places.map((p) => p.east)), north: median(places.map((p) => p.north)) };
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
}

const meanDirection = (tracks: readonly number[]): number =>
  directionOf(
    tracks.reduce((s, t) => s + sinDeg(t), 0),
    tracks.reduce((s, t) => s + cosDeg(t), 0),
  );

/** Student's t of 3 degrees, a density: a few wild values do not decide. */
const student = (x: number, sd: number): number => 0.3676 / sd / (1 + (x / sd) ** 2 / 3) ** 2;

/** The same about a usual value. */
const about = (x: number, [usual, sd]: readonly [number, number]): number => student(x - usual, sd);

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
