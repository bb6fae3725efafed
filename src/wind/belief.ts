/** What is believed of wind and airspeed before the first fact, and what the user says of them, as facts. */

import { cosDeg, sinDeg } from "../quantity/angle.ts";
import { METRES_PER_SECOND_PER_KNOT, RADIANS_PER_DEGREE } from "../quantity/factor.ts";
import type { AirspeedPrior, WindPrior } from "../quantity/prior.ts";
import type { FeetMsl, Knots } from "../quantity/units.ts";
import { EAST_PRIOR, emptyFacts, type Facts, LEVEL_PRIOR, NORTH_PRIOR } from "./facts.ts";
import { AIRSPEED_ERROR, HEADING_ERROR, type MeasuredAir } from "./measured.ts";
import { AIRSPEED_SHEARS, type Belief, N } from "./state.ts";

/** Airspeed is about the median ground speed, with this standard deviation as a share of it. */
const AIRSPEED_SHARE = 0.35;
/** Wind, each component, kt, and its growth with height, kt per 1,000 ft. Common experience, no source. */
const WIND_SD = 15;
const WIND_SD_GROWTH = 1.5;
/** Wander of the wind, kt over s, and the distance in which it fades, m, in calm air; what a flight calls for comes on top. Of the airspeed, kt at 100 kt over s. Tuned on simulated flights, seeds 1 to 160. */
const WIND_WANDER = 2.05;
const WIND_SECONDS = 900;
const WIND_REACH_METRES = 60_000;
const AIRSPEED_WANDER = 1.7;
const AIRSPEED_SECONDS = 60;
/** Airspeed lost in a standard-rate turn, kt at 100 kt: mean and standard deviation; 0 to 4 kt are met with. Common experience, no source. */
const TURN_LOSS = 0.8;
const TURN_LOSS_SD = 1.5;

/** Steady change of each component with height around the flight's middle height, kt per 1,000 ft. Tuned on simulated flights, tried on a real one. */
const SHEAR_SD = 3;
/** Steady change of the airspeed with height besides its growth at a held indicated one, kt at 100 kt per 1,000 ft, around the middle height. Chosen: the growth is 1.5, and whether the indicated airspeed is held or the true one is left to the flight. */
const AIRSPEED_SHEAR = -0.5;
const AIRSPEED_SHEAR_SD = 1;

/** Changes of speed believed beforehand, in so many minutes; one turn counts for so many minutes of straight flight, since speeds are often changed there; and the most that is believed of one turn. Tuned on simulated flights, seeds 1 to 200. */
const USUAL_CHANGES = 0.5;
const USUAL_MINUTES = 20;
const TURN_MINUTES = 2.4;
const MOST_HIDDEN = 0.05;

const windSdAt = (altitude: FeetMsl): Knots => WIND_SD + (WIND_SD_GROWTH * Math.max(0, altitude)) / 1000;

/** Growth of that variance with height, kt2 a foot: a walk with height that leads from the one to the other. */
export const windGrowthAt = (altitude: FeetMsl): number => (2 * WIND_SD_GROWTH * windSdAt(altitude)) / 1000;

export function beliefOf(groundSpeed: number, altitude: number): Belief {
  const scale = groundSpeed / 100;
  const mean = new Float64Array(N);
  const variance = new Float64Array(N);
  variance.fill(windSdAt(altitude) ** 2, 0, 2);
  variance.fill(WIND_WANDER ** 2, 2, 4);
  mean[4] = groundSpeed;
  variance[4] = (AIRSPEED_SHARE * groundSpeed) ** 2;
  variance[5] = AIRSPEED_WANDER ** 2 * scale;
  mean[6] = TURN_LOSS * scale;
  variance[6] = (TURN_LOSS_SD * scale) ** 2;
  variance.fill(SHEAR_SD ** 2, 7, 9);
  mean[AIRSPEED_SHEARS] = AIRSPEED_SHEAR * scale;
  variance[AIRSPEED_SHEARS] = (AIRSPEED_SHEAR_SD * scale) ** 2;
  const fade = WIND_REACH_METRES / (groundSpeed * METRES_PER_SECOND_PER_KNOT);
  return {
    mean,
    variance,
    windWander: WIND_WANDER,
    windSeconds: Math.min(WIND_SECONDS, fade),
    windUnrest: 1,
    heightUnrest: 1,
    climbUnrest: 1,
    hiddenChange: hiddenChange(0, 0),
    airspeedWander: AIRSPEED_WANDER * Math.sqrt(scale),
    airspeedSeconds: AIRSPEED_SECONDS,
  };
}

/** Chance that the airspeed is changed in a turn, by how often it was seen to be on straights of so many minutes. */
export function hiddenChange(seen: number, minutes: number): number {
  return Math.min(MOST_HIDDEN, (TURN_MINUTES * (USUAL_CHANGES + seen)) / (USUAL_MINUTES + minutes));
}

/** A stated airspeed is held to on each level straight; straights this near share what it says, s. */
const SHARED_SECONDS = 600;
/** Level: vertical speed below this, ft/min. */
const LEVEL_FLIGHT = 300;
/** A stated wind is met where the flight was nearest its height, and again after this, s, sharing what it says. */
const WIND_AGAIN_SECONDS = 1800;
/** Not beyond this from its height, ft. */
const WIND_HEIGHT_REACH = 2500;

/** One equation more, after a fact. */
interface Extra {
  readonly after: number;
  readonly kind: number;
  readonly value: number;
  readonly variance: number;
}

/** Ground velocity less recorded air velocity, at each fact that has it; errors of the instruments are shared by those near. */
function addMeasured(facts: Facts, measured: MeasuredAir, extra: Extra[]): void {
  const known: number[] = [];
  for (let i = 0; i < facts.count; i++) {
    const row = facts.row[i]!;
    if (!Number.isNaN(measured.trueAirspeed[row]! + measured.heading[row]!)) known.push(i);
  }
  for (let n = 0, low = 0, high = 0; n < known.length; n++) {
    const i = known[n]!;
    const at = facts.seconds[i]!;
    while (at - facts.seconds[known[low]!]! > SHARED_SECONDS) low++;
    while (high < known.length && facts.seconds[known[high]!]! - at <= SHARED_SECONDS) high++;
    const speed = measured.trueAirspeed[facts.row[i]!]!;
    const heading = measured.heading[facts.row[i]!]!;
    const across = speed * HEADING_ERROR * RADIANS_PER_DEGREE;
    // the larger of the two in every direction: the axes turn with the nose, the equations do not
    const variance = Math.max(AIRSPEED_ERROR, across) ** 2 * (high - low);
    extra.push({ after: i, kind: EAST_PRIOR, value: facts.east[i]! - speed * sinDeg(heading), variance });
    extra.push({ after: i, kind: NORTH_PRIOR, value: facts.north[i]! - speed * cosDeg(heading), variance });
  }
}

/** The facts with what the user said among them, in order of time. */
export function withPriors(
  facts: Facts,
  airspeed: AirspeedPrior | null,
  winds: readonly WindPrior[],
  measured: MeasuredAir | null = null,
): Facts {
  const extra: Extra[] = [];
  if (airspeed) {
    const level = firstLevelFacts(facts);
    for (const i of level) {
      const sharing = level.filter((j) => Math.abs(facts.seconds[j]! - facts.seconds[i]!) < SHARED_SECONDS);
      const variance = airspeed.doubt ** 2 * sharing.length;
      extra.push({ after: i, kind: LEVEL_PRIOR, value: airspeed.trueAirspeed * facts.growth[i]!, variance });
    }
  }
  for (const wind of winds) {
    const at = nearestInHeight(facts, wind.altitude);
    for (const i of at) {
      const variance = wind.doubt ** 2 * at.length;
      extra.push({ after: i, kind: EAST_PRIOR, value: -wind.speed * sinDeg(wind.from), variance });
      extra.push({ after: i, kind: NORTH_PRIOR, value: -wind.speed * cosDeg(wind.from), variance });
    }
  }
  if (measured) addMeasured(facts, measured, extra);
  return extra.length === 0 ? facts : insert(facts, extra);
}

/** The first fact of each level straight of two blocks or more. */
function firstLevelFacts(facts: Facts): number[] {
  const found: number[] = [];
  for (let i = 0; i + 1 < facts.count; i++) {
    const begins = i === 0 || facts.leg[i] !== facts.leg[i - 1];
    const straight = facts.turning[i] === 0 && facts.leg[i] === facts.leg[i + 1];
    if (begins && straight && Math.abs(facts.verticalSpeed[i]!) < LEVEL_FLIGHT) found.push(i);
  }
  return found;
}

/** Facts nearest a height, one each half hour; of the middle of the flight where no height is said. */
function nearestInHeight(facts: Facts, altitude: number | null): number[] {
  const found: number[] = [];
  for (let i = 0; i < facts.count; ) {
    let end = i;
    let best = -1;
    let least = WIND_HEIGHT_REACH;
    for (; end < facts.count && facts.seconds[end]! - facts.seconds[i]! < WIND_AGAIN_SECONDS; end++) {
      const known = altitude !== null && !Number.isNaN(facts.altitude[end]!);
      const off = known ? Math.abs(facts.altitude[end]! - altitude) : 0;
      if (off < least) {
        least = off;
        best = end;
      }
    }
    if (best >= 0) found.push(best);
    i = end;
  }
  return found;
}

function insert(facts: Facts, extra: readonly Extra[]): Facts {
  const result = emptyFacts(facts.count + extra.length);
  const columns = (Object.keys(facts) as (keyof Facts)[]).filter((key) => key !== "count");
  const copy = (i: number): number => {
    const to = result.count++;
    for (const key of columns) {
      (result[key] as Float64Array)[to] = (facts[key] as Float64Array)[i]!;
    }
    return to;
  };
  const sorted = extra.slice().sort((a, b) => a.after - b.after);
  let next = 0;
  for (let i = 0; i < facts.count; i++) {
    copy(i);
    for (; next < sorted.length && sorted[next]!.after === i; next++) {
      const e = sorted[next]!;
      const to = copy(i);
      result.kind[to] = e.kind;
      result.east[to] = e.value;
      result.noise[to] = e.variance;
      result.levelStep[to] = 0;
      result.windStep[to] = 0;
      result.farStep[to] = 0;
      result.climbStep[to] = 0;
    }
  }
  return result;
}
