/** One way to read a row of half turns as a hold: which of them begin over the fix, and how well all else agrees. */
import { cosDeg, sinDeg, turnFrom } from "../quantity/angle.ts";
import type { Span } from "../quantity/span.ts";
import type { Seconds, TrueDegrees, UtcMillis } from "../quantity/units.ts";
import { type Arm, armsOf, legsAgree, type Sense } from "./arms.ts";
import type { Ground, Place } from "./ground.ts";
import { type Line, lastStraight } from "./inbound-line.ts";
import { CHANCE_SECONDS, median, student, together, WELL } from "./likelihood.ts";
import { entryPass, MISSED, nearest, type Pass, passGain, trackAt } from "./near-fix.ts";
import type { TurnEdges } from "./turn-edges.ts";

export interface Row {
  /** 1 right, -1 left. */
  readonly side: 1 | -1;
  readonly arms: readonly Span[];
  /** `turns[i]` leads from `arms[i]` to `arms[i + 1]`. */
  readonly turns: readonly TurnEdges[];
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

/** How long an inbound leg may last, s. */
const INBOUND_SECONDS = 450;
/** Turns begin so near abeam the fix when it is watched, and when it is not, seconds of flight. Tuned. */
const ABEAM = [1.2, 5] as const;
/** Turns at the far end begin within so many seconds of flight of each other. Tuned. */
const FAR_SECONDS = 9;
/** The log of what speaks against a reading: a turn that has nothing to do with the hold; it begins inbound without an entry; it ends outbound. Tuned. */
const STRAY = -0.7;
const NO_ENTRY = -3;
const LEFT_OUTBOUND = -0.7;
/** A log that shows so much before a turn inbound shows how the aircraft came there. Chosen. */
const SEEN_MS = 225_000;
/** Entries are looked for as if no leg were shorter, s: theirs takes a minute, however far the wind shortens the others. Tuned on simulation, seeds 1 to 3000. */
const SHORT_LEG = 50;
/** Without another inbound leg the last one shows the course so long after its turn. Chosen. */
const LAST_LOOK_MS = 45_000;
/** A known fix speaks so much (log) for a reading that hangs on it, the less the farther off, seconds of flight. Chosen. */
const KNOWN_FIX = 6;
const KNOWN_FIX_SECONDS = 8;
/** A pass makes an entry when it is so much more likely (log) than by chance. Chosen. */
const ENTERED = 0.5;
/** The way back of a parallel entry shows it besides the pass: that may be so much farther off. Tuned. */
const PARALLEL_ROOM = 2;
/** An inbound leg comes to the fix within this of the inbound direction, degrees. Chosen. */
const TOWARD = 50;

/** All senses in which a row may be read, best first; known fixes speak for those that hang on one. */
export function readRow(ground: Ground, row: Row, fixes: readonly Place[] = []): Reading[] {
  const arms = armsOf(ground, row.turns);
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
  const { metres } = ground;
  const gain = fixes.reduce((most, { east, north }) => {
    const seconds = Math.hypot(reading.fix.east - east, reading.fix.north - north) / metres;
    return Math.max(most, KNOWN_FIX - 2 * Math.log(1 + (seconds / KNOWN_FIX_SECONDS) ** 2 / 3));
  }, 0);
  return { ...reading, score: reading.score + gain };
}

function readAs(ground: Ground, row: Row, arms: readonly Arm[], sense: Sense): Reading {
  const { lead, tail, first } = sense;
  const { side } = row;
  const turns = row.turns.slice(lead, row.turns.length - tail);
  const { metres } = ground;
  const n = turns.length;
  const places = turns.map((t) => ground.place(t.start));
  const overFix = places.filter((_, i) => i % 2 === first);
  // the first of them follows no inbound leg: it may have begun well past the fix
  const fix = middleOf(first === 0 && overFix.length > 1 ? overFix.slice(1) : overFix);
  let score = (lead + tail) * (STRAY - Math.log(CHANCE_SECONDS));

  const legs = legsAgree(arms, sense, n);
  score += legs.score;
  const { end } = turns[n - 1]!;
  const lastInbound = (n - first) % 2 === 0;
  const last =
    lastInbound && end + LAST_LOOK_MS < ground.times[1]
      ? lastStraight(ground, end, end + LAST_LOOK_MS)
      : null;
  const axis = legs.inward ?? last?.direction ?? legs.outward + 180;
  score += startsAgree(places, first, axis, metres);

  const legSeconds = outboundSeconds(turns, first);
  const before = entryPass(ground, turns[0]!, side, first, axis, fix, legSeconds);
  const room = first === 0 ? PARALLEL_ROOM : 1;
  const gain = before ? passGain(before.distance / metres / room) : MISSED;
  const entered = gain > ENTERED ? before : null;
  if (entered) score += gain;
  else score += noEntryCost(ground, turns, first);

  const until = tail === 1 ? Math.max(end + 1000, row.turns[lead + n]!.start) : end + INBOUND_SECONDS * 1000;
  // it may come nearer once it has turned away
  const toward = (t: UtcMillis) => Math.abs(turnFrom(axis, trackAt(ground, t))) < TOWARD;
  const after = lastInbound ? nearest(ground, fix, end, until, toward) : null;
  score += !lastInbound ? LEFT_OUTBOUND : after ? passGain(after.distance / metres) : MISSED;

  // without an entry the first arm inbound is only how the aircraft arrived
  const lines = arms.flatMap(({ line }, k) => {
    const i = k - lead;
    return line && i >= 0 && i < n - 1 && i % 2 !== first && (i > 0 || entered) ? [line] : [];
  });
  if (after && after.time - end >= 5000) lines.push(lastStraight(ground, end, after.time));
  return { sense, turns, fix, before: entered, after, inbound: lines, score };
}

/** What speaks against a hold that begins with a turn inbound (log), where the log would show how the aircraft came there. */
export const noEntryCost = (ground: Ground, turns: readonly TurnEdges[], first: 0 | 1): number =>
  first === 1 && turns[0]!.start - ground.times[0] > SEEN_MS ? NO_ENTRY : 0;

/** The longest outbound leg; the longest of all where none was seen. */
export function outboundSeconds(turns: readonly TurnEdges[], first: 0 | 1): Seconds {
  const legs = turns.slice(1).map((turn, i) => (turn.start - turns[i]!.end) / 1000);
  const outbound = legs.filter((_, i) => i % 2 === first);
  return Math.max(SHORT_LEG, ...(outbound.length > 0 ? outbound : legs));
}

/** What the beginnings of the turns say, log: those over the fix abeam of it, those at the far end where the time is up. */
function startsAgree(places: readonly Place[], first: 0 | 1, axis: TrueDegrees, metres: number): number {
  const along = places.map((p) => (p.east * sinDeg(axis) + p.north * cosDeg(axis)) / metres);
  let score = 0;
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
  return score;
}

function middleOf(places: readonly Place[]): Place {
  return { east: median(places.map((p) => p.east)), north: median(places.map((p) => p.north)) };
}
