/** How a pilot plans the outbound leg of a hold, from the wind believed and the lap before. */
import { direction } from "../quantity/angle.ts";
import { METRES_PER_FOOT, METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import type { NauticalMiles, Seconds, TrueDegrees } from "../quantity/units.ts";
import type { Aircraft } from "./aircraft.ts";
import { type Racetrack, solveRacetrack, solveRacetrackTo } from "./racetrack.ts";
import type { Random } from "./random.ts";
import type { HoldStep } from "./script.ts";
import { sightOfHold } from "./sight.ts";
import { offset } from "./step.ts";

export interface OutboundPlan {
  readonly heading: TrueDegrees;
  readonly seconds: Seconds;
  /** Timed from abeam the fix, where that comes after the turn. */
  readonly timedFromAbeam: boolean;
}

export interface OutboundPlanner {
  /** The racetrack that closes in the wind as it is, or as the pilot believes it to be. */
  solve(wind: "true" | "believed"): Racetrack | null;
  /** The next outbound leg. */
  plan(): OutboundPlan;
  /** From now on: whether a leg that takes so many seconds, or ends at the distance of the hold, is over. */
  legEnd(seconds: Seconds): () => boolean;
  /** The inbound leg took so long: the next outbound one is timed accordingly. */
  learn(inboundSeconds: Seconds): void;
}

/** No outbound leg is shorter; and one by distance that leads nowhere is given up, seconds. Chosen. */
const SHORTEST: Seconds = 10;
const GIVEN_UP: Seconds = 400;
/** A pilot by rule corrects by no more, degrees. Chosen. */
const MOST_CORRECTION = 60;
/** Change of the outbound time from lap to lap, and its least, seconds. Chosen. */
const MOST_CHANGE: Seconds = 20;
const LEAST_TIMED: Seconds = 20;

export function outboundPlanner(step: HoldStep, a: Aircraft, random: Random): OutboundPlanner {
  const { fix, inbound, turns, leg, skill } = step;
  const look = sightOfHold(step);
  const wrongEast = skill.windWrong * random.normal();
  const wrongNorth = skill.windWrong * random.normal();
  const outbound = direction(inbound + 180);
  let timed = "seconds" in leg ? leg.seconds : 60;

  const solve: OutboundPlanner["solve"] = (wind) => {
    const wrong = wind === "true" ? 0 : 1;
    const input = {
      inbound,
      trueAirspeed: a.trueAirspeed,
      airEast: a.air.steadyEast + wrong * wrongEast,
      airNorth: a.air.steadyNorth + wrong * wrongNorth,
      turnRate: a.turnRateWanted,
    };
    return "seconds" in leg
      ? solveRacetrack({ ...input, inboundSeconds: leg.seconds })
      : solveRacetrackTo(leg.distance, turns, input);
  };

  /** Miles from the fix as the pilot reads them. */
  const reading = (by: "along-track" | "slant-range"): NauticalMiles =>
    by === "along-track"
      ? look(a.position, a.time).distance
      : Math.hypot(offset(fix, a.position).distance, a.altitude * METRES_PER_FOOT) / METRES_PER_NAUTICAL_MILE;

  return {
    solve,
    plan() {
      const believed = solve("believed");
      if (skill.factor === "solved" && believed)
        return {
          heading: believed.outboundHeading,
          seconds: believed.outboundSeconds,
          timedFromAbeam: false,
        };
      const factor = skill.factor === "solved" ? 0 : skill.factor; // nothing closes: no correction is known
      const correction = factor * (believed?.inboundCorrection ?? 0);
      const held = Math.max(-MOST_CORRECTION, Math.min(MOST_CORRECTION, correction));
      return {
        heading: direction(outbound - held),
        seconds: timed,
        timedFromAbeam: skill.factor !== "solved" && "seconds" in leg,
      };
    },
    legEnd(seconds) {
      const wrong = skill.timingWrong * random.normal();
      const latest = a.time + GIVEN_UP;
      if ("seconds" in leg) {
        const end = a.time + Math.max(SHORTEST, seconds + wrong);
        return () => a.time >= end;
      }
      const end = leg.distance + (wrong * a.trueAirspeed) / 3600;
      return () => reading(leg.by) >= end || a.time >= latest;
    },
    learn(inboundSeconds) {
      if (!("seconds" in leg)) return;
      const change = Math.max(-MOST_CHANGE, Math.min(MOST_CHANGE, leg.seconds - inboundSeconds));
      timed = Math.max(LEAST_TIMED, timed + change);
    },
  };
}
