/** How often verdicts of approaches, arcs and descents are wrong, or not given, on simulated flights whose truth is known. */
import { measureApproach } from "../../src/approach/index.ts";
import { readBrief, resolveBrief } from "../../src/brief/index.ts";
import { measureArc, measureDescent } from "../../src/course/index.ts";
import { gradeApproach, gradeArc, gradeDescent, standardNamed } from "../../src/grade/index.ts";
import type { Verdict } from "../../src/grade/verdict.ts";
import { matchExercises } from "../../src/match/index.ts";
import { drawnApproach } from "../../src/simulator/approaches.ts";
import { fly, type Scenario, scenarioNamed } from "../../src/simulator/index.ts";
import type { TestStandard } from "../../src/standard/test-standard.ts";
import { cleanTrack, findLegs, smoothTrack } from "../../src/track/index.ts";
import { trueOnArc } from "../support/true-arc.ts";
import { around, type Tallies, tell } from "./tally.ts";
import { trueNeedles } from "./true-needles.ts";

const US = standardNamed("instrument-rating-us")!;

function flown(scenario: Scenario, seed: number) {
  const { track, truth, columns } = fly(scenario, seed);
  const motion = smoothTrack(cleanTrack(track).track)!;
  const legs = findLegs(motion);
  const brief = resolveBrief(readBrief(scenario.brief!, "brief.yaml"), { time: motion.time[0]! });
  return { motion, legs, brief, matches: matchExercises(brief, { ...motion, legs }), truth, columns };
}

const sinkAt = (
  utc: string,
  { start }: Scenario,
  { altitude }: ReturnType<typeof fly>["columns"],
): number => {
  const k = Math.round((Date.parse(utc) - start.time) / 1000);
  return (altitude[k - 5]! - altitude[k + 5]!) * 6;
};

/** Approaches to landings (heights tied to the runway) and missed approaches (not tied), seeds from `first` on. */
export function calibrateApproaches(first: number, flights: number): Tallies {
  const tallies: Tallies = {};
  for (let k = 0; k < flights; k++) {
    const scenario = drawnApproach(k % 2 ? "landing" : "missed", undefined, k % 4 < 2 ? 1 : -1);
    const { motion, brief, matches, columns } = flown(scenario, first + k);
    const [exercise] = brief.exercises;
    const { span } = matches[0]!;
    if (exercise?.kind !== "approach" || !span) throw new Error(`seed ${first + k}: not found`);
    const { facts } = measureApproach({ exercise, path: motion, span, motion, wind: null });
    const { lateral, vertical } = trueNeedles(facts, scenario, columns);
    const sinks = facts.gates.map((gate) => sinkAt(gate.utc!, scenario, columns));
    const graded = (changes: Partial<TestStandard["approach"]>) =>
      gradeApproach(facts, { ...US, approach: { ...US.approach, ...changes } });
    const of = (verdicts: readonly Verdict[], id: string) => verdicts.find((v) => v.criterion === id);
    tell(tallies, of(graded({ needle: around(lateral, k) }), "approach-needle"), lateral);
    // near the runway a GPS height is known to half a scale: a limit drawn around less would never be told
    tell(tallies, of(graded({}), "approach-glide-path"), vertical);
    sinks.forEach((sink, i) => {
      const id = `approach-gate-${facts.gates[i]!.heightFt}-sink`;
      tell(tallies, of(graded({ gates: { needle: null, sink: around(sink, k + i) } }), id), sink);
    });
  }
  return tallies;
}

const ARCS = ["arc-tidy", "arc-in-pieces", "arc-left-to-the-wind"];
const DESCENTS = ["descent-in-time", "descent-late", "descent-early"];

export function calibrateArcsAndDescents(first: number, flights: number): Tallies {
  const tallies: Tallies = {};
  for (let k = 0; k < flights; k++) {
    const names = k % 2 ? ARCS : DESCENTS;
    const scenario = scenarioNamed(names[(k >> 1) % 3]!);
    const { motion, legs, brief, matches, truth, columns } = flown(scenario, first + k);
    const [exercise] = brief.exercises;
    const { span } = matches[0]!;
    if (!span) continue; // the matcher's own tests count those
    if (exercise?.kind === "arc") {
      const { facts } = measureArc({ exercise, path: motion, span, motion, legs, wind: null });
      // over the rows that are judged: the simulator's own worst leaves out more of the turn onto the arc
      const second = (utc: string) => (Date.parse(utc) - scenario.start.time) / 1000;
      const [from, to] = [second(facts.judged.fromUtc!), second(facts.judged.toUtc!)];
      const truly = trueOnArc(columns, exercise.fix, exercise.radius, exercise.turns, from, to).maxNm;
      const [verdict] = gradeArc(facts, { ...US, arc: { distance: around(truly, k), altitude: null } });
      tell(tallies, verdict, truly);
    } else if (exercise?.kind === "descent") {
      const { facts } = measureDescent({ exercise, path: motion, span, motion, wind: null });
      const { crossingAltitudeFt, toFt } = truth.truth.descents![0]!;
      const truly = crossingAltitudeFt - toFt;
      const [verdict] = gradeDescent(facts, { ...US, descent: { altitude: around(truly, k) } });
      tell(tallies, verdict, truly);
    }
  }
  return tallies;
}
