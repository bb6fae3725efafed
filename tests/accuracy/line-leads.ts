/** How well the leading indicator tells arcs and finals: scripted corrections and leads, and pilots who keep the line. */

import { measureApproach } from "../../src/approach/index.ts";
import type { ApproachExercise, ArcExercise } from "../../src/brief/brief.ts";
import { readBrief, resolveBrief } from "../../src/brief/index.ts";
import { measureArc } from "../../src/course/index.ts";
import { inverse } from "../../src/geodesy/index.ts";
import { matchExercises } from "../../src/match/index.ts";
import { turnFrom } from "../../src/quantity/angle.ts";
import { drawnApproach } from "../../src/simulator/approaches.ts";
import { fly, type Scenario, scenarioNamed, type TrueColumns } from "../../src/simulator/index.ts";
import { cleanTrack, findLegs, smoothTrack } from "../../src/track/index.ts";
import { trueFinal } from "../support/true-final.ts";
import { TRACK_OFF, trueError, trueTrackOff } from "./true-lead.ts";

/** The habit is given up, and the correction begun, at so many miles off an arc, and at so much of the scale on a final. */
const CORRECTS = { arc: 0.8, final: 0.45 } as const;
/** On a final the heading is let go so long after it was established, seconds. */
const TIDY_FOR = 45;

export interface LineLeads {
  /** Found less true, seconds: of the first correction, and of the lead. */
  readonly correctionS: number[];
  readonly leadS: number[];
  /** Scripted corrections of a track that was truly off which were not found. */
  missed: number;
  /** Flights of pilots who keep the line, and those of them that were told of an excursion. */
  kept: number;
  blamed: number;
}

/** The line at a second of the true flight: how far off it (miles, or share of the scale), and its direction there. */
type TrueLine = (second: number) => { readonly off: number; readonly direction: number };

function flown(scenario: Scenario, seed: number) {
  const { track, truth, columns } = fly(scenario, seed);
  const motion = smoothTrack(cleanTrack(track).track)!;
  const legs = findLegs(motion);
  const brief = resolveBrief(readBrief(scenario.brief!, "brief.yaml"), { time: motion.time[0]! });
  const [match] = matchExercises(brief, { ...motion, legs });
  return { motion, legs, exercise: brief.exercises[0]!, span: match!.span, truth: truth.truth, columns };
}

/** The second at which the turn onto a line has ended, the track turning by less than a degree a second against it for four; or at which it passed the line's direction. */
function rolledOut(error: (second: number) => number, from: number): number {
  const steady = (i: number) => Math.abs(turnFrom(error(i), error(i + 1))) < 1;
  const over = (i: number) => steady(i) && steady(i + 1) && steady(i + 2) && steady(i + 3);
  let at = from;
  while (!over(at) && Math.abs(error(at)) >= TRACK_OFF) at++;
  return at;
}

function meterOne(
  leads: LineLeads,
  line: TrueLine,
  columns: TrueColumns,
  at: {
    readonly start: number;
    readonly established: number;
    readonly letGo: number;
    readonly until: number;
    readonly corrects: number;
  },
  excursions: readonly { correctedUtc: string | null; leadS: number | null }[],
): void {
  let corrected = Math.ceil(at.letGo);
  while (corrected <= at.until && Math.abs(line(corrected).off) < at.corrects) corrected++;
  if (corrected > at.until) return; // this wind never carried it so far
  const error = trueError(columns, (i) => line(i).direction);
  const off = trueTrackOff(
    error,
    Math.ceil(at.letGo),
    corrected,
    rolledOut(error, Math.ceil(at.established) - 10),
  );
  let mean = 0;
  for (let i = off; i <= corrected; i++) mean += error(i) / (corrected - off + 1);
  // the track never left the line by the threshold, but for wander
  if (Math.abs(mean) <= TRACK_OFF + 0.5) return;
  const second = (utc: string) => (Date.parse(utc) - at.start) / 1000;
  const found = excursions.find((e) => e.correctedUtc && Math.abs(second(e.correctedUtc) - corrected) < 60);
  if (!found) {
    leads.missed++;
    return;
  }
  leads.correctionS.push(second(found.correctedUtc!) - corrected);
  leads.leadS.push(found.leadS! - (corrected - off));
}

const none = (): LineLeads => ({ correctionS: [], leadS: [], missed: 0, kept: 0, blamed: 0 });

/** Arcs left to the wind, and arcs kept closely, in a gentle turn and in pieces; seeds from `first` on. */
export function meterArcLeads(first: number, flights: number): LineLeads {
  const leads = none();
  for (let seed = first; seed < first + flights; seed++) {
    for (const name of ["arc-left-to-the-wind", "arc-tidy", "arc-in-pieces"]) {
      const scenario = scenarioNamed(name);
      const { motion, legs, span, columns, ...rest } = flown(scenario, seed);
      const exercise = rest.exercise as ArcExercise;
      if (!span) continue;
      const { facts, findings } = measureArc({ exercise, path: motion, span, motion, legs, wind: null });
      if (name !== "arc-left-to-the-wind") {
        leads.kept++;
        if (findings.some(({ code }) => code === "arc-track-off")) leads.blamed++;
        continue;
      }
      const line: TrueLine = (k) => {
        const place = { latitude: columns.latitude[k]!, longitude: columns.longitude[k]! };
        const { distance, azimuthAtEnd } = inverse(exercise.fix, place);
        const direction = azimuthAtEnd + (exercise.turns === "right" ? 90 : -90);
        return { off: distance / 1852 - exercise.radius, direction };
      };
      const { time: start } = scenario.start;
      const second = (utc: string) => (Date.parse(utc) - start) / 1000;
      const { joinedUtc, turnOffUtc } = rest.truth.arcs![0]!;
      const established = second(joinedUtc!);
      const at = {
        start,
        established,
        letGo: established,
        until: second(turnOffUtc),
        corrects: CORRECTS.arc,
      };
      meterOne(leads, line, columns, at, facts.excursions!);
    }
  }
  return leads;
}

/** The final of a drawn approach, the wind correction let go on it and taken up again where the needle says so. */
function letGo(scenario: Scenario): Scenario {
  const { final: correctsAt } = CORRECTS;
  const flown = { habit: "waits", tidyFor: TIDY_FOR, share: 0, correctsAt, cut: 15, thenShare: 1 } as const;
  const script = scenario.script.map((step) => (step.do === "approach" ? { ...step, flown } : step));
  return { ...scenario, script };
}

/** Finals on which the wind is let go, and finals kept closely; seeds from `first` on. */
export function meterFinalLeads(first: number, flights: number): LineLeads {
  const leads = none();
  for (let seed = first; seed < first + flights; seed++) {
    const drawn = drawnApproach(seed % 2 ? "landing" : "missed", undefined, seed % 4 < 2 ? 1 : -1);
    for (const scenario of [letGo(drawn), drawn]) {
      const { motion, span, columns, ...rest } = flown(scenario, seed);
      const exercise = rest.exercise as ApproachExercise;
      if (!span) continue;
      const measured = measureApproach({ exercise, path: motion, span, motion, wind: null });
      const { facts, findings } = measured;
      if (scenario === drawn) {
        leads.kept++;
        if (findings.some(({ code }) => code === "final-track-off")) leads.blamed++;
        continue;
      }
      const direction = facts.finalCourseTrueDeg;
      const final = trueFinal(columns, facts.runway.threshold, direction);
      const line: TrueLine = (k) => ({ off: final(k).needle, direction });
      const { time: start } = scenario.start;
      const second = (utc: string) => (Date.parse(utc) - start) / 1000;
      const { establishedUtc } = rest.truth.approaches![0]!;
      if (!establishedUtc) continue;
      const established = second(establishedUtc);
      const until = second(facts.judged.toUtc!);
      const at = { start, established, letGo: established + TIDY_FOR, until, corrects: CORRECTS.final };
      meterOne(leads, line, columns, at, facts.excursions!);
    }
  }
  return leads;
}
