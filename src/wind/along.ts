/** The estimate brought from its few facts to every row of the motion. */
import { directionOf } from "../quantity/angle.ts";
import { DEGREES_PER_RADIAN } from "../quantity/factor.ts";
import type { Leg } from "../track/leg.ts";
import type { Motion } from "../track/motion.ts";
import { varianceAlong } from "./ellipse.ts";
import { AIRSPEED, EAST_PRIOR } from "./facts.ts";
import { FULL_LIMIT, knowledgeOf, TOLD_LIMIT } from "./knowledge.ts";
import type { Solution } from "./solve.ts";
import { walkWithHeight } from "./state.ts";
import type { RestsOn, WindAlongFlight, WindKnowledge } from "./wind.ts";

/** Turns count for a row this near, s, and together from this many degrees on. */
const TURNS_REACH = 900;
const TURNS_LEAST = 60;
/** The second order is not followed beyond this share of the airspeed. */
const MOST_BENT = 0.05;

/** Nothing known anywhere. */
export function unknownAlong(motion: Motion): WindAlongFlight {
  const unknown = () => new Float64Array(motion.length).fill(NaN);
  return {
    airEast: unknown(),
    airNorth: unknown(),
    varianceEast: unknown(),
    varianceNorth: unknown(),
    covariance: unknown(),
    trueAirspeed: unknown(),
    trueAirspeedSd: unknown(),
    heading: unknown(),
    headingSd: unknown(),
    knowledge: new Array<WindKnowledge>(motion.length).fill("none"),
    restsOn: new Array<RestsOn>(motion.length).fill("nothing"),
    saidLimit: FULL_LIMIT,
  };
}

/** Wind at each row, between the facts around it; NaN on the ground. */
export function alongRows(motion: Motion, solution: Solution, flown: Uint8Array): WindAlongFlight {
  const { smoother, belief, scale } = solution;
  const { facts } = smoother;
  const limit = facts.kind.includes(EAST_PRIOR) ? TOLD_LIMIT : FULL_LIMIT;
  const used = Array.from({ length: facts.count }, (_, i) => i).filter((i) => facts.kind[i] === AIRSPEED);
  const rows = { ...unknownAlong(motion), saidLimit: limit };
  const knowledge = rows.knowledge as WindKnowledge[];
  for (let k = 0, last = 0; k < motion.length; k++) {
    if (flown[k] === 0) continue;
    const t = (motion.time[k]! - motion.time[0]!) / 1000;
    while (last < used.length - 2 && facts.seconds[used[last + 1]!]! <= t) last++;
    const i = used[last]!;
    const j = used[Math.min(last + 1, used.length - 1)]!;
    const gap = facts.seconds[j]! - facts.seconds[i]!;
    const f = gap > 0 ? Math.max(0, Math.min(1, (t - facts.seconds[i]!) / gap)) : 0;
    // a bridge over the gap: what the wind may do between two facts, or beyond the last
    const beyond = Math.max(0, facts.seconds[i]! - t, t - facts.seconds[j]!);
    const free =
      belief.windUnrest *
      2 *
      belief.windWander ** 2 *
      Math.min(1, (f * (1 - f) * gap + beyond) / belief.windSeconds);
    const bridge = free + f * (1 - f) * walkWithHeight(belief, facts, j);
    const airEast = smoother.windEast(i) * (1 - f) + smoother.windEast(j) * f;
    const airNorth = smoother.windNorth(i) * (1 - f) + smoother.windNorth(j) * f;
    const noseEast = motion.velocityEast[k]! - airEast;
    const noseNorth = motion.velocityNorth[k]! - airNorth;
    const airspeed = Math.hypot(noseEast, noseNorth);
    const u = airspeed > 0 ? noseEast / airspeed : 0;
    const v = airspeed > 0 ? noseNorth / airspeed : 0;
    const east0 = scale * (between(smoother.varianceEast, i, j, f) + bridge);
    const north0 = scale * (between(smoother.varianceNorth, i, j, f) + bridge);
    const covariance0 = scale * between(smoother.covariance, i, j, f);
    const own = motion.velocitySd[k]! ** 2;
    const across = varianceAlong(east0, north0, covariance0, v, -u);
    const bent = bend(across, airspeed);
    const varianceEast = east0 + 2 * bent * bent * u * u;
    const varianceNorth = north0 + 2 * bent * bent * v * v;
    const covariance = covariance0 + 2 * bent * bent * u * v;
    rows.airEast[k] = airEast + bent * u;
    rows.airNorth[k] = airNorth + bent * v;
    rows.varianceEast[k] = varianceEast;
    rows.varianceNorth[k] = varianceNorth;
    rows.covariance[k] = covariance;
    rows.trueAirspeed[k] = airspeed;
    rows.trueAirspeedSd[k] = Math.sqrt(varianceAlong(east0, north0, covariance0, u, v) + own);
    const speed = motion.groundSpeed[k]!;
    const trackEast = speed > 0 ? motion.velocityEast[k]! / speed : 0;
    const trackNorth = speed > 0 ? motion.velocityNorth[k]! / speed : 0;
    knowledge[k] = knowledgeOf(varianceEast, varianceNorth, covariance, trackEast, trackNorth, limit);
    if (knowledge[k] === "full" && airspeed > 0) {
      rows.heading[k] = directionOf(noseEast, noseNorth);
      rows.headingSd[k] = (Math.sqrt(across + own) / airspeed) * DEGREES_PER_RADIAN;
    }
  }
  return rows;
}

const between = (column: Float64Array, i: number, j: number, f: number): number =>
  column[i]! * (1 - f) + column[j]! * f;

/**
 * An unknown crosswind of variance s2 hides in the drift: with airspeed a the wind along the nose is s2 / 2a more of a
 * tailwind than the straight line says, give or take sqrt(2) times that (second order of |g - w| = a; mean and variance
 * of the square of a normal deviate). Nothing where turns made the crosswind known.
 */
function bend(across: number, airspeed: number): number {
  return airspeed > 0 ? Math.min(across / (2 * airspeed), MOST_BENT * airspeed) : 0;
}

/** What each row rests on: the user's word where nothing would be known without it, else turns near enough, else courses. */
export function restsOn(
  motion: Motion,
  legs: readonly Leg[],
  known: WindAlongFlight,
  alone: WindAlongFlight,
): RestsOn[] {
  const turned = new Float64Array(motion.length + 1);
  for (const { kind, span, turn } of legs) {
    const share = kind === "turn" ? Math.abs(turn) / Math.max(1, span.end - span.start) : 0;
    for (let k = span.start; k < span.end; k++) turned[k + 1] = turned[k]! + share;
  }
  const rest = new Array<RestsOn>(motion.length);
  for (let k = 0, low = 0, high = 0; k < motion.length; k++) {
    while (motion.time[k]! - motion.time[low]! > TURNS_REACH * 1000) low++;
    while (high < motion.length && motion.time[high]! - motion.time[k]! <= TURNS_REACH * 1000) high++;
    if (known.knowledge[k] === "none") rest[k] = "nothing";
    else if (alone.knowledge[k] !== "full" && alone.knowledge[k] !== known.knowledge[k]) rest[k] = "prior";
    else rest[k] = turned[high]! - turned[low]! >= TURNS_LEAST ? "turns" : "courses";
  }
  return rest;
}
