/** The manoeuvre script of a flight, as data: what the pilot sets out to do, step by step. */
import type { Position } from "../geodesy/position.ts";
import type {
  AngleSize,
  FeetMsl,
  FeetPerMinute,
  Knots,
  NauticalMiles,
  Seconds,
  Share,
  TrueDegrees,
} from "../quantity/units.ts";
import type { NeedleScaleId } from "../standard/needle.ts";
import type { ApproachStep } from "./approach-step.ts";
import type { Drawn, Random } from "./random.ts";
import type { TurnOnto } from "./turn-onto.ts";

export type Side = "left" | "right";

/**
 * How a course is flown once established. `share` is the part of the needed wind correction that is applied.
 * - `tidy`: looks at the needle all the time and corrects softly; the wind correction comes after `delay`.
 * - `waits`: tidy for a while, then holds `share` of the correction without looking until the needle shows
 *   `correctsAt` of full scale; then cuts back by `cut` and is tidy with `thenShare`.
 * - `chases`: turns `cut` degrees toward the needle, each time too long, so that it swings with about `period`.
 * - `drifts`: holds `share` of the correction until the needle shows `correctsAt` of full scale, cuts back by `cut`, and
 *   does the same again, to the end of the course.
 * - `beside`: keeps the needle still with the whole correction, but `needle` of full scale downwind of the course.
 */
export type Habit =
  | { readonly habit: "tidy"; readonly share: Share; readonly delay: Seconds }
  | {
      readonly habit: "waits";
      readonly tidyFor: Seconds;
      readonly share: Share;
      readonly correctsAt: Share;
      readonly cut: AngleSize;
      readonly thenShare: Share;
    }
  | {
      readonly habit: "chases";
      readonly share: Share;
      readonly period: Seconds;
      readonly cut: AngleSize;
    }
  | {
      readonly habit: "drifts";
      readonly share: Share;
      readonly correctsAt: Share;
      readonly cut: AngleSize;
    }
  | { readonly habit: "beside"; readonly needle: Share };

export interface CourseStep {
  readonly do: "course";
  /** `to` and `leg` end at `fix` (or `until` miles before it), `from` ends `until` miles from it. */
  readonly form: "to" | "from" | "leg";
  readonly fix: Position;
  /** The first fix of a leg. */
  readonly fromFix?: Position;
  /** At the fix, true. Not for a leg. */
  readonly course?: TrueDegrees;
  readonly until: NauticalMiles;
  /** Largest angle of interception. */
  readonly cut: AngleSize;
  /** One turn onto the course; without it the course is joined softly. */
  readonly joined?: TurnOnto;
  readonly scale: NeedleScaleId;
  readonly flown: Habit;
  /** Title of the exercise in the truth; null where the course is only a way to the next one. */
  readonly exercise: string | null;
}

/** What a pilot does on the ways outbound: how well a hold is planned. */
export interface HoldSkill {
  /**
   * Outbound correction over the inbound one, or the racetrack solved for the wind. 0: the outbound heading is the
   * reciprocal of the inbound course; 1: the outbound leg is flown parallel to the inbound one over the ground.
   */
  readonly factor: number | "solved";
  /** Standard deviation of each component of the wind believed, knots, and of the end of the outbound leg, seconds. */
  readonly windWrong: Knots;
  readonly timingWrong: Seconds;
}

/**
 * What ends the legs. `seconds`: of the inbound leg, between the turns. `distance`: at the end of the outbound leg,
 * along the inbound course from the fix, or as the slant range that a station at the fix (at sea level) would show.
 */
export type HoldLength =
  | { readonly seconds: Seconds }
  | { readonly distance: NauticalMiles; readonly by: "along-track" | "slant-range" };

export type Entry = "direct" | "teardrop" | "parallel";

/** First to the fix; then the entry, by the sector of the heading there unless told otherwise. */
export interface HoldStep {
  readonly do: "hold";
  readonly fix: Position;
  readonly inbound: TrueDegrees;
  readonly turns: Side;
  readonly leg: HoldLength;
  readonly entry?: Entry;
  /** Laps after the entry. */
  readonly laps: number;
  readonly skill: HoldSkill;
  readonly exercise: string;
}

/**
 * How an arc is flown once joined. `share` is the part of the needed wind correction that is applied.
 * - `tidy`: corrects the distance softly all the time.
 * - `waits`: keeps to the tangent without looking until so many miles off, then cuts back by `cut`, then is tidy.
 */
export type ArcHabit =
  | { readonly habit: "tidy"; readonly share: Share }
  | {
      readonly habit: "waits";
      readonly share: Share;
      readonly correctsAt: NauticalMiles;
      readonly cut: AngleSize;
      readonly thenShare: Share;
    };

/** Onto the arc at once, round it, and off it onto the radial at its end. */
export interface ArcStep {
  readonly do: "arc";
  readonly station: Position;
  readonly radius: NauticalMiles;
  /** True azimuths at the station. */
  readonly fromRadial: TrueDegrees;
  readonly toRadial: TrueDegrees;
  readonly turns: Side;
  readonly flown: ArcHabit;
  /** Straight pieces over so many degrees of the arc each; without it, a gentle turn all the way. */
  readonly pieces?: AngleSize;
  /** The turn off the arc begins so many degrees before the radial. */
  readonly lead: AngleSize;
  /** Along the radial at the end: to the station, or away from it. */
  readonly leaves: "inbound" | "outbound";
  readonly exercise: string;
}

/** Straight to a fix, down to a height that is wanted so far before it. */
export interface DescentStep {
  readonly do: "descent";
  readonly fix: Position;
  readonly to: FeetMsl;
  readonly before: NauticalMiles;
  readonly rate: FeetPerMinute;
  /** Begun so much later than this rate asks for; negative: earlier. */
  readonly late: Seconds;
  /** Levelled off on the way, for so long. */
  readonly levelOff?: { readonly at: FeetMsl; readonly seconds: Seconds };
  readonly exercise: string;
}

export type Step =
  /** A heading held for a time, counted from the roll-out; without one, the present heading. */
  | {
      readonly do: "heading";
      readonly heading?: TrueDegrees;
      readonly seconds: Drawn;
      readonly turn?: Side;
    }
  /** A turn by so many degrees of heading, right positive; may exceed 360. */
  | { readonly do: "turn"; readonly by: Drawn }
  /** Straight to a place, with the wind corrected, until it is so near. */
  | {
      readonly do: "direct";
      readonly to: Position;
      readonly within: NauticalMiles;
      readonly turn?: Side;
    }
  /** From now on, while the next steps are flown. */
  | { readonly do: "height"; readonly altitude: FeetMsl; readonly rate: FeetPerMinute }
  /** From now on: another airspeed, as a share of the first one. */
  | { readonly do: "speed"; readonly share: Drawn }
  /** From now on: another rate of turn, degrees per second. */
  | { readonly do: "rate"; readonly rate: Drawn }
  /** Steps that each flight draws for itself. */
  | { readonly do: "drawn"; readonly steps: (random: Random) => readonly Step[] }
  | CourseStep
  | HoldStep
  | ArcStep
  | DescentStep
  | ApproachStep;
