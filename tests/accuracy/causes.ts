/** How often the cause of what went wrong on a course is told rightly, on simulated pilots with one fault each; and how well the lead is. */
import { readBrief, resolveBrief } from "../../src/brief/index.ts";
import type { CourseFacts } from "../../src/course/facts.ts";
import { measureCourse } from "../../src/course/index.ts";
import { matchExercises } from "../../src/match/index.ts";
import type { Cause } from "../../src/quantity/excursion-record.ts";
import { FAULTS, type Fault, fly, oneFault, type SimulatedFlight } from "../../src/simulator/index.ts";
import type { TrueEvent, TrueExercise } from "../../src/simulator/truth.ts";
import { cleanTrack, findLegs, smoothTrack } from "../../src/track/index.ts";
import { estimateWind } from "../../src/wind/index.ts";
import { TRACK_OFF, trueError, trueTrackOff } from "./true-lead.ts";

/** A wind that needs less is no fault to leave alone: the track stays within hand-flown wander. */
export const LEAST_NEED = 4;
/** A heading so near to the course is on it, degrees: 2, and what the heading wanders and the wind changes. */
export const ON_THE_COURSE = 4;
/** What was flown is a fault from here on, NM: as far as a pilot would be told of it. */
const LEAST_OFF = 0.1;
/** A turn that ends nearer was no fault in that wind. */
const LEAST_TURN_OFF = 0.18;

export interface Telling {
  /** Exercises in which the fault truly went as far as a fault. */
  flown: number;
  right: number;
  /** What was told instead, and how often. */
  readonly instead: Record<string, number>;
}

export const noTellings = (): Record<Fault, Telling> =>
  Object.fromEntries(
    FAULTS.map((fault) => [fault, { flown: 0, right: 0, instead: {} }]),
  ) as unknown as Record<Fault, Telling>;

export function tally(telling: Telling, is: Fault, says: string): void {
  telling.flown++;
  if (says === is) telling.right++;
  else telling.instead[says] = (telling.instead[says] ?? 0) + 1;
}

export interface Leads {
  /** Found less true, seconds: of the first correction, and of the lead. */
  readonly correctionS: number[];
  readonly leadS: number[];
  /** Track errors of these, degrees. */
  readonly errorDeg: number[];
  /** Scripted corrections that were not found. */
  missed: number;
}

export interface CauseReport {
  readonly tellings: Readonly<Record<Fault, Telling>>;
  readonly leads: Leads;
  notFound: number;
}

const event = ({ events }: TrueExercise, ...codes: string[]): TrueEvent | undefined =>
  events.find(({ code }) => codes.includes(code));

/** The fault that was truly flown on an exercise, or null where it came to nothing that is told of. */
function trueFault(fault: Fault, exercise: TrueExercise): Fault | null {
  switch (fault) {
    case "wind-uncorrected":
    case "over-corrected": {
      const off = event(exercise, "wind-correction-let-go", "wind-correction-overdone");
      const far = Math.abs(exercise.neededCorrectionDeg) >= LEAST_NEED;
      return off && far && Math.abs(exercise.maxCrossTrackNm) >= LEAST_OFF ? fault : null;
    }
    case "chased":
      return exercise.events.filter(({ code }) => code === "needle-reversal").length >= 4 ? fault : null;
    case "rolled-out-off": {
      const out = event(exercise, "rolled-out");
      if (!out) return "none";
      // rolled out onto the course's own number in a crosswind: both names are true
      return Math.abs(exercise.neededCorrectionDeg + out.trackErrorDeg) <= ON_THE_COURSE ? null : fault;
    }
    case "turned-late":
    case "turned-early":
      if (!event(exercise, "turned-onto")) return "none";
      return Math.abs(exercise.maxCrossTrackNm) >= LEAST_TURN_OFF ? fault : null;
    case "none":
      return fault;
  }
}

/** The fault that the facts name first; too little correction is the wind left uncorrected, in part. */
export function told(causes: readonly Cause[]): string {
  const first = causes[0]?.cause ?? "none";
  return first === "under-corrected" ? "wind-uncorrected" : first;
}

function meterLead(
  leads: Leads,
  exercise: TrueExercise,
  { excursions }: CourseFacts,
  { columns, truth }: SimulatedFlight,
): void {
  const off = event(exercise, "wind-correction-let-go", "wind-correction-overdone");
  const corrected = event(exercise, "corrected");
  if (!off || !corrected) return;
  const error = Math.abs(off.trackErrorDeg);
  // the track never left the course by the threshold, but for wander
  if (error <= TRACK_OFF + 0.5) return;
  const [from, to] = [Date.parse(off.utc), Date.parse(corrected.utc)];
  // the excursion that was under way when the script corrected
  const found = excursions.find(
    (e) => Date.parse(e.trackOffUtc) <= to && Date.parse(e.worstUtc) >= from && e.correctedUtc !== null,
  );
  if (!found) {
    leads.missed++;
    return;
  }
  const late = (Date.parse(found.correctedUtc!) - to) / 1000;
  leads.correctionS.push(late);
  const second = (t: number) => Math.round((t - Date.parse(truth.startUtc)) / 1000);
  const lead =
    second(to) -
    trueTrackOff(
      trueError(columns, () => exercise.courseTrueDeg),
      second(from),
      second(to),
    );
  leads.leadS.push(found.leadS! - lead);
  leads.errorDeg.push(error);
}

export function meterCauses(first: number, flights: number, faults: readonly Fault[] = FAULTS): CauseReport {
  const tellings = noTellings();
  const leads: Leads = { correctionS: [], leadS: [], errorDeg: [], missed: 0 };
  const report = { tellings, leads, notFound: 0 };
  for (const fault of faults) {
    for (let seed = first; seed < first + flights; seed++) {
      const scenario = oneFault(fault);
      const flight = fly(scenario, seed);
      const { track, truth } = flight;
      const motion = smoothTrack(cleanTrack(track).track)!;
      const legs = findLegs(motion);
      const brief = resolveBrief(readBrief(scenario.brief!, "brief.yaml"), { time: motion.time[0]! });
      const wind = estimateWind(motion, legs, { airspeed: brief.aircraft, winds: [] });
      const matches = matchExercises(brief, { ...motion, legs });
      truth.truth.exercises.forEach((flown, i) => {
        const exercise = brief.exercises[i]!;
        const { span } = matches[i]!;
        const is = trueFault(fault, flown);
        if (is === null) return;
        if (exercise.kind !== "course" || !span) {
          report.notFound++;
          return;
        }
        const { facts } = measureCourse({ exercise, path: motion, span, motion, wind });
        tally(tellings[is], is, told(facts.causes));
        meterLead(leads, flown, facts, flight);
      });
    }
  }
  return report;
}
