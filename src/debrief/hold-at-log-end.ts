/** Whether a hold that was not found may have been begun, or ended, where the log was not running: its fix passed shortly before the log ends in flight, or after it begins. */
import type { HoldExercise } from "../brief/brief.ts";
import { measureAround } from "../geodesy/index.ts";
import { nauticalMilesFromMetres } from "../quantity/factor.ts";
import type { Finding } from "../quantity/record.ts";
import type { Span } from "../quantity/span.ts";
import { utcText } from "../quantity/time.ts";
import type { NauticalMiles, Seconds, Share } from "../quantity/units.ts";
import { airborneRows } from "../track/index.ts";
import type { Motion } from "../track/motion.ts";
import { passesOf } from "./fix-passes.ts";

/** Where the brief leaves the legs to the standard: one minute. FAA AIM 5-3-8 j.5. */
const USUAL: Seconds = 60;
/** Both turns of a lap, at rate one. */
const TURNS: Seconds = 120;
/** Legs are flown so much longer and farther than asked. Chosen: by a wind that the leg was not planned for. */
const LONGER: Share = 1.5;

/** Of a lap at a ground speed: how long it takes, and how far from its fix it goes. */
function lapOf({ leg }: HoldExercise, knots: number): { seconds: Seconds; reach: NauticalMiles } {
  const far = leg?.by === "distance" ? leg.distance : null;
  const seconds = far === null ? (leg?.by === "time" ? leg.seconds : USUAL) : (3600 * far) / knots;
  const out = LONGER * seconds;
  // a turn at rate one carries it a fraction of the leg aside
  return { seconds: TURNS + 2 * out, reach: (knots * (out + TURNS / 4)) / 3600 };
}

/** `seen`: what of the brief's other exercises was found before and after this one; that leaves no room for it then, nor does another hold, `held`, then. */
export function holdAtLogEnd(
  exercise: HoldExercise,
  motion: Motion,
  seen: { readonly before: boolean; readonly after: boolean },
  held: readonly Span[],
): Finding | null {
  const { fix, between } = exercise;
  const { time, length } = motion;
  const passes = passesOf(fix, motion).filter(
    (pass) =>
      (!between || (pass.time >= between.start && pass.time <= between.end)) &&
      !held.some(({ start, end }) => pass.row >= start && pass.row <= end),
  );
  const flying = airborneRows(motion);
  const { distance } = measureAround(fix, motion.latitude, motion.longitude);
  const stays = (from: number, to: number, pass: number): boolean => {
    const { seconds, reach } = lapOf(exercise, motion.groundSpeed[pass]!);
    if (time[to]! - time[from]! > seconds * 1000) return false;
    for (let row = from; row <= to; row++) if (nauticalMilesFromMetres(distance[row]!) > reach) return false;
    return true;
  };
  const found = (code: string, at: number, pass: number): Finding => ({
    code,
    facts: { seconds: Math.abs(time[at]! - time[pass]!) / 1000 },
    evidence: { fromUtc: utcText(time[at]!), toUtc: utcText(time[at]!) },
  });
  const [first, last] = [passes[0], passes.at(-1)];
  const end = length - 1;
  if (last && !seen.after && flying[end] === 1 && stays(last.row, end, last.row))
    return found("log-ends-at-fix", end, last.row);
  if (first && !seen.before && flying[0] === 1 && stays(0, first.row, first.row))
    return found("log-begins-at-fix", 0, first.row);
  return null;
}
