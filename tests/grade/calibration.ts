/** How often verdicts are wrong, or not given, on simulated flights whose true deviation is known. */
import { readBrief, resolveBrief } from "../../src/brief/index.ts";
import { measureCourse } from "../../src/course/index.ts";
import { gradeCourse, standardNamed } from "../../src/grade/index.ts";
import { matchExercises } from "../../src/match/index.ts";
import { fly, scenarioNamed } from "../../src/simulator/index.ts";
import { cleanTrack, findLegs, smoothTrack } from "../../src/track/index.ts";

const US = standardNamed("instrument-rating-us")!;
const SCENARIOS = ["strong-crosswind-badly-corrected", "needle-chased", "calm-and-tidy"];
/** Limits lie within half of the true value to both sides of it: around every limit, not only far from it. */
const SPREAD = 0.5;

export interface Calibration {
  exercises: number;
  notFound: number;
  judged: number;
  wrong: number;
  cannotTell: number;
}

/** Flies seeds from `first` on through the scenarios in turn, with receiver noise and wind, logged each second. */
export function calibrate(first: number, flights: number): Calibration {
  const sum: Calibration = { exercises: 0, notFound: 0, judged: 0, wrong: 0, cannotTell: 0 };
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
      const share = 1 - SPREAD + 2 * SPREAD * (((seed * 4 + i) * 0.6180339887) % 1); // evenly spread
      const limit = share * Math.abs(flown.maxNeedle);
      const course = { ...US.course, needle: { limit, edge: "within" as const, citation: "drawn" } };
      const [verdict] = gradeCourse(facts, { ...US, course });
      if (verdict!.verdict === "cannot tell") sum.cannotTell++;
      else {
        sum.judged++;
        const inside = Math.abs(flown.maxNeedle) <= limit;
        if ((verdict!.verdict === "met") !== inside) sum.wrong++;
      }
    });
  }
  return sum;
}
