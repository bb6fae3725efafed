/** A hold as a pilot flies it: the entry by its sector, the outbound leg as planned in the wind believed, the inbound course. */
import { direction, turnFrom } from "../quantity/angle.ts";
import { METRES_PER_SECOND_PER_KNOT } from "../quantity/factor.ts";
import type { NauticalMiles, Seconds, TrueDegrees, TurnDegrees } from "../quantity/units.ts";
import { type Aircraft, neededCorrection, unwrap } from "./aircraft.ts";
import { joining, keeping } from "./habits.ts";
import { type Racetrack, solveRacetrack } from "./racetrack.ts";
import type { Random } from "./random.ts";
import type { HoldStep, Side } from "./script.ts";
import { sightOf } from "./sight.ts";
import { offset } from "./step.ts";

export type Entry = "direct" | "teardrop" | "parallel";

/** What a lap truly was; times from the start of the flight. */
export interface FlownLap {
  /** Over the fix: the turn to the outbound leg begins. */
  readonly start: Seconds;
  readonly outboundStart: Seconds;
  readonly inboundTurn: Seconds;
  readonly inboundStart: Seconds;
  readonly end: Seconds;
  readonly outboundHeading: TrueDegrees;
  /** At the end of the inbound turn, right of the inbound course positive. */
  readonly rollOutAcross: NauticalMiles;
  /** What the true wind of the lap needed, null where nothing closes. */
  readonly solved: Racetrack | null;
}

export interface FlownHold {
  readonly step: HoldStep;
  readonly entry: Entry;
  /** First passage of the fix. */
  readonly start: Seconds;
  readonly end: Seconds;
  readonly laps: readonly FlownLap[];
}

const other = (side: Side): Side => (side === "right" ? "left" : "right");
const ROLLED_OUT = 3;

/**
 * The entry for a heading at the fix, from the inbound course.
 * Source: FAA AIM 5-3-8 j.7, FIG 5-3-4: the 70 degree line; sectors 110, 70 and 180 degrees wide (widths from memory).
 */
export function entryFor(heading: TrueDegrees, inbound: TrueDegrees, turns: Side): Entry {
  const off = direction(turns === "right" ? heading - inbound : inbound - heading);
  return off >= 110 && off < 180 ? "teardrop" : off >= 180 && off < 290 ? "parallel" : "direct";
}

/** Yields the heading to aim at, until the laps are flown. */
export function* flyHold(
  step: HoldStep,
  a: Aircraft,
  random: Random,
  done: (hold: FlownHold) => void,
): Generator<TurnDegrees, void> {
  const { fix, inbound, turns, skill } = step;
  const right = turns === "right" ? 1 : -1;
  const look = sightOf({ form: "to", fix, course: inbound, scale: "rnav-1" });
  const wrongEast = skill.windWrong * random.normal();
  const wrongNorth = skill.windWrong * random.normal();

  function* turnTo(heading: TrueDegrees, side?: Side) {
    const wanted = unwrap(a.heading, heading, side);
    while (Math.abs(wanted - a.heading) > ROLLED_OUT) yield wanted;
  }
  function* keepHeading(heading: TrueDegrees, until: Seconds) {
    while (a.time < until) yield unwrap(a.heading, heading);
  }
  function* toFixDirect() {
    for (let nearest = Number.POSITIVE_INFINITY; ; ) {
      const { distance, azimuthAtStart } = offset(a.position, fix);
      if (distance > nearest && nearest < 1000) return;
      nearest = distance;
      const wanted =
        distance < 400 ? direction(a.heading) : azimuthAtStart + neededCorrection(a, azimuthAtStart);
      yield unwrap(a.heading, wanted);
    }
  }
  function* toFixInbound() {
    for (;;) {
      const sight = look(a.position, a.time);
      if (sight.distance <= 0) return;
      const needed = neededCorrection(a, sight.course);
      const m = { sight, speed: a.trueAirspeed * METRES_PER_SECOND_PER_KNOT, needed };
      const far = Math.abs(sight.across) > 250; // metres: a pilot cuts in, then keeps
      yield unwrap(a.heading, far ? joining(m, 30) : keeping(m, 1));
    }
  }
  /** The racetrack that closes in a wind so wrong. */
  const solve = (wrong: 0 | 1) =>
    solveRacetrack({
      inbound,
      trueAirspeed: a.trueAirspeed,
      airEast: a.air.steadyEast + wrong * wrongEast,
      airNorth: a.air.steadyNorth + wrong * wrongNorth,
      turnRate: 3,
      inboundSeconds: step.legSeconds,
    });
  const outbound = direction(inbound + 180);

  yield* toFixDirect();
  const start = a.time;
  const entry = entryFor(direction(a.heading), inbound, turns);
  if (entry !== "direct") {
    const away = entry === "parallel" ? outbound : outbound - right * 30;
    const heading = away + neededCorrection(a, away);
    yield* turnTo(heading, entry === "parallel" ? other(turns) : undefined);
    yield* keepHeading(heading, a.time + 60);
    if (entry === "parallel") yield* turnTo(inbound - right * 30, other(turns));
    else yield* turnTo(inbound + neededCorrection(a, inbound), turns);
    yield* toFixInbound();
  }

  const laps: FlownLap[] = [];
  let seconds = step.legSeconds;
  for (let lap = 0; lap < step.laps; lap++) {
    const lapStart = a.time;
    const solved = solve(0);
    const believed = solve(1);
    const byRule = skill.factor === "solved" ? null : skill.factor * (believed?.inboundCorrection ?? 0);
    const plan =
      byRule === null && believed
        ? { heading: believed.outboundHeading, seconds: believed.outboundSeconds }
        : { heading: direction(outbound - Math.max(-60, Math.min(60, byRule ?? 0))), seconds };
    yield* turnTo(plan.heading, turns);
    const outboundStart = a.time;
    if (byRule !== null) while (look(a.position, a.time).distance < 0) yield unwrap(a.heading, plan.heading);
    yield* keepHeading(
      plan.heading,
      a.time + Math.max(10, plan.seconds + skill.timingWrong * random.normal()),
    );
    const inboundTurn = a.time;
    yield* turnTo(inbound + neededCorrection(a, inbound), turns);
    const inboundStart = a.time;
    const rollOutAcross = look(a.position, a.time).across / 1852;
    yield* toFixInbound();
    const change = step.legSeconds - (a.time - inboundStart);
    seconds = Math.max(20, seconds + Math.max(-20, Math.min(20, change)));
    laps.push({
      start: lapStart,
      outboundStart,
      inboundTurn,
      inboundStart,
      end: a.time,
      outboundHeading: plan.heading,
      rollOutAcross,
      solved,
    });
  }
  done({ step, entry, start, end: a.time, laps });
}

/** Outbound correction over the inbound correction that the wind needed: the factor flown. Null in next to no crosswind. */
export function factorFlown(lap: FlownLap, inbound: TrueDegrees): number | null {
  const needed = lap.solved?.inboundCorrection ?? 0;
  return Math.abs(needed) < 1 ? null : -turnFrom(inbound + 180, lap.outboundHeading) / needed;
}
