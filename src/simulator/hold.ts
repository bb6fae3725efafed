/** A hold as a pilot flies it: the entry by its sector, the outbound leg as planned, the inbound course to the fix. */
import { direction, turnFrom } from "../quantity/angle.ts";
import { METRES_PER_SECOND_PER_KNOT } from "../quantity/factor.ts";
import type { Metres, Seconds, TrueDegrees, TurnDegrees } from "../quantity/units.ts";
import { type Aircraft, neededCorrection, unwrap } from "./aircraft.ts";
import { entryFor, entryPlan } from "./entry.ts";
import { joining, keeping } from "./habits.ts";
import { outboundPlanner } from "./hold-plan.ts";
import type { Racetrack } from "./racetrack.ts";
import type { Random } from "./random.ts";
import type { Entry, HoldStep, Side } from "./script.ts";
import { sightOfHold } from "./sight.ts";
import { offset } from "./step.ts";

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
  readonly rollOutAcross: Metres;
  /** What the true wind of the lap needed, null where nothing closes. */
  readonly solved: Racetrack | null;
}

export interface FlownHold {
  readonly step: HoldStep;
  readonly entry: Entry;
  /** The entry that the heading at the fix asks for. */
  readonly sector: Entry;
  readonly headingAtFix: TrueDegrees;
  /** Of a teardrop or parallel entry. */
  readonly entryParts: readonly {
    readonly part: "turn" | "outbound" | "inbound-turn" | "inbound";
    readonly start: Seconds;
    readonly end: Seconds;
  }[];
  /** First passage of the fix. */
  readonly start: Seconds;
  readonly end: Seconds;
  readonly laps: readonly FlownLap[];
}

/**
 * A turn is flown to within this of its heading, degrees. It is over before that where the wings are all but level nearly
 * there, degrees per second: a heading may wander off again. Chosen.
 */
const ROLLED_OUT = 3;
const NEAR = 8;
const LEVEL = 0.5;
/** Within so many seconds of flight from the course a pilot keeps it, beyond cuts in. */
const FAR_OFF: Seconds = 5;
/** Time of the outbound leg of an entry. Source: FAA AIM 5-3-8 j.3. */
const ENTRY_LEG: Seconds = 60;

/** Yields the heading to aim at, until the laps are flown. */
export function* flyHold(
  step: HoldStep,
  a: Aircraft,
  random: Random,
  done: (hold: FlownHold) => void,
): Generator<TurnDegrees, void> {
  const { fix, inbound, turns } = step;
  const look = sightOfHold(step);
  const planner = outboundPlanner(step, a, random);

  function* turnTo(heading: TrueDegrees, side?: Side) {
    const wanted = unwrap(a.heading, heading, side);
    let rolledOut: Seconds | null = null;
    for (;;) {
      const off = Math.abs(wanted - a.heading);
      if (off < ROLLED_OUT) return rolledOut ?? a.time;
      if (off < NEAR && Math.abs(a.turnRate) < LEVEL) rolledOut ??= a.time;
      yield wanted;
    }
  }
  function* keepHeading(heading: TrueDegrees, until: () => boolean) {
    while (!until()) yield unwrap(a.heading, heading);
  }
  function* toFixDirect() {
    for (let nearest = Number.POSITIVE_INFINITY; ; ) {
      const { distance, azimuthAtStart } = offset(a.position, fix);
      if (distance > nearest && nearest < 1000) return;
      nearest = distance;
      const near = 8 * a.trueAirspeed * METRES_PER_SECOND_PER_KNOT; // 400 m at 100 kt: no turns over the fix
      const wanted =
        distance < near ? direction(a.heading) : azimuthAtStart + neededCorrection(a, azimuthAtStart);
      yield unwrap(a.heading, wanted);
    }
  }
  function* toFixInbound() {
    for (;;) {
      const sight = look(a.position, a.time);
      if (sight.distance <= 0) return;
      const needed = neededCorrection(a, sight.course);
      const speed = a.trueAirspeed * METRES_PER_SECOND_PER_KNOT;
      const m = { sight, speed, needed };
      const far = Math.abs(sight.across) > FAR_OFF * speed;
      yield unwrap(a.heading, far ? joining(m, 30) : keeping(m, 1));
    }
  }

  yield* toFixDirect();
  const start = a.time;
  const headingAtFix = direction(a.heading);
  const sector = entryFor(headingAtFix, inbound, turns);
  const entry = step.entry ?? sector;
  const plan = entryPlan(entry, inbound, turns);
  const entryParts: FlownHold["entryParts"][number][] = [];
  const part = (name: (typeof entryParts)[number]["part"]) =>
    entryParts.push({ part: name, start: entryParts.at(-1)?.end ?? start, end: a.time });
  if (plan) {
    const heading = plan.away + neededCorrection(a, plan.away);
    yield* turnTo(heading);
    part("turn");
    yield* keepHeading(heading, planner.legEnd(ENTRY_LEG));
    part("outbound");
    yield* turnTo(plan.back + neededCorrection(a, plan.back), plan.turnBack);
    part("inbound-turn");
    yield* toFixInbound();
    part("inbound");
  }

  const laps: FlownLap[] = [];
  for (let lap = 0; lap < step.laps; lap++) {
    const lapStart = a.time;
    const solved = planner.solve("true");
    const { heading, seconds, timedFromAbeam } = planner.plan();
    const outboundStart = yield* turnTo(heading, turns);
    if (timedFromAbeam) yield* keepHeading(heading, () => look(a.position, a.time).distance >= 0);
    yield* keepHeading(heading, planner.legEnd(seconds));
    const inboundTurn = a.time;
    const inboundStart = yield* turnTo(inbound + neededCorrection(a, inbound), turns);
    const rollOutAcross = look(a.position, a.time).across;
    yield* toFixInbound();
    planner.learn(a.time - inboundStart);
    laps.push({
      start: lapStart,
      outboundStart,
      inboundTurn,
      inboundStart,
      end: a.time,
      outboundHeading: heading,
      rollOutAcross,
      solved,
    });
  }
  done({ step, entry, sector, headingAtFix, entryParts, start, end: a.time, laps });
}

/** Outbound correction over the inbound correction that the wind needed: the factor flown. Null in next to no crosswind. */
export function factorFlown(lap: FlownLap, inbound: TrueDegrees): number | null {
  const needed = lap.solved?.inboundCorrection ?? 0;
  return Math.abs(needed) < 1 ? null : -turnFrom(inbound + 180, lap.outboundHeading) / needed;
}
