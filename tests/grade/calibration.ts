/** How often verdicts are wrong, or not given, on simulated flights whose true deviation is known. */
import { readBrief, resolveBrief } from "../../src/brief/index.ts";
import { measureCourse } from "../../src/course/index.ts";
import { gradeCourse, standardNamed } from "../../src/grade/index.ts";
import { matchExercises } from "../../src/match/index.ts";
import { fly, scenarioNamed } from "../../src/simulator/index.ts";
import { cleanTrack, findLegs, smoothTrack } from "../../src/track/index.ts";
import { around, type Tallies, tell } from "./tally.ts";

const US = standardNamed("instrument-rating-us")!;
const SCENARIOS = ["strong-crosswind-badly-corrected", "needle-chased", "calm-and-tidy"];
export interface Calibration {
  exercises: number;
  notFound: number;
  readonly tallies: Tallies;
}

/** Flies seeds from `first` on through the scenarios in turn, with receiver noise and wind, logged each second. */
export function calibrate(first: number, flights: number): Calibration {
  const sum: Calibration = { exercises: 0, notFound: 0, tallies: {} };
  for (let k = 0; k < flights; k++) {
    const seed = first + k;
    const scenario = scenarioNamed(SCENARIOS[k % SCENARIOS.length]!);
    const { track, truth } = fly(scenario, seed);
    const motion = smoothTrack(cleanTrack(track).track)!;
    const legs = findLegs(motion);
    const brief = resolveBrief(readBrief(scenario.brief!, "brief.yaml"), { time: motion.time[0]! });
    const matches = matchExercises(brief, { ...motion, legs });
    truth.truth.exercises.forEach((flown, i) => {
      const exercise = brief.exercises[i]!;
      const { span } = matches[i]!;
      sum.exercises++;
      if (exercise.kind !== "course" || !span) {
        sum.notFound++;
        return;
      }
      const { facts } = measureCourse({ exercise, path: motion, span, motion, wind: null });
      const course = { ...US.course, needle: around(flown.maxNeedle, seed * 4 + i) };
      const [verdict] = gradeCourse(facts, { ...US, course });
      tell(sum.tallies, verdict, flown.maxNeedle);
    });
  }
  return sum;
}
