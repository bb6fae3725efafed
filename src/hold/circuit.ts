/** What else turns twice and comes back: traffic circuits, which climb and land or have corners, and course reversals, which bend on the way out. */
import type { Position } from "../geodesy/position.ts";
import { METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import type { AngleSize, Feet, Knots, NauticalMiles, Share, UtcMillis } from "../quantity/units.ts";
import type { Motion } from "../track/motion.ts";
import { bendIn } from "./arms.ts";
import type { FoundLap } from "./found.ts";
import type { Ground } from "./ground.ts";
import { nearest } from "./near-fix.ts";

/** `maybe`: a racetrack that only height or a runway could tell from a circuit, and the log and the hints have neither. */
export type Likeness = "hold" | "maybe" | "other";

/** A circuit climbs and comes down again by at least this in a lap, and ends it near the height where it began. Chosen: half of a usual circuit. */
const CLIMB_AND_DESCENT: Feet = 400;
const COMES_BACK: Share = 0.5;
/** Circuits are flown slower than this. Common practice, no source. */
const CIRCUIT_SPEED: Knots = 160;
/** A circuit passes so near to its runway's threshold. Chosen. */
const OVER_RUNWAY: NauticalMiles = 0.35;
/** Turns with corners pause in the middle by more than this. Tuned: half circles by 0.3 at most, in simulation, seeds 1 to 600; with room for pilots who turn less evenly. */
const PAUSE: AngleSize = 1.5;
/** ... and so small a pause is already more than holds have (0.32 at most, in simulation, seeds 1 to 300; none of 700 more had so much): maybe two corners that all but join. */
const MAYBE_PAUSE: AngleSize = 0.6;
/** The turning proper is between these shares of a turn of about half a circle, degrees, that began and ended within so many ms. Chosen. */
const TURNING: readonly [Share, Share] = [0.12, 0.88];
const HALF_TURN: AngleSize = 110;
const ROUND_TURN_MS = 3000;
const STEP_MS = 500;
/** An outbound leg is flown on one heading: those of course reversals bend by more than this. Tuned: by hand it wanders by up to 12. */
const BEND: AngleSize = 13;
/** ... once a turn that was rolled out of late has been taken back, which is over so soon: the heading goes back by more than so much in two seconds. Chosen: 20 degrees too far, taken back at rate half to one. */
const TAKEN_BACK_MS = 20_000;
const GOES_BACK: AngleSize = 0.7;

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
  const pause = pauseInTurns(ground, laps);
  if (pause > PAUSE) return "other";
  const height = heightIn(motion, laps);
  if (height === "climbs-and-descends") return "other";
  const overRunway = runways.some((runway) => most((lap) => passesOver(ground, lap, runway)));
  if (overRunway && height === "unknown") return "other";
  const unplaced = height === "unknown" && runways.length === 0;
  return overRunway || unplaced || pause > MAYBE_PAUSE ? "maybe" : "hold";
}

const bendOutbound = (ground: Ground, { times }: FoundLap): AngleSize =>
  bendIn(ground, settledAt(ground, times), times.inboundTurn);

/** When the heading for the outbound leg was reached, or come back to from a turn that went past it. */
function settledAt(ground: Ground, { start, outbound, inboundTurn }: FoundLap["times"]): UtcMillis {
  const side = Math.sign(ground.headingAt(outbound) - ground.headingAt(start));
  const turned = (t: UtcMillis) => side * ground.headingAt(t);
  const until = Math.min(outbound + TAKEN_BACK_MS, inboundTurn);
  let farthest = outbound;
  for (let t = outbound; t <= until; t += STEP_MS) if (turned(t) > turned(farthest)) farthest = t;
  let settled = farthest;
  while (settled < until && turned(settled) - turned(settled + 2000) > GOES_BACK) settled += STEP_MS;
  return settled > farthest ? settled : outbound;
}

/** Mean over the half turns of a hold of how far the heading pauses in the middle of them, degrees. */
function pauseInTurns(ground: Ground, laps: readonly FoundLap[]): AngleSize {
  const pauses = laps.flatMap(({ times }) => [
    ...pauseIn(ground, times.start, times.outbound),
    ...pauseIn(ground, times.inboundTurn, times.inbound),
  ]);
  return pauses.reduce((sum, p) => sum + p / pauses.length, 0);
}

/**
 * How far the heading of a half turn goes fast, slow, fast instead of steadily, through the air: its share of the third
 * Legendre polynomial in time, whose ends are 1. At rate one a pause of 4 s makes 5 degrees. None where it is no half turn.
 */
function pauseIn(ground: Ground, start: UtcMillis, end: UtcMillis): AngleSize[] {
  const before = ground.headingAt(start - ROUND_TURN_MS);
  const turn = ground.headingAt(end + ROUND_TURN_MS) - before;
  if (Math.abs(turn) < HALF_TURN) return [];
  const share = (t: UtcMillis) => (ground.headingAt(t) - before) / turn;
  let [from, to] = [start, end];
  while (from < end && share(from) < TURNING[0]) from += STEP_MS;
  while (to > from && share(to) > TURNING[1]) to -= STEP_MS;
  const n = Math.floor((to - from) / STEP_MS);
  let [sum, weights] = [0, 0];
  for (let i = 0; i <= n; i++) {
    const x = n > 0 ? (2 * i) / n - 1 : 0;
    const third = (5 * x ** 3 - 3 * x) / 2;
    const straight = before + turn * (TURNING[0] + ((TURNING[1] - TURNING[0]) * i) / Math.max(1, n));
    sum += third * Math.sign(turn) * (ground.headingAt(from + i * STEP_MS) - straight);
    weights += third * third;
  }
  return [sum / weights];
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
