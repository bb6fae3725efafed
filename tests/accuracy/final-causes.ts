/** How often the cause of what went wrong on a final is told rightly, on simulated pilots with one fault each. */
import { measureApproach } from "../../src/approach/index.ts";
import { readBrief, resolveBrief } from "../../src/brief/index.ts";
import { matchExercises } from "../../src/match/index.ts";
import { cosDeg, sinDeg } from "../../src/quantity/angle.ts";
import { FAULTS, type Fault, fly, oneFaultFinal, type TrueColumns } from "../../src/simulator/index.ts";
import type { TrueApproach } from "../../src/simulator/truth.ts";
import { cleanTrack, findLegs, smoothTrack } from "../../src/track/index.ts";
import { estimateWind } from "../../src/wind/index.ts";
import { type OnFinal, trueFinal } from "../support/true-final.ts";
import { LEAST_NEED, noTellings, ON_THE_COURSE, type Telling, tally, told } from "./causes.ts";
import { trueError } from "./true-lead.ts";

/** What was flown is a fault from here on, of full scale: a little more than the quarter from which the needle tells. */
const LEAST_OFF = 0.3;
/** A turn onto the final that ended nearer was no fault, NM: more than what those timed to 3 s come to. */
const LEAST_TURN_OFF = 0.14;
/** After the roll-out, seconds: its own swing is over; what stands then is looked at; and so long it was left so at the least. */
const SETTLED = 5;
const STANDS = 30;
const LEFT_SO = 60;

const mean = (of: (row: number) => number, from: number, to: number): number => {
  let sum = 0;
  for (let row = from; row < to; row++) sum += of(row);
  return sum / Math.max(1, to - from);
};

/** Heading less course that the true wind needs at a row, degrees right. */
const needed =
  ({ airEast, airNorth, trueAirspeed }: TrueColumns, course: number) =>
  (row: number): number => {
    const toRight = airEast[row]! * cosDeg(course) - airNorth[row]! * sinDeg(course);
    return (-Math.asin(toRight / trueAirspeed[row]!) * 180) / Math.PI;
  };

/** The fault that was truly flown on a final, or null where it came to nothing that is told of. `until`: the last row of what is judged. */
function trueFault(
  fault: Fault,
  { events = [], courseTrueDeg }: TrueApproach,
  columns: TrueColumns,
  final: (row: number) => OnFinal,
  row: (utc: string) => number,
  until: number,
): Fault | null {
  const at = (...codes: string[]): number | null => {
    const found = events.find(({ code }) => codes.includes(code));
    return found ? row(found.utc) : null;
  };
  const worst = (from: number, to: number): number => {
    let most = 0;
    for (let k = from; k <= Math.min(to, until); k++) most = Math.max(most, Math.abs(final(k).needle));
    return most;
  };
  const need = needed(columns, courseTrueDeg);
  switch (fault) {
    case "wind-uncorrected":
    case "over-corrected": {
      const off = at("wind-correction-let-go", "wind-correction-overdone");
      if (off === null || off >= until || worst(off, until) < LEAST_OFF) return null;
      const corrected = at("corrected") ?? until;
      return Math.abs(mean(need, off, Math.max(off + 1, corrected))) >= LEAST_NEED ? fault : null;
    }
    case "chased":
      return events.filter(({ code, utc }) => code === "needle-reversal" && row(utc) <= until).length >= 4
        ? fault
        : null;
    case "rolled-out-off": {
      const out = at("rolled-out");
      if (out === null) return "none";
      const error = mean(
        trueError(columns, () => courseTrueDeg),
        out + SETTLED,
        out + STANDS,
      );
      // rolled out onto the course's own number in a crosswind: both names are true
      if (Math.abs(mean(need, out, out + STANDS) + error) <= ON_THE_COURSE) return null;
      return worst(out, out + LEFT_SO) >= LEAST_OFF ? fault : null;
    }
    case "turned-late":
    case "turned-early": {
      const out = at("rolled-out");
      if (out === null) return "none";
      const { across, needle } = final(out);
      return Math.abs(needle) >= LEAST_OFF && Math.abs(across) >= LEAST_TURN_OFF * 1852 ? fault : null;
    }
    case "none":
      return fault;
  }
}

export interface FinalCauses {
  readonly tellings: Readonly<Record<Fault, Telling>>;
  notFound: number;
}

/** Finals from either side; seeds from `first` on. */
export function meterFinalCauses(
  first: number,
  flights: number,
  faults: readonly Fault[] = FAULTS,
  note: (words: string) => void = () => {},
): FinalCauses {
  const report = { tellings: noTellings(), notFound: 0 };
  for (const fault of faults)
    for (let seed = first; seed < first + flights; seed++) {
      const scenario = oneFaultFinal(fault, seed % 2 ? 1 : -1);
      const { track, truth, columns } = fly(scenario, seed);
      const motion = smoothTrack(cleanTrack(track).track)!;
      const legs = findLegs(motion);
      const brief = resolveBrief(readBrief(scenario.brief!, "brief.yaml"), { time: motion.time[0]! });
      const wind = estimateWind(motion, legs, { airspeed: brief.aircraft, winds: [] });
      const [match] = matchExercises(brief, { ...motion, legs });
      const [exercise] = brief.exercises;
      if (exercise?.kind !== "approach" || !match?.span) {
        report.notFound++;
        continue;
      }
      const { facts } = measureApproach({ exercise, path: motion, span: match.span, legs, motion, wind });
      const [flown] = truth.truth.approaches!;
      const row = (utc: string) => Math.round((Date.parse(utc) - scenario.start.time) / 1000);
      const final = trueFinal(columns, flown!.threshold, flown!.courseTrueDeg);
      const is = trueFault(fault, flown!, columns, final, row, row(facts.judged.toUtc!));
      if (is === null) continue;
      const says = told(facts.causes!);
      tally(report.tellings[is], is, says);
      if (says !== is) note(`${fault} seed ${seed}: ${is} told as ${says}`);
    }
  return report;
}
