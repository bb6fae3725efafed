/** What else turns twice and comes back: traffic circuits, which climb and land or have corners, and course reversals, which bend on the way out. */
import type { Position } from "../geodesy/position.ts";
import { METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import type { AngleSize, Feet, Knots, NauticalMiles, Share, UtcMillis } from "../quantity/units.ts";
import type { Motion } from "../track/motion.ts";
import type { FoundLap } from "./found.ts";
import type { Ground } from "./ground.ts";
import { bendIn, nearest } from "./reading.ts";

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
/** Rate of turn is taken over so many ms, in the middle part of a turn of about half a circle, degrees. Chosen. */
const RATE_MS = 6000;
const MIDDLE: readonly [Share, Share] = [0.3, 0.7];
const HALF_TURN: AngleSize = 120;
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

const bendOutbound = (ground: Ground, { times }: FoundLap): AngleSize =>
  bendIn(ground, times.outbound, times.inboundTurn);

const hasCorners = (ground: Ground, { times }: FoundLap): boolean =>
  steadiness(ground, times.start, times.outbound) < CORNER ||
  steadiness(ground, times.inboundTurn, times.inbound) < CORNER;

/** The slowest turning in the middle of a half turn over its mean, through the air; 1 where it is no half turn. */
function steadiness(ground: Ground, start: UtcMillis, end: UtcMillis): Share {
  const before = ground.headingAt(start);
  const turn = ground.headingAt(end) - before;
  if (Math.abs(turn) < HALF_TURN) return 1;
  const mean = Math.abs(turn) / (end - start);
  let least = mean;
  for (let t = start; t <= end; t += 1000) {
    const share = (ground.headingAt(t) - before) / turn;
    if (share < MIDDLE[0] || share > MIDDLE[1]) continue;
    const turned = ground.headingAt(t + RATE_MS / 2) - ground.headingAt(t - RATE_MS / 2);
    least = Math.min(least, Math.abs(turned) / RATE_MS);
  }
  return least / mean;
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
