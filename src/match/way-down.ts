/** How well the way down of a run fits an approach: its glide path, its step-downs and its minimum, beside other runs of it. */
import type { ApproachExercise } from "../brief/brief.ts";
import { courseRuler } from "../geodesy/index.ts";
import { gradientOf } from "../quantity/descent.ts";
import { nauticalMilesFromMetres } from "../quantity/factor.ts";
import type { Feet, NauticalMiles, Share } from "../quantity/units.ts";
import type { FlownPath } from "./flown.ts";
import type { Run } from "./runs.ts";
import { half } from "./score.ts";

/** Off a height by this counts half. Chosen: what a GPS height is off an altimeter's, less than a step between level-offs. */
const HALF_FT: Feet = 100;
/** The path is looked at over the last miles of a final (PANS-OPS: optimally 5 NM, from memory), down to half a mile. */
const PATH: { readonly from: NauticalMiles; readonly to: NauticalMiles } = { from: 5, to: 0.5 };
/** So near to the runway a landing was flown, and a minimum was left by right. Chosen: half of the lowest decision height. */
const LANDED: Feet = 100;

/**
 * The runs with their scores weighed by the way down, the best of them as it was: heights choose between runs, and
 * say nothing where there is one. Without heights nothing changes.
 */
export function weighedByHeight(exercise: ApproachExercise, path: FlownPath, runs: readonly Run[]): Run[] {
  const fits = runs.map((run) => fitOf(exercise, path, run));
  const best = Math.max(...fits);
  return runs.map((run, i) => ({ ...run, score: run.score * (best > 0 ? fits[i]! / best : 1) }));
}

function fitOf(
  { course, runway, glidePath, minimum, stepDowns }: ApproachExercise,
  { latitude, longitude, altitude }: FlownPath,
  { core }: Run,
): Share {
  if (!altitude) return 1;
  const ruler = courseRuler(course);
  let [sum, rows, lowest, below] = [0, 0, Number.POSITIVE_INFINITY, 0];
  for (let i = core.start; i < core.end; i++) {
    ruler.measure(latitude[i]!, longitude[i]!);
    const before = -nauticalMilesFromMetres(ruler.along);
    const height = altitude[i]!;
    if (!(before > 0) || Number.isNaN(height)) continue;
    lowest = Math.min(lowest, height);
    // the earth's curve lifts a path by 20 ft at 5 NM, which does not choose
    if (glidePath && before <= PATH.from && before >= PATH.to) {
      const path = runway.elevation + glidePath.crossing + gradientOf(glidePath.angle) * before;
      sum += half(height - path, HALF_FT);
      rows++;
    }
    // the farthest first: the limit here is that of the next one ahead
    const next = stepDowns.find(({ distance }) => distance < before);
    if (next) below = Math.max(below, next.altitude - height);
  }
  const parts = [
    ...(rows > 0 ? [sum / rows] : []),
    half(below, HALF_FT),
    ...(minimum && lowest - runway.elevation > LANDED ? [half(lowest - minimum.altitude, HALF_FT)] : []),
  ];
  return parts.reduce((product, part) => (Number.isFinite(part) ? product * part : product), 1);
}
