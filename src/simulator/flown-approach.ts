/** What an approach truly was, noted while it is flown. */
import { METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import type { FeetMsl, NauticalMiles, Seconds, TurnDegrees } from "../quantity/units.ts";
import { type Aircraft, STEP } from "./aircraft.ts";
import type { ApproachStep } from "./approach-step.ts";
import type { EventCode } from "./habits.ts";
import type { Sight } from "./sight.ts";

/** What an approach truly was; times from the start of the flight, straight between steps of half a second. */
export interface FlownApproach {
  readonly step: ApproachStep;
  readonly start: Seconds;
  readonly end: Seconds;
  /** Track less course on the cut; null from an arc. */
  readonly interceptDeg: TurnDegrees | null;
  readonly overshoot: NauticalMiles;
  readonly established: Seconds | null;
  readonly fix: Seconds | null;
  readonly fixAltitude: FeetMsl | null;
  readonly minimum: Seconds | null;
  readonly missed: Seconds | null;
  readonly threshold: Seconds | null;
  readonly lowest: FeetMsl;
  readonly events: readonly { readonly code: EventCode; readonly time: Seconds }[];
}

/** As for any course: this near to it and this parallel. */
const ESTABLISHED_M = 150;
const ESTABLISHED_DEG = 8;
/** Rolled out: the heading so near to what holds the final. */
const ROLLED_OUT_DEG = 4;
/** Coming back from an overshoot by this is its end, and nothing is an overshoot so long after the final was joined. */
const COMING_BACK: NauticalMiles = 0.004;
const SETTLED: Seconds = 60;

/** Notes of an approach under way: what was passed since the look before, and how the final was joined. */
export class ApproachNotes {
  interceptDeg: TurnDegrees | null = null;
  overshoot: NauticalMiles = 0;
  established: Seconds | null = null;
  fix: Seconds | null = null;
  fixAltitude: FeetMsl | null = null;
  minimum: Seconds | null = null;
  missed: Seconds | null = null;
  threshold: Seconds | null = null;
  lowest: FeetMsl;
  readonly events: { code: EventCode; time: Seconds }[] = [];
  /** Side of the final that it was met from, right positive. */
  side = 0;
  private before: { readonly distance: NauticalMiles; readonly altitude: FeetMsl } | null = null;
  private turnedBack: Seconds | null = null;
  private nearest = Number.NEGATIVE_INFINITY;
  private readonly step: ApproachStep;
  private readonly aircraft: Aircraft;
  private readonly start: Seconds;

  constructor(step: ApproachStep, aircraft: Aircraft) {
    this.step = step;
    this.aircraft = aircraft;
    this.start = aircraft.time;
    this.lowest = aircraft.altitude;
  }

  readonly note = (code: EventCode): void => {
    this.events.push({ code, time: this.aircraft.time });
  };

  /** What was passed on the way from the look before to this distance from the threshold. */
  passed(distance: NauticalMiles): void {
    const { time, altitude } = this.aircraft;
    const { step, before } = this;
    if (before) {
      const share = (from: number, to: number, value: number) => (from - value) / (from - to);
      const moment = (s: number) => time - STEP * (1 - s);
      const beyond = (value: NauticalMiles) => before.distance > value && distance <= value;
      if (this.fix === null && beyond(step.finalFix)) {
        const s = share(before.distance, distance, step.finalFix);
        this.fix = moment(s);
        this.fixAltitude = before.altitude + s * (altitude - before.altitude);
      }
      if (this.threshold === null && beyond(0)) this.threshold = moment(share(before.distance, distance, 0));
      const reached = before.altitude > step.minimum && altitude <= step.minimum;
      if (this.fix !== null && this.minimum === null && reached)
        this.minimum = moment(share(before.altitude, altitude, step.minimum));
    }
    this.lowest = Math.min(this.lowest, altitude);
    this.before = { distance, altitude };
  }

  /** How far past the final it came before the turn onto it (so much is left of it) was over, or it came back. */
  joins(sight: Sight, toTurn: TurnDegrees): void {
    const { time } = this.aircraft;
    const past = (-this.side * sight.across) / METRES_PER_NAUTICAL_MILE;
    if (this.turnedBack === null && past > this.overshoot) this.overshoot = past;
    this.nearest = Math.max(this.nearest, past);
    if (past < this.nearest - COMING_BACK || toTurn < ROLLED_OUT_DEG) this.turnedBack ??= time;
    if (this.established !== null && time - this.established > SETTLED) this.turnedBack ??= time;
  }

  /** Established: near the final, and parallel but for what is left to turn. */
  follows(sight: Sight, toTurn: TurnDegrees): void {
    if (Math.abs(sight.across) < ESTABLISHED_M && toTurn < ESTABLISHED_DEG)
      this.established ??= this.aircraft.time;
  }

  done(): FlownApproach {
    const { interceptDeg, overshoot, established, fix, fixAltitude, minimum } = this;
    const { missed, threshold, lowest, events, step, start } = this;
    const flown = { interceptDeg, overshoot, established, fix, fixAltitude, minimum, missed, threshold };
    return { ...flown, lowest, events, step, start, end: this.aircraft.time };
  }
}
