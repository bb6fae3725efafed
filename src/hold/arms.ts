/** The arms between half turns: how straight each was flown, and how well they agree as the legs of a hold. */
import { cosDeg, directionOf, sinDeg, turnFrom } from "../quantity/angle.ts";
import type { AngleSize, Seconds, TrueDegrees, UtcMillis } from "../quantity/units.ts";
import type { Ground } from "./ground.ts";
import { type Line, lastStraight } from "./inbound-line.ts";
import { about, CHANCE_DEGREES, student, together, WELL } from "./likelihood.ts";
import type { TurnEdges } from "./turn-edges.ts";

/** Inbound legs end on one line, outbound legs do not, degrees. Tuned. */
const INBOUND_SPREAD = 3;
const OUTBOUND_SPREAD = 8;
/** Headings go to and fro on a leg by this, with this spread: outbound, inbound when it was joined well, inbound when it was cut into, degrees. Tuned. */
const OUTBOUND_BEND: readonly [AngleSize, AngleSize] = [4.5, 2.5];
const INBOUND_BEND: readonly [AngleSize, AngleSize] = [5, 3];
const CUT_BEND: readonly [AngleSize, AngleSize] = [22, 12];

/** Which turns of a row are the hold's: all but the first `lead` and the last `tail`, and which of those begins over the fix. */
export interface Sense {
  readonly lead: 0 | 1;
  readonly tail: 0 | 1;
  /** 0: the first of the hold's turns begins over the fix; 1: the second. */
  readonly first: 0 | 1;
}

export interface Arm {
  /** Null where it is too short. */
  readonly line: Line | null;
  readonly bend: AngleSize;
  readonly seconds: Seconds;
}

/** The arms between the turns. */
export function armsOf(ground: Ground, turns: readonly TurnEdges[]): Arm[] {
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

/** What the arms say for a sense in which `n` turns are the hold's, log; and the mean tracks outbound and inbound. */
export function legsAgree(arms: readonly Arm[], { lead, first }: Sense, n: number) {
  const tracks: [number[], number[]] = [[], []]; // outbound, inbound
  let score = 0;
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
  const [outward, inward] = tracks.map(meanDirection) as [TrueDegrees, TrueDegrees];
  const onOneLine = (of: readonly number[], middle: TrueDegrees, spread: AngleSize) =>
    together(
      of.map((t) => turnFrom(middle, t)),
      (x) => student(x, spread),
      CHANCE_DEGREES,
    );
  score += onOneLine(tracks[0], outward, OUTBOUND_SPREAD) + onOneLine(tracks[1], inward, INBOUND_SPREAD);
  return { score, outward, inward: tracks[1].length > 0 ? inward : null };
}

const meanDirection = (tracks: readonly number[]): number =>
  directionOf(
    tracks.reduce((s, t) => s + sinDeg(t), 0),
    tracks.reduce((s, t) => s + cosDeg(t), 0),
  );
