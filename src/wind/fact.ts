/** The wind over a span of the flight, and of the day, as facts. */

import type { Span } from "../quantity/span.ts";
import type { Knots } from "../quantity/units.ts";
import type { Motion } from "../track/motion.ts";
import { ellipse95, HALF_WIDTH_95, varianceAlong } from "./ellipse.ts";
import { FULL_LIMIT, knowledgeOf } from "./knowledge.ts";
import { windOfAir } from "./triangle.ts";
import type { RestsOn, WindAlongFlight, WindEllipse, WindEstimate, WindFact } from "./wind.ts";

/** A span has a mean track only where its ground velocities agree: length of their mean over mean length. */
const ONE_TRACK = 0.8;
/** The wind of the day is that within this height, ft, of where it is known best. */
const DAY_HEIGHT = 1500;

/** Mean of the columns of the estimate over some rows. */
interface Means {
  readonly rows: number;
  readonly east: number;
  readonly north: number;
  readonly varianceEast: number;
  readonly varianceNorth: number;
  readonly covariance: number;
  readonly airspeed: number;
  readonly airspeedVariance: number;
}

/**
 * Mean wind over the rows of a span. Errors of neighbouring rows are nearly the same, so the doubt of the mean is the
 * mean of the doubts: never too small. On the ground, and where nothing is known, knowledge is `none`.
 */
export function windOver(estimate: WindEstimate, motion: Motion, span: Span): WindFact {
  if (!(span.start >= 0 && span.end <= motion.length))
    throw new RangeError(`invalid span: ${span.start} to ${span.end}`);
  const { alongFlight } = estimate;
  const means = meansOver(alongFlight, span, () => 1);
  let trackEast = 0;
  let trackNorth = 0;
  let speed = 0;
  for (let k = span.start; k < span.end; k++) {
    trackEast += motion.velocityEast[k]!;
    trackNorth += motion.velocityNorth[k]!;
    speed += motion.groundSpeed[k]!;
  }
  const size = Math.hypot(trackEast, trackNorth);
  const oneTrack = size > 0 && size >= ONE_TRACK * speed;
  return factOf(
    means,
    oneTrack ? [trackEast / size, trackNorth / size] : null,
    mostCommon(alongFlight.restsOn, span),
    alongFlight.saidLimit,
  );
}

/** The mean wind where the flight knew it best, weighted by that knowledge. */
export function dayWind(alongFlight: WindAlongFlight, motion: Motion): WindEstimate["day"] {
  let best = -1;
  let least = Infinity;
  const doubt = (k: number) => alongFlight.varianceEast[k]! + alongFlight.varianceNorth[k]!;
  for (let k = 0; k < motion.length; k++) {
    if (doubt(k) < least) {
      least = doubt(k);
      best = k;
    }
  }
  const all = { start: 0, end: motion.length };
  const near = (k: number) => !(Math.abs(motion.altitude[k]! - motion.altitude[best]!) > DAY_HEIGHT);
  const weight = (k: number) => (best >= 0 && near(k) && doubt(k) < 4 * least ? 1 / doubt(k) ** 2 : 0);
  const fact = factOf(
    meansOver(alongFlight, all, weight),
    null,
    best >= 0 ? alongFlight.restsOn[best]! : "nothing",
    alongFlight.saidLimit,
  );
  let sum = 0;
  let weights = 0;
  for (let k = 0; k < motion.length; k++) {
    const w = weight(k);
    if (w > 0 && !Number.isNaN(motion.altitude[k]!)) {
      sum += w * motion.altitude[k]!;
      weights += w;
    }
  }
  return { ...fact, altitude: fact.knowledge === "none" || weights === 0 ? null : sum / weights };
}

export function meansOver(a: WindAlongFlight, span: Span, weight: (k: number) => number): Means {
  let [rows, east, north, varianceEast, varianceNorth, covariance, airspeed, airspeedVariance] = [
    0, 0, 0, 0, 0, 0, 0, 0,
  ];
  for (let k = span.start; k < span.end; k++) {
    const w = Number.isNaN(a.airEast[k]!) ? 0 : weight(k);
    if (!(w > 0)) continue;
    rows += w;
    east += w * a.airEast[k]!;
    north += w * a.airNorth[k]!;
    varianceEast += w * a.varianceEast[k]!;
    varianceNorth += w * a.varianceNorth[k]!;
    covariance += w * a.covariance[k]!;
    airspeed += w * a.trueAirspeed[k]!;
    airspeedVariance += w * a.trueAirspeedSd[k]! ** 2;
  }
  return {
    rows,
    east: east / rows,
    north: north / rows,
    varianceEast: varianceEast / rows,
    varianceNorth: varianceNorth / rows,
    covariance: covariance / rows,
    airspeed: airspeed / rows,
    airspeedVariance: airspeedVariance / rows,
  };
}

/** Wider than any wind: what stands for a doubt without bounds, kt. */
const UNBOUNDED: WindEllipse = { major: 500, minor: 500, majorAxis: 0 };

/** `saidLimit`: as of the estimate. */
export function factOf(
  m: Means,
  track: readonly [number, number] | null,
  rest: RestsOn,
  saidLimit: Knots,
): WindFact {
  const [te, tn] = track ?? [0, 0];
  const limit = rest === "prior" || rest === "measured" ? saidLimit : FULL_LIMIT;
  const knowledge =
    m.rows > 0 ? knowledgeOf(m.varianceEast, m.varianceNorth, m.covariance, te, tn, limit) : "none";
  if (knowledge === "none") {
    return {
      knowledge,
      from: null,
      speed: null,
      along: null,
      across: null,
      along95: null,
      across95: null,
      ellipse95: m.rows > 0 ? ellipse95(m.varianceEast, m.varianceNorth, m.covariance) : UNBOUNDED,
      trueAirspeed: null,
      trueAirspeed95: null,
      restsOn: "nothing",
    };
  }
  const wind = windOfAir(m.east, m.north);
  const full = knowledge === "full";
  const half = (east: number, north: number) =>
    HALF_WIDTH_95 * Math.sqrt(varianceAlong(m.varianceEast, m.varianceNorth, m.covariance, east, north));
  return {
    knowledge,
    from: full ? wind.from : null,
    speed: full ? wind.speed : null,
    along: track ? m.east * te + m.north * tn : null,
    across: track && full ? m.east * tn - m.north * te : null,
    along95: track ? half(te, tn) : null,
    across95: track && full ? half(tn, -te) : null,
    ellipse95: ellipse95(m.varianceEast, m.varianceNorth, m.covariance),
    trueAirspeed: m.airspeed,
    trueAirspeed95: HALF_WIDTH_95 * Math.sqrt(m.airspeedVariance),
    restsOn: rest === "nothing" ? "courses" : rest,
  };
}

/** The same wind where only its part along the track may be said. */
export function knownAlongOnly(fact: WindFact): WindFact {
  if (fact.knowledge !== "full") return fact;
  const whole = { from: null, speed: null, across: null, across95: null };
  if (fact.along !== null) return { ...fact, ...whole, knowledge: "along" };
  const nothing = { along95: null, trueAirspeed: null, trueAirspeed95: null, restsOn: "nothing" } as const;
  return { ...fact, ...whole, ...nothing, knowledge: "none" };
}

/** What most rows rest on, of those that rest on something. */
function mostCommon(rest: readonly RestsOn[], span: Span): RestsOn {
  const counts = new Map<RestsOn, number>();
  for (let k = span.start; k < span.end; k++) counts.set(rest[k]!, (counts.get(rest[k]!) ?? 0) + 1);
  counts.delete("nothing");
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0] ?? "nothing";
}
