/** What else turns twice and comes back: traffic circuits, which climb and land or have corners, and course reversals, which bend on the way out. */
import type { Position } from "../geodesy/position.ts";
import { METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import type { AngleSize, Feet, Knots, NauticalMiles, Share, UtcMillis } from "../quantity/units.ts";
import type { Motion } from "../track/motion.ts";
import type { FoundLap } from "./found.ts";
import type { Ground } from "./ground.ts";
import { nearest } from "./reading.ts";

/** `maybe`: a racetrack that only height or a runway could tell from a circuit, and the log and the hints have neither. */
export type Likeness = "hold" | "maybe" | "other";

/** A circuit climbs and comes down again by at least this in a lap, and ends it near the height where it began. Chosen: half of a usual circuit. */
const CLIMB_AND_DESCENT: Feet = 400;
const COMES_BACK: Share = 0.5;
/** Circuits are flown slower than this. Common practice, no source. */
const CIRCUIT_SPEED: Knots = 160;
/** A circuit passes so near to its runway's threshold. Chosen. */
const OVER_RUNWAY: NauticalMiles = 0.35;
/** In a corner the turning pauses to less than this share of its mean, through the air. Tuned: half circles keep 0.95. */
const CORNER: Share = 0.8;
/** Rate of turn is taken over so many seconds, in the middle part of a turn. */
const RATE_MS = 6000;
const MIDDLE: readonly [Share, Share] = [0.2, 0.8];
/** An outbound leg is flown on one heading: those of course reversals bend by more than this. Tuned: by hand it wanders by up to 12. */
const BEND: AngleSize = 13;

/** What the laps of a racetrack are of. */
export function likenessOf(
  motion: Motion,
  ground: Ground,
  laps: readonly FoundLap[],
  runways: readonly Position[],
): Likeness {
  const most = (test: (lap: FoundLap) => boolean) => 2 * laps.filter(test).length > laps.length;
  if (most((lap) => bendOutbound(ground, lap) > BEND)) return "other";
  if (ground.trueAirspeed > CIRCUIT_SPEED) return "hold";
  if (most((lap) => hasCorners(ground, lap))) return "other";
  const height = heightIn(motion, laps);
  if (height === "climbs-and-descends") return "other";
  const overRunway = runways.some((runway) => most((lap) => passesOver(ground, lap, runway)));
  if (overRunway && height === "unknown") return "other";
  return overRunway || (height === "unknown" && runways.length === 0) ? "maybe" : "hold";
}

/** How far the heading goes to and fro on the outbound leg. */
function bendOutbound(ground: Ground, { times }: FoundLap): AngleSize {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (let t = times.outbound + 4000; t <= times.inboundTurn - 4000; t += 2000) {
    const heading = (ground.headingAt(t - 2000) + ground.headingAt(t) + ground.headingAt(t + 2000)) / 3;
    low = Math.min(low, heading);
    high = Math.max(high, heading);
  }
  return Math.max(0, high - low);
}

const hasCorners = (ground: Ground, { times }: FoundLap): boolean =>
  steadiness(ground, times.start, times.outbound) < CORNER ||
  steadiness(ground, times.inboundTurn, times.inbound) < CORNER;

/** The slowest turning in the middle of a turn over its mean, through the air. */
function steadiness(ground: Ground, start: UtcMillis, end: UtcMillis): Share {
  const mean = Math.abs(ground.headingAt(end) - ground.headingAt(start)) / (end - start);
  const [from, to] = MIDDLE.map((share) => start + share * (end - start)) as [number, number];
  let least = Number.POSITIVE_INFINITY;
  for (let t = from; t <= to; t += 1000) {
    const turned = ground.headingAt(t + RATE_MS / 2) - ground.headingAt(t - RATE_MS / 2);
    least = Math.min(least, Math.abs(turned) / RATE_MS / mean);
  }
  return least;
}

function heightIn(motion: Motion, laps: readonly FoundLap[]): "unknown" | "level" | "climbs-and-descends" {
  const { altitude } = motion;
  let climbing = 0;
  let known = 0;
  for (const lap of laps) {
    const rows = altitude.subarray(lap.outboundTurn.start, lap.inbound.end);
    if (rows.length === 0 || rows.some(Number.isNaN)) continue;
    known++;
    const first = rows[0]!;
    const last = rows[rows.length - 1]!;
    const range = rows.reduce((a, b) => Math.max(a, b)) - rows.reduce((a, b) => Math.min(a, b));
    if (range > CLIMB_AND_DESCENT && Math.abs(last - first) < COMES_BACK * range) climbing++;
  }
  return known === 0 ? "unknown" : 2 * climbing >= known ? "climbs-and-descends" : "level";
}

/** Whether one of the straight legs leads over a place. */
function passesOver(ground: Ground, { times }: FoundLap, at: Position): boolean {
  const place = ground.placeOf(at);
  const near = (from: UtcMillis, to: UtcMillis) =>
    (nearest(ground, place, from, to)?.distance ?? Number.POSITIVE_INFINITY) / METRES_PER_NAUTICAL_MILE <
    OVER_RUNWAY;
  return near(times.outbound, times.inboundTurn) || near(times.inbound, times.end);
}
