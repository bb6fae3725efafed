/** The most probable wind and airspeed along the facts: several starts, iteration, robust weights, and the flight's check of itself. */
import { checkRun, type TurnCheck } from "./check.ts";
import { AIRSPEED, type Facts } from "./facts.ts";
import { FactSmoother } from "./filter.ts";
import { allowRamps } from "./ramps.ts";
import { restlessness } from "./restless.ts";
import { type Run, turnsOf } from "./runs.ts";
import { settle } from "./settle.ts";
import type { Belief } from "./state.ts";

/** Starts other than calm: winds from four sides of this share of the ground speed (18 kt at 100 kt). */
const START_SHARE = 0.18;
const FIRST_ITERATIONS = 4;
/** Noses everywhere within this of those where another start led, as unit vectors: it leads there too. 2 degrees, chosen. */
const SAME = 0.04;
const MORE_ITERATIONS = 4;
/** Rounds in which hidden changes and the restlessness of wind and airspeed are weighed anew. */
const ROUNDS = 2;
/** A normalised innovation beyond this is met with doubt (Huber, Ann. Math. Statist. 35, 1964: 95 % efficiency at 1.345; looser here, since innovations are correlated). */
const HUBER = 3;
/** A turn that the others contradict this much, as mean square, loses trust in its airspeed. Tuned on simulated flights. */
const CONTRADICTED = 1.5;
const MOST_LOOSENED = 6;
/** Airspeed variance at the ends of a contradicted turn, as a share of airspeed, squared below. */
const LOOSENED_SHARE = 0.08;
const LEAST_TURN = 50;
/** Others contradict a turn only where they know the wind without it to this standard deviation, kt. */
const KNOWN_WITHOUT = 8;
/** The mean statistic of flights that the model fits is 0.3 to 0.4, since neighbours agree; from this on it widens the doubt. Tuned on simulated flights, tried on real ones. */
const USUAL_STATISTIC = 0.8;
/** The covariance is never scaled below this. */
const LEAST_SCALE = 1;

export interface Solution {
  readonly smoother: FactSmoother;
  /** As it came out of the flight. */
  readonly belief: Belief;
  /** Factor for all variances, from the flight's check of itself. */
  readonly scale: number;
  readonly checks: readonly TurnCheck[];
}

/** `known`: the solution of the same flight with more said of it, to start from; restlessness is not weighed anew then. */
export function solveFacts(
  facts: Facts,
  usual: Belief,
  groundSpeed: number,
  known: Solution | null = null,
): Solution {
  let belief = known?.belief ?? usual;
  const base = Float64Array.from(facts.levelStep);
  const all = turnsOf(facts, 0);
  const smoother = known ? startFrom(known, facts) : bestStart(facts, belief, groundSpeed);
  for (let round = 0; round < ROUNDS; round++) {
    if (!known) {
      belief = restlessness(smoother, belief, usual);
      smoother.pass(belief);
    }
    allowRamps(smoother, belief, base, all, groundSpeed);
    iterate(smoother, belief, 2);
  }
  iterate(smoother, belief, MORE_ITERATIONS);
  const turns = turnsOf(facts, LEAST_TURN);
  let checks = checkAll(smoother, belief, turns);
  for (let round = 0; round < MOST_LOOSENED; round++) {
    const worst = checks.reduce<TurnCheck | null>(
      (w, c) => (c.statistic > CONTRADICTED && c.statistic > (w?.statistic ?? 0) ? c : w),
      null,
    );
    if (!worst) break;
    loosen(facts, worst, groundSpeed);
    iterate(smoother, belief, 2);
    checks = checkAll(smoother, belief, turns);
  }
  settle(smoother);
  // shrunk toward 1 by two imagined turns that agree
  const sum = checks.reduce((s, c) => s + Math.min(c.statistic, 4), 0);
  return {
    smoother,
    belief,
    checks,
    scale: Math.max(LEAST_SCALE, (sum / USUAL_STATISTIC + 2) / (checks.length + 2)),
  };
}

function bestStart(facts: Facts, belief: Belief, groundSpeed: number): FactSmoother {
  const w = START_SHARE * groundSpeed;
  const starts = [
    [belief.mean[0]!, belief.mean[1]!],
    [w, 0],
    [-w, 0],
    [0, w],
    [0, -w],
  ];
  const smoother = new FactSmoother(facts, belief);
  const ends: Noses[] = [];
  let best: Noses | null = null;
  let least = Infinity;
  for (const [east, north] of starts) {
    smoother.startFrom(east!, north!);
    if (!descend(smoother, belief, ends)) continue;
    const end = { east: smoother.noseEast.slice(), north: smoother.noseNorth.slice() };
    ends.push(end);
    const cost = smoother.forward(belief);
    if (best && !(cost < least)) continue;
    least = cost;
    best = end;
  }
  smoother.noseEast.set(best!.east);
  smoother.noseNorth.set(best!.north);
  smoother.pass(belief);
  return smoother;
}

/** From the noses of a solution: the flight's own facts are the same and in the same order. */
function startFrom({ smoother: from, belief }: Solution, facts: Facts): FactSmoother {
  const smoother = new FactSmoother(facts, belief);
  for (let i = 0, j = 0; i < facts.count; i++) {
    if (facts.kind[i] !== AIRSPEED) continue;
    while (from.facts.kind[j] !== AIRSPEED) j++;
    smoother.noseEast[i] = from.noseEast[j]!;
    smoother.noseNorth[i] = from.noseNorth[j]!;
    j++;
  }
  smoother.pass(belief);
  return smoother;
}

interface Noses {
  readonly east: Float64Array;
  readonly north: Float64Array;
}

/** A few iterations; false as soon as they lead where others have led. */
function descend(smoother: FactSmoother, belief: Belief, ends: readonly Noses[]): boolean {
  for (let i = 0; i < FIRST_ITERATIONS; i++) {
    smoother.passForPath(belief);
    smoother.relinearise();
    if (i > 0 && ends.some((end) => leadsTo(smoother, end))) return false;
  }
  return true;
}

/** Whether the noses of a path are those of another, everywhere. */
function leadsTo({ noseEast, noseNorth, facts }: FactSmoother, { east, north }: Noses): boolean {
  for (let i = 0; i < facts.count; i++) {
    if (Math.abs(noseEast[i]! - east[i]!) + Math.abs(noseNorth[i]! - north[i]!) > SAME) return false;
  }
  return true;
}

function iterate(smoother: FactSmoother, belief: Belief, times: number): void {
  const { facts, doubtFactor, innovation, innovationVariance } = smoother;
  for (let i = 0; i < times; i++) {
    smoother.relinearise();
    if (i === times - 1) {
      smoother.pass(belief);
      return;
    }
    smoother.passForPath(belief);
    for (let k = 0; k < facts.count; k++) {
      const base = innovationVariance[k]! - facts.noise[k]! * (doubtFactor[k]! - 1);
      const wild = Math.abs(innovation[k]!) / Math.sqrt(base);
      // Huber's weight HUBER / wild, as a variance of the whole innovation
      const wanted = wild > HUBER ? 1 + (base * (wild / HUBER - 1)) / facts.noise[k]! : 1;
      doubtFactor[k] = facts.kind[k] === AIRSPEED ? wanted : 1;
    }
  }
}

function checkAll(smoother: FactSmoother, belief: Belief, turns: readonly Run[]): TurnCheck[] {
  const checks: TurnCheck[] = [];
  for (const turn of turns) {
    const check = checkRun(smoother, belief, turn);
    if (check && check.without < KNOWN_WITHOUT) checks.push(check);
  }
  return checks;
}

/** The airspeed of a contradicted turn may be another at its ends and wander more within. */
function loosen(facts: Facts, { first, after }: TurnCheck, groundSpeed: number): void {
  const jump = (LOOSENED_SHARE * groundSpeed) ** 2;
  const inside = jump / Math.max(1, after - first);
  for (let i = first; i <= after && i < facts.count; i++) {
    facts.levelStep[i] = facts.levelStep[i]! + inside + (i === first || i === after ? jump : 0);
  }
}
