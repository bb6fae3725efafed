/** How often verdicts are wrong, or not given, on simulated flights flown so that the truth lies about the published limit. */
import { measureApproach } from "../../src/approach/index.ts";
import type { ApproachExercise, ArcExercise, CourseExercise } from "../../src/brief/brief.ts";
import { readBrief, resolveBrief } from "../../src/brief/index.ts";
import { measureArc, measureCourse, measureDescent } from "../../src/course/index.ts";
import { gradeApproach, gradeArc, gradeCourse, gradeDescent, standardNamed } from "../../src/grade/index.ts";
import type { Verdict } from "../../src/grade/verdict.ts";
import { matchExercises } from "../../src/match/index.ts";
import { drawnApproach } from "../../src/simulator/approaches.ts";
import { fly, type Scenario, type Step, scenarioNamed, type TrueColumns } from "../../src/simulator/index.ts";
import { cleanTrack, findLegs, smoothTrack } from "../../src/track/index.ts";
import { seeded } from "../support/flown.ts";
import { trueOnArc } from "../support/true-arc.ts";
import { type Tallies, tell } from "./tally.ts";
import { trueNeedles } from "./true-needles.ts";

const US = standardNamed("instrument-rating-us")!;

/** From half of a limit to one and a half of it, evenly spread over the flights. */
const about = (limit: number, k: number): number => (0.5 + ((k * 0.6180339887) % 1)) * limit;

/**
 * What an altimeter set at the field showed more than the true height, ft: 75 ft that it may be off before flight (FAA
 * AIM 7-2-3, from memory), and 4 ft for each 1,000 ft and degree off the standard atmosphere (common practice, no
 * source), of which 15 are 95 % of days (chosen).
 */
const altimeterError = (heightFt: number, normal: () => number): number =>
  (normal() * 75 + normal() * 60 * (heightFt / 1000)) / 1.96;

function flown(scenario: Scenario, seed: number) {
  const { track, truth, columns } = fly(scenario, seed);
  const motion = smoothTrack(cleanTrack(track).track)!;
  const legs = findLegs(motion);
  const brief = resolveBrief(readBrief(scenario.brief!, "brief.yaml"), { time: motion.time[0]! });
  const matches = matchExercises(brief, { ...motion, legs });
  const row = (utc: string) => Math.round((Date.parse(utc) - scenario.start.time) / 1000);
  return { motion, legs, brief, matches, truth: truth.truth, columns, row };
}

type Flown<Kind extends Step["do"]> = Extract<Step, { do: Kind }>;

const changed = <Kind extends Step["do"]>(
  scenario: Scenario,
  kind: Kind,
  change: Partial<Flown<Kind>>,
): Scenario => ({
  ...scenario,
  script: scenario.script.map((step) => (step.do === kind ? ({ ...step, ...change } as Step) : step)),
});

const verdictOf = (verdicts: readonly Verdict[], id: string) => verdicts.find((v) => v.criterion === id);

/** At some 90 kt over the ground so steep a path asks for the limit of the rate of descent, degrees. */
const STEEP = 6.2;

const trueSink = (at: number, { altitude }: TrueColumns): number =>
  (altitude[at - 5]! - altitude[at + 5]!) * 6;

/** Needle and glide path held beside the middle, or a path so steep that the rates are about the limit; the height over the fix briefed otherwise than it was flown. */
export function approachesAboutLimits(first: number, flights: number): Tallies {
  const tallies: Tallies = {};
  for (let k = 0; k < flights; k++) {
    const { normal } = seeded(first + k);
    const off = 0.7 * about(US.approach.glidePath!.limit, k * 7 + 3) * (k % 3 ? -1 : 1);
    const steep = k % 2 === 1;
    const drawn = drawnApproach(k % 4 < 2 ? "landing" : "missed", undefined, k % 8 < 4 ? 1 : -1);
    const scenario = changed(drawn, "approach", {
      flown: { habit: "beside", needle: about(US.approach.needle!.limit, k) },
      descent: steep
        ? { by: "path", angle: about(STEEP, k * 3 + 2), crossing: 50, off: 0 }
        : { by: "path", angle: 3, crossing: 50, off },
    });
    const { motion, brief, matches, columns, row } = flown(scenario, first + k);
    const { span } = matches[0]!;
    if (!span) continue; // the matcher's own tests count those
    const asked = brief.exercises[0] as ApproachExercise;
    const over = about(US.approach.fixAltitude!.limit, k * 5 + 1) * (k % 2 ? 1 : -1);
    const exercise = { ...asked, finalFixAltitude: asked.finalFixAltitude! - over };
    const { facts } = measureApproach({ exercise, path: motion, span, motion, wind: null });
    const { lateral, vertical, atFix } = trueNeedles(facts, scenario, columns);
    const verdicts = gradeApproach(facts, US);
    tell(tallies, verdictOf(verdicts, "approach-needle"), lateral);
    if (!steep) tell(tallies, verdictOf(verdicts, "approach-glide-path"), vertical);
    for (const { utc, heightFt } of steep ? facts.gates : []) {
      const sink = verdictOf(verdicts, `approach-gate-${heightFt}-sink`);
      if (utc) tell(tallies, sink, trueSink(row(utc), columns));
    }
    const fix = verdictOf(verdicts, "approach-fix-height");
    if (atFix === null || !fix) continue;
    const shown = atFix + altimeterError(atFix - facts.runway.elevationFt!, normal);
    tell(tallies, fix, shown - exercise.finalFixAltitude!);
  }
  return tallies;
}

/** Arcs left to the wind until about the limit, and a height asked for beside the one flown. */
export function arcsAboutLimits(first: number, flights: number): Tallies {
  const tallies: Tallies = {};
  for (let k = 0; k < flights; k++) {
    const { normal } = seeded(first + k);
    const correctsAt = about(US.arc.distance!.limit, k);
    const scenario = changed(scenarioNamed("arc-left-to-the-wind"), "arc", {
      flown: { habit: "waits", share: 0, correctsAt, cut: 20, thenShare: 1 },
    });
    const { motion, legs, brief, matches, columns, row } = flown(scenario, first + k);
    const { span } = matches[0]!;
    if (!span) continue;
    const over = about(US.arc.altitude!.limit, k * 5 + 1) * (k % 2 ? 1 : -1);
    const exercise = { ...(brief.exercises[0] as ArcExercise), altitude: scenario.start.altitude - over };
    const { facts } = measureArc({ exercise, path: motion, span, motion, legs, wind: null });
    const [from, to] = [row(facts.judged.fromUtc!), row(facts.judged.toUtc!)];
    const truly = trueOnArc(columns, exercise.fix, exercise.radius, exercise.turns, from, to).maxNm;
    const verdicts = gradeArc(facts, US);
    tell(tallies, verdictOf(verdicts, "arc-distance"), truly);
    tellHeights(tallies, verdicts, "arc", columns.altitude.subarray(from, to + 1), exercise.altitude, normal);
  }
  return tallies;
}

/** Courses at a height asked for beside the one flown, which climbs or sinks on the way so that half its range is about the limit. */
export function courseHeightsAboutLimits(first: number, flights: number): Tallies {
  const tallies: Tallies = {};
  for (let k = 0; k < flights; k++) {
    const { normal } = seeded(first + k);
    const plain = scenarioNamed("calm-and-tidy");
    const change = 2 * about(US.course.altitude!.limit, k) * (k % 2 ? 1 : -1);
    const climb: Step = { do: "height", altitude: plain.start.altitude + change, rate: 40 };
    const at = plain.script.findIndex((step) => step.do === "course");
    const scenario = { ...plain, script: plain.script.toSpliced(at, 0, climb) };
    const { motion, brief, matches, columns, row } = flown(scenario, first + k);
    const over = about(US.course.altitude!.limit, k * 5 + 1) * (k % 2 ? 1 : -1);
    brief.exercises.forEach((asked, i) => {
      const { span } = matches[i]!;
      if (asked.kind !== "course" || !span) return;
      const middle = plain.start.altitude + (i === 0 ? change / 2 : change);
      const exercise: CourseExercise = { ...asked, altitude: middle - over };
      const { facts } = measureCourse({ exercise, path: motion, span, motion, wind: null });
      const heights = columns.altitude.subarray(row(facts.judged.fromUtc!), row(facts.judged.toUtc!) + 1);
      tellHeights(tallies, gradeCourse(facts, US), "course", heights, exercise.altitude, normal);
    });
  }
  return tallies;
}

function tellHeights(
  tallies: Tallies,
  verdicts: readonly Verdict[],
  kind: string,
  heights: Float64Array,
  target: number | null,
  normal: () => number,
): void {
  const [low, high] = [heights.reduce((a, b) => Math.min(a, b)), heights.reduce((a, b) => Math.max(a, b))];
  tell(tallies, verdictOf(verdicts, `${kind}-height-steady`), (high - low) / 2);
  const error = altimeterError(high, normal);
  const worst = Math.max(Math.abs(low + error - target!), Math.abs(high + error - target!));
  tell(tallies, verdictOf(verdicts, `${kind}-height-briefed`), worst);
}

/** Descents begun so late or early that the height at the point is about the limit off. */
export function descentsAboutLimits(first: number, flights: number): Tallies {
  const tallies: Tallies = {};
  for (let k = 0; k < flights; k++) {
    const { normal } = seeded(first + k);
    const late = (about(US.descent.altitude!.limit, k) / 500) * 60;
    const scenario = changed(scenarioNamed("descent-in-time"), "descent", { late });
    const { motion, brief, matches, truth } = flown(scenario, first + k);
    const { span } = matches[0]!;
    const [exercise] = brief.exercises;
    if (exercise?.kind !== "descent" || !span) continue;
    const { facts } = measureDescent({ exercise, path: motion, span, motion, wind: null });
    const { crossingAltitudeFt, toFt } = truth.descents![0]!;
    const shown = crossingAltitudeFt + altimeterError(crossingAltitudeFt, normal);
    tell(tallies, gradeDescent(facts, US)[0], shown - toFt);
  }
  return tallies;
}
