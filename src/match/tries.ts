/** The tries at one approach: which runs belong to one of them, and which try is the one that a single exercise means. */
import type { ApproachExercise } from "../brief/brief.ts";
import { courseRuler, inverse } from "../geodesy/index.ts";
import { METRES_PER_NAUTICAL_MILE, nauticalMilesFromMetres } from "../quantity/factor.ts";
import type { Feet, NauticalMiles, Share } from "../quantity/units.ts";
import type { FlownPath } from "./flown.ts";
import type { Run } from "./runs.ts";

/** A run that fits so well beside the best was a try of its own. Chosen: a go-around some miles out. */
const TRIED: Share = 0.5;
/** A run that came so near to the threshold was a whole approach. Chosen: nobody is told to turn once round or to hold so near. */
const CLOSE_IN: NauticalMiles = 1.5;
/** A climb of so much after a run was a go-around. Chosen: more than a level orbit or a lap of a hold wanders. */
const CLIMBED: Feet = 300;
/** Where no fix says where the final begins, a whole one is flown from so far. PANS-OPS: no final is shorter, from memory. */
const FINAL_LEAST: NauticalMiles = 3;
/** A final whose way down fits less well than this beside the best was another procedure, not the same flown with faults. Chosen: 240 ft off a minimum. */
const OTHER_WAY_DOWN: Share = 0.15;
/** By so much a later try is preferred: nothing that two scores would tell apart. */
const LATER = 1e-3;

type Approach = Pick<ApproachExercise, "course">;

const placeOf = ({ latitude, longitude }: FlownPath, row: number) => ({
  latitude: latitude[row]!,
  longitude: longitude[row]!,
});

const cameClose = ({ course }: Approach, path: FlownPath, { core }: Run): boolean =>
  inverse(placeOf(path, core.end - 1), course.origin).distance <= CLOSE_IN * METRES_PER_NAUTICAL_MILE;

/**
 * Runs that fit at least half as well as the best of them, as tries in flown order. After one the aircraft had come close in, or it
 * climbed: a turn once round to lose time, and the laps of a hold on the final, belong to the try that they delay.
 * Without heights only a try that came close in is told from the next.
 */
export function triesOf(approach: Approach, path: FlownPath, runs: readonly Run[]): Run[][] {
  const best = Math.max(0, ...runs.map(({ score }) => score));
  const tries: Run[][] = [];
  for (const run of runs.filter(({ score }) => score >= TRIED * best)) {
    const last = tries.at(-1)?.at(-1);
    if (last && !cameClose(approach, path, last) && !climbed(path, last.core.end - 1, run.core.start))
      tries.at(-1)!.push(run);
    else tries.push([run]);
  }
  return tries;
}

/** Whether a try was flown from the final fix to close in. */
function isWhole({ course, finalFix }: ApproachExercise, path: FlownPath, one: readonly Run[]): boolean {
  const ruler = courseRuler(course);
  const before = ({ latitude, longitude }: { latitude: number; longitude: number }): NauticalMiles => {
    ruler.measure(latitude, longitude);
    return -nauticalMilesFromMetres(ruler.along);
  };
  const from = finalFix ? before(finalFix) : FINAL_LEAST;
  return before(placeOf(path, one[0]!.core.start)) >= from && cameClose({ course }, path, one.at(-1)!);
}

/** Whether a run belongs to the last try that was flown whole. */
export function isLastWhole(
  exercise: ApproachExercise,
  path: FlownPath,
  runs: readonly Run[],
  { core }: Run,
): boolean {
  const last = triesOf(exercise, path, runs).findLast((one) => isWhole(exercise, path, one));
  return last?.some((run) => run.core === core) ?? false;
}

/**
 * The weighed runs, of tries at the same procedure the last whole one first: faults do not choose between them. Whole is
 * from the final fix to close in; of the same procedure, where its way down does not fit far worse. `runs`: as weighed,
 * by the track alone.
 */
export function lastTryFirst(
  exercise: ApproachExercise,
  path: FlownPath,
  runs: readonly Run[],
  weighed: readonly Run[],
): Run[] {
  const raised = new Map(runs.map(({ core }, i) => [core, weighed[i]!] as const));
  let highest = 0;
  for (const one of triesOf(exercise, path, runs)) {
    const chosen = one.reduce((a, b) => (raised.get(b.core)!.score > raised.get(a.core)!.score ? b : a));
    const { score } = raised.get(chosen.core)!;
    if (!isWhole(exercise, path, one) || score < OTHER_WAY_DOWN * chosen.score) continue;
    raised.set(chosen.core, { ...chosen, score: Math.max(score, highest > 0 ? highest + LATER : 0) });
    highest = raised.get(chosen.core)!.score;
  }
  return runs.map(({ core }) => raised.get(core)!);
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
