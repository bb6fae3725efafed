/** The leg times that a reader is told, against the truth: of a hold in a brief, and of the same hold found without one. */
import type { HoldExercise } from "../../src/brief/brief.ts";
import { courseThrough } from "../../src/geodesy/index.ts";
import { findHolds, holdAgainst, measureHold } from "../../src/hold/index.ts";
import type { Seconds } from "../../src/quantity/units.ts";
import type { TrueHold } from "../../src/simulator/truth.ts";
import { HOLDING } from "../../src/standard/holding.ts";
import { cleanTrack, findLegs, smoothTrack } from "../../src/track/index.ts";
import { estimateWind } from "../../src/wind/index.ts";
import { flySeed } from "./finding-meter.ts";

export interface LegErrors {
  /** As told less as flown. */
  readonly outbound: Seconds[];
  readonly inbound: Seconds[];
}

/** As a brief without times would give it. */
const exerciseOf = (hold: TrueHold): HoldExercise => {
  const fix = { latitude: hold.fix[0], longitude: hold.fix[1] };
  return {
    ...{ kind: "hold", index: 0, title: "Hold", between: null, altitude: null, magnetic: null },
    fix: { ...fix, ident: "TARNO", kind: "waypoint", declination: null, elevation: null },
    course: courseThrough(fix, hold.inboundTrueDeg),
    variation: { degrees: 0, from: "written-true", model: null, dayDegrees: 0 },
    turns: hold.turn,
    leg: { by: "time", seconds: 60 },
  } as HoldExercise;
};

/** The truth has the fix abeam at the whole second after it: half a second late in the mean, ms. */
const HALF_A_SECOND = 500;

/** Errors of a flight's legs; none where the hold was not found with all its laps, which the finder's meter counts. */
function legErrors(name: string, seed: number, briefed: boolean): LegErrors {
  const errors: LegErrors = { outbound: [], inbound: [] };
  const { track, truth } = flySeed(name, seed);
  const hold = truth.truth.holds[0]!;
  const motion = smoothTrack(cleanTrack(track).track)!;
  const legs = findLegs(motion);
  const exercise = briefed ? exerciseOf(hold) : null;
  const found = exercise
    ? holdAgainst(motion, legs, { fix: exercise.fix, inbound: hold.inboundTrueDeg, turns: hold.turn })
    : findHolds(motion, legs).find(
        ({ laps }) =>
          laps.at(-1)!.times.end > Date.parse(hold.t0) && laps[0]!.times.start < Date.parse(hold.t1),
      );
  if (!found) return errors;
  const wind = estimateWind(motion, legs, { airspeed: null, winds: [] });
  const { facts } = measureHold({ exercise, found, motion, wind, standard: HOLDING.us });
  if (facts.laps.filter((lap) => lap.endUtc).length !== hold.laps.length) return errors;
  for (const [i, { outboundUtc, abeamUtc, inboundTurnUtc, inboundS }] of hold.laps.entries()) {
    const { outbound, inbound } = facts.laps[i]!;
    // from abeam the fix or on the outbound heading, whichever is later: ICAO Doc 8168, as quoted in national publications
    const from = Math.max(Date.parse(outboundUtc), abeamUtc ? Date.parse(abeamUtc) - HALF_A_SECOND : 0);
    errors.outbound.push(outbound.seconds - (Date.parse(inboundTurnUtc) - from) / 1000);
    if (inbound) errors.inbound.push(inbound.seconds - inboundS);
  }
  return errors;
}

export function legErrorsOf(name: string, seeds: readonly number[], briefed: boolean): LegErrors {
  const flights = seeds.map((seed) => legErrors(name, seed, briefed));
  return {
    outbound: flights.flatMap(({ outbound }) => outbound),
    inbound: flights.flatMap(({ inbound }) => inbound),
  };
}

/** 95 in 100 are nearer. */
export const within95 = (errors: readonly Seconds[]): Seconds =>
  errors.map(Math.abs).sort((a, b) => a - b)[Math.floor(0.95 * (errors.length - 1))] ?? Number.NaN;
