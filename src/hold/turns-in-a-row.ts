/** Same-way turns of about half a circle, one after the other with legs between: what a hold looks like at first sight. */
import type { Span } from "../quantity/span.ts";
import { airborneRows } from "../track/index.ts";
import type { Leg } from "../track/leg.ts";
import type { Motion } from "../track/motion.ts";
import { rateOfBank } from "../wind/index.ts";
import { hinged, type Piece } from "./hinge.ts";
import { slowness } from "./slowness.ts";

/** `arms[0]` leads to the first turn, `arms[i]` follows turn i; rows, from the first straight of the arm to the last. */
export interface TurnsInARow {
  /** 1 right, -1 left. */
  readonly side: 1 | -1;
  readonly arms: readonly Span[];
  /** How well it is a row; longer is better. */
  readonly score: number;
}

/** A turn between two arms, degrees over the ground: wind makes 90 and 270 of two turns of 180. */
const HALF_TURN: readonly [number, number] = [70, 300];
const HALF_TURN_SD = 70;
/** Two of them in a row make a full circle, within the corrections of the inbound leg. */
const CIRCLE_SD = 45;
/** Any two are more than a corner of a circuit after another. */
const LEAST_OF_TWO = 220;
/** The first may be smaller, from the course of arrival, or larger. A direct entry turns by 70 degrees or more, less what it corrects for the wind. */
const FIRST_TURN: readonly [number, number] = [36, 310];
/** A change of track of no more than this, either way, is a correction on one and the same arm. */
const CORRECTION = 65;
/** Longest arm between two turns, s. */
const LONGEST_ARM = 450;
/** A turn may pause so long, s, at rate one; slower turns, of faster aircraft, pause longer. */
const PAUSE = 12;
/** Where corners are sharper than airliners bank, the log joins plots far apart by straight lines of up to so long, s. */
const PAUSE_BETWEEN_PLOTS = 40;
const SHARPEST_BANK = 30;
/** Scores (tuned): a half turn, the first turn, a correction, an arm of no length. */
const GAIN = 2;
const FIRST_GAIN = 1;
const CORRECTION_COST = 0.3;
const HINGE_COST = 1;
/** A straight is the more an arm the longer it is, up to so many seconds. */
const LONG_GAIN = 0.3;
const LONG = 30;

/** The best way to be on a straight after none, one, or more half turns: the arms so far, and how they were turned. */
interface Node {
  readonly piece: number;
  readonly score: number;
  readonly from: Node | null;
  /** Reached by half a turn, else by a correction on the same arm. */
  readonly half: boolean;
  readonly halves: number;
  /** Degrees of the last half turn. */
  readonly turned: number;
  /** First row of the arm that this straight belongs to. */
  readonly armStart: number;
  /** Arms with a length, less those without, since the first turn. */
  readonly long: number;
}
type Nodes = (Node | null)[];

/**
 * Rows of same-way half turns, at least two each, in flown order. Method: dynamic programming over the straights;
 * a step is either half a turn or a correction on the arm; the rows that score best are taken first.
 */
export function turnsInARow(motion: Motion, legs: readonly Leg[]): TurnsInARow[] {
  const airborne = airborneRows(motion);
  const pieces = hinged(motion, legs);
  const rows: TurnsInARow[] = [];
  const both = ([1, -1] as const).flatMap((side) =>
    bestRows(nodesOf(motion, pieces, airborne, side), pieces, side),
  );
  for (const row of both.sort((a, b) => b.score - a.score)) {
    const { start, end } = turningOf(row);
    if (rows.every((other) => end <= turningOf(other).start || start >= turningOf(other).end)) rows.push(row);
  }
  return rows.sort((a, b) => a.arms[0]!.end - b.arms[0]!.end);
}

/** From the first turn to the last. */
export const turningOf = ({ arms }: TurnsInARow): Span => ({ start: arms[0]!.end, end: arms.at(-1)!.start });

function nodesOf(motion: Motion, pieces: readonly Piece[], airborne: Uint8Array, side: 1 | -1): Node[] {
  const seconds = ({ start, end }: Span) =>
    (motion.time[Math.min(end, motion.length - 1)]! - motion.time[start]!) / 1000;
  const silences = new Set(motion.spans.map(({ start }) => start));
  const nodesAt: (Nodes | undefined)[] = [];
  for (let b = 0; b < pieces.length; b++) {
    const { kind, span } = pieces[b]!;
    if (kind === "turn") continue;
    const worth =
      LONG_GAIN * Math.min(1, seconds(span) / LONG) -
      (kind === "hinge" ? HINGE_COST : kind === "border" ? CORRECTION_COST : 0);
    const fresh = { piece: b, score: worth, from: null, half: false, halves: 0, turned: 180 };
    const nodes: Nodes = [{ ...fresh, armStart: span.start, long: 0 }, null, null];
    const offer = (state: number, node: Node) => {
      if (!(node.score <= (nodes[state]?.score ?? 0))) nodes[state] = node;
    };
    const slow = slowness(motion.groundSpeed[span.start]!);
    let turned = 0; // between the straights, this way positive
    let turns = 0;
    let sharp = 0;
    let paused = 0;
    let longest = 0;
    for (let a = b - 1; a >= 0; a--) {
      const piece = pieces[a]!;
      const from = piece.span;
      if (silences.has(pieces[a + 1]!.span.start) || airborne[from.end - 1] !== 1) break; // a gap, or landed
      const lasted = seconds(from);
      if (piece.kind === "turn") {
        const size = Math.abs(piece.turn);
        turned += side * piece.turn;
        turns += size;
        if (size > lasted * rateOfBank(SHARPEST_BANK, motion.groundSpeed[from.start]!)) sharp += size;
        if (-side * piece.turn > CORRECTION || turned > FIRST_TURN[1]) break;
        continue;
      }
      const allowed = 2 * sharp > turns ? PAUSE_BETWEEN_PLOTS : PAUSE * slow;
      for (const [state, before] of nodesAt[a]!.entries()) {
        if (!before) continue;
        if (longest === 0 && Math.abs(turned) <= CORRECTION) {
          const cost = CORRECTION_COST + (turned / CORRECTION) ** 2;
          offer(state, {
            ...before,
            piece: b,
            score: before.score + worth - cost,
            from: before,
            half: false,
          });
        }
        const gain = halfTurn(turned, before, () => seconds({ start: before.armStart, end: from.end }));
        // a turn back right beside an arm is a correction on it
        const [begins, ends] = [pieces[a + 1]!, pieces[b - 1]!].map((turn) => side * turn.turn > 0);
        if (gain === null || longest > allowed || !begins || !ends) continue;
        offer(Math.min(state + 1, 2), {
          ...{ piece: b, score: before.score + gain + worth - paused / (3 * allowed), from: before },
          ...{ half: true, halves: before.halves + 1, turned, armStart: span.start },
          long: before.long + (kind === "hinge" ? -1 : 1),
        });
      }
      turned += side * piece.turn;
      longest = Math.max(longest, lasted);
      paused += lasted;
      if (longest > PAUSE_BETWEEN_PLOTS * slow) break;
    }
    nodesAt[b] = nodes;
  }
  return nodesAt.flatMap((nodes) => nodes?.[2] ?? []);
}

/** What a turn is worth as the next half turn of a chain; null where it is none. */
function halfTurn(turned: number, before: Node, armSeconds: () => number): number | null {
  const start = before.halves === 0;
  const [least, most] = start ? FIRST_TURN : HALF_TURN;
  if (turned < least || turned > most) return null;
  if (start) return FIRST_GAIN + Math.min(1, turned / 180);
  if (turned + before.turned < LEAST_OF_TWO || armSeconds() > LONGEST_ARM) return null;
  const usual = GAIN - 0.5 * ((turned - 180) / HALF_TURN_SD) ** 2;
  return before.halves === 1 ? usual : usual - 0.5 * ((turned + before.turned - 360) / CIRCLE_SD) ** 2;
}

/** The best chain of nodes, then the best of what is left, until none is left. */
function bestRows(nodes: readonly Node[], pieces: readonly Piece[], side: 1 | -1): TurnsInARow[] {
  const rows: TurnsInARow[] = [];
  const taken = new Uint8Array(pieces.length);
  for (const last of nodes.filter((n) => n.long >= 1).sort((a, b) => b.score - a.score)) {
    const arms: Span[] = [];
    const used: number[] = [];
    let { end } = pieces[last.piece]!.span;
    for (let node: Node | null = last; node; node = node.from) {
      used.push(node.piece);
      if (node.half || !node.from) arms.unshift({ start: pieces[node.piece]!.span.start, end });
      if (node.half) end = pieces[node.from!.piece]!.span.end;
    }
    if (used.some((i) => taken[i] === 1)) continue;
    for (const i of used) taken[i] = 1;
    rows.push({ side, arms, score: last.score });
  }
  return rows;
}
