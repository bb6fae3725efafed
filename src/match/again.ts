/** Where else an approach was flown: runs of one try are told from another try by what came between them. */
import type { ApproachExercise } from "../brief/brief.ts";
import { inverse } from "../geodesy/index.ts";
import { METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import type { Span } from "../quantity/span.ts";
import type { Feet, NauticalMiles, Share } from "../quantity/units.ts";
import type { Flown, FlownPath } from "./flown.ts";
import type { Run } from "./runs.ts";

/** A run that fits so well beside the one that was taken was a try of its own. Chosen: a go-around some miles out. */
const TRIED: Share = 0.5;
/** A run that came so near to the threshold was a whole approach. Chosen: nobody is told to turn once round or to hold so near. */
const CLOSE_IN: NauticalMiles = 1.5;
/** A run that ends so near to where an exercise begins led to that, as the last way inbound before a hold does. Chosen: a fix on the field lies no farther past a threshold. */
const LED_TO: NauticalMiles = 1;
/** A climb of so much after a run was a go-around. Chosen: more than a level orbit or a lap of a hold wanders. */
const CLIMBED: Feet = 300;

/**
 * Other tries at an approach that fit well and lie in no exercise of the brief (`cores`), in flown order. After one, the
 * aircraft had come close in, or it climbed: a turn once round to lose time, and the laps of a hold on the final, belong
 * to the try that they delay. Scores are of the track alone, not of the way down. Without heights only a try that came close in is told.
 */
export function flownAgain(
  { course }: ApproachExercise,
  path: FlownPath,
  { flown }: Flown,
  runs: readonly Run[],
  cores: readonly Span[],
  taken: Run,
): Span[] {
  const own = runs.find(({ core }) => core === taken.core) ?? taken;
  const closeIn = ({ core }: Run) => {
    const place = { latitude: path.latitude[core.end - 1]!, longitude: path.longitude[core.end - 1]! };
    return inverse(place, course.origin).distance <= CLOSE_IN * METRES_PER_NAUTICAL_MILE;
  };
  const tries: Run[][] = [];
  for (const run of runs.filter(({ score }) => score >= TRIED * own.score)) {
    const last = tries.at(-1)?.at(-1);
    if (last && !closeIn(last) && !climbed(path, last.core.end - 1, run.core.start)) tries.at(-1)!.push(run);
    else tries.push([run]);
  }
  const before = ({ core }: Run, row: number) =>
    core.end <= row && flown[Math.min(row, flown.length - 1)]! - flown[core.end - 1]! > LED_TO;
  const apart = (run: Run) => cores.every(({ start, end }) => before(run, start) || run.core.start >= end);
  return tries.flatMap((one) => {
    if (!one.every(apart)) return [];
    return one.reduce((a, b) => (b.score > a.score ? b : a)).core;
  });
}

function climbed({ altitude }: FlownPath, from: number, to: number): boolean {
  if (!altitude) return false;
  let lowest = Number.POSITIVE_INFINITY;
  for (let i = from; i <= to; i++) {
    if (altitude[i]! < lowest) lowest = altitude[i]!;
    if (altitude[i]! - lowest >= CLIMBED) return true;
  }
  return false;
}
