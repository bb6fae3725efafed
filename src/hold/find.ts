/** Holds found blind in a flight: rows of same-way half turns, read from both ends, measured, and told from circuits. */

import type { Position } from "../geodesy/position.ts";
import { nauticalMilesFromMetres } from "../quantity/factor.ts";
import { firstAtOrAfter, type Span } from "../quantity/span.ts";
import { Z95 } from "../quantity/weigh.ts";
import type { Leg } from "../track/leg.ts";
import type { Motion } from "../track/motion.ts";
import { likenessOf } from "./circuit.ts";
import { partedByCourse } from "./course-changed.ts";
import { leadsIntoReversal } from "./course-reversal.ts";
import { entryOf } from "./entry.ts";
import { byEntry, type Entered, enteringOnce, parity } from "./entry-before.ts";
import { turnsBegin95 } from "./fix-doubt.ts";
import type { FoundHold } from "./found.ts";
import { type Ground, groundOf } from "./ground.ts";
import { lapsOf, trueOnMap } from "./laps.ts";
import { parted } from "./long-arm.ts";
import { goingOn, heldAgain, lapsAfter, overlap, rather, sameHold, since } from "./one-after-another.ts";
import { standsAlone } from "./one-lap.ts";
import { readRow } from "./reading.ts";
import { partedThere, type SeenRow, throughFix } from "./through-fix.ts";
import { turnEdges } from "./turn-edges.ts";
import { type TurnsInARow, turningOf, turnsInARow } from "./turns-in-a-row.ts";

/** What else is known about the place: traffic circuits end on a runway, holds hang on a fix. */
export interface HoldHints {
  readonly runways?: readonly Position[];
  readonly fixes?: readonly Position[];
  /** Whether a hold may be the one that is looked for: of readings nearly as likely, and of two that overlap, such a one is taken. */
  readonly meant?: (hold: Pick<FoundHold, "fix" | "inbound">) => boolean;
}

/** Looked at before the first turn and after the last, s. */
const BEFORE_SECONDS = 840;
const AFTER_SECONDS = 460;
/** The inbound course is sure where both its doubt, 95 % in degrees, and the chance that it is another are small. Chosen; tuned. */
const SURE_DEGREES = 5.5;
/** The likelihood takes pilots for more alike than they are: its doubts are so much too small, and never under. Tuned on simulation, seeds 1 to 600. */
const MODEST = 1.4;
const LEAST_95 = 0.8;
const SURE_SHARE = 0.05;
const SURE_SCORE = 3;

/** A reading so much less likely (log) than the best may still be the hold, where that closes no lap. Tuned on simulation, seeds 1 to 1000. */
const AS_LIKELY = 12;

/** Every hold on the flight, in flown order. */
export function findHolds(motion: Motion, legs: readonly Leg[], hints: HoldHints = {}): FoundHold[] {
  const rows = turnsInARow(motion, legs)
    .flatMap((whole) => parted(motion, whole))
    .flatMap((whole) => partedByCourse(motion, whole));
  return [
    ...rows.reduce<readonly FoundHold[]>((holds, row) => withRow(motion, holds, { row, motion }, hints), []),
  ];
}

/** The holds before a row, and those of the row. */
function withRow(
  flight: Motion,
  before: readonly FoundHold[],
  { row, motion }: SeenRow,
  hints: HoldHints,
): readonly FoundHold[] {
  const last = before.at(-1);
  const found = holdOf(motion, row, hints);
  if (!found) return before;
  const joined = last && sameHold(flight, last, found);
  if (joined) return [...before.slice(0, -1), joined];
  const hold = last && lapsAfter(last, found) ? seenAfter(motion, last, found, row, hints) : found;
  const through = throughFix(motion, hold);
  if (through) {
    const parts = partedThere(motion, row, hold, through);
    const holds = parts.reduce((all, part) => withRow(flight, all, part, hints), before);
    if (holds.length > before.length) return holds;
  }
  if (!last) return [hold];
  const next = lapsAfter(last, hold) ? goingOn(motion, last, hold) : null;
  if (next || !overlap(last, hold)) return [...before, heldAgain(last, next ?? hold)];
  return [...before.slice(0, -1), rather(last, hold, hints.meant)];
}

/** A hold whose laps began after those of another, with the entry that was flown since. */
const seenAfter = (
  motion: Motion,
  last: FoundHold,
  hold: FoundHold,
  row: TurnsInARow,
  hints: HoldHints,
): FoundHold => (overlap(last, hold) ? (holdOf(since(motion, last), row, hints) ?? hold) : hold);

/** The likeliest reading of a row that makes a hold, and the one that is meant before others nearly as likely; null where none does. */
function holdOf(motion: Motion, row: TurnsInARow, hints: HoldHints): FoundHold | null {
  const { side, arms } = row;
  const ground = groundOf(motion, about(motion, turningOf(row)), turningOf(row));
  const turns = arms.slice(1).map((arm, i) => turnEdges(motion, ground, arms[i]!, arm));
  const fixes = (hints.fixes ?? []).map((fix) => ground.placeOf(fix));
  const entering = enteringOnce(ground, side, fixes);
  const readings = byEntry(ground, readRow(ground, { side, arms, turns }, fixes), entering);
  let likeliest: FoundHold | null = null;
  for (const [i, reading] of readings.entries()) {
    if (readings[0]!.score - reading.score > AS_LIKELY) break;
    if (reading.inbound.length === 0) continue;
    const others = readings.filter((_, j) => j !== i);
    const otherEnd = others.find((other) => parity(other) !== parity(reading));
    const lead = reading.score - (otherEnd?.score ?? Number.NEGATIVE_INFINITY);
    const hold = holdAs(motion, ground, side, entering(reading, readings), lead);
    if (!hold) continue;
    const other = hints.meant && !hints.meant(hold);
    if (other && likeliest) continue;
    const likeness = likenessOf(motion, ground, hold.laps, hints.runways ?? []);
    const like = likeness === "other" ? null : { ...hold, maybeCircuit: likeness === "maybe" };
    if (!other) return like ?? likeliest;
    likeliest = like;
  }
  return likeliest;
}

/** A reading as a hold; null where no lap of it closes. `lead`: by how much it is likelier than with the fix at the other end. */
function holdAs(
  motion: Motion,
  ground: Ground,
  side: 1 | -1,
  { reading, known }: Entered,
  lead: number,
): Omit<FoundHold, "maybeCircuit"> | null {
  const entered = entryOf(ground, side, reading, known);
  const overFix = entered.entry === "teardrop" && reading.before !== null && lead >= SURE_SCORE;
  const laps = lapsOf(motion, ground, entered.turns, side, known, overFix);
  const late = laps.length > 0 && entered.entry === "direct" && laps[0]!.times.start > entered.start;
  while (laps.length > 0 && !laps.at(-1)!.complete) laps.pop();
  if (laps.length === 0) return null;
  const alone = laps.length === 1 && entered.entry !== "parallel" && !overFix;
  if (alone && (!standsAlone(ground, laps[0]!, known) || leadsIntoReversal(ground, laps[0]!))) return null;
  const { start, end } = ground.span;
  const rowAt = (time: number) => firstAtOrAfter(motion.time, time, start, end);
  const fix = ground.position(known.fix);
  const inbound95 = Math.hypot(Z95 * MODEST * known.courseSd, LEAST_95);
  return {
    span: {
      start: rowAt(late ? laps[0]!.times.start : entered.start),
      end: Math.min(end, rowAt(laps.at(-1)!.times.end) + 1),
    },
    turns: side > 0 ? "right" : "left",
    fix,
    fix95: nauticalMilesFromMetres(
      Math.hypot(2.45 * MODEST * known.fixSd, turnsBegin95(ground, entered.turns)),
    ),
    inbound: trueOnMap(known.course, known.fix.east, fix.latitude),
    inbound95,
    sure: inbound95 <= SURE_DEGREES && known.elsewhere <= SURE_SHARE && lead >= SURE_SCORE,
    entry: entered.entry,
    laps,
    alone,
  };
}

/** The rows about a span, within its run without gaps. */
function about(motion: Motion, { start, end }: Span): Span {
  const run = motion.spans.find((s) => s.start <= start && start < s.end)!;
  const time = motion.time;
  return {
    start: firstAtOrAfter(time, time[start]! - BEFORE_SECONDS * 1000, run.start, run.end),
    end: firstAtOrAfter(time, time[Math.min(end, run.end - 1)]! + AFTER_SECONDS * 1000, run.start, run.end),
  };
}
