/** An approach as a step of a script: how the final is joined, how the way down is flown, and how it ends. */
import type { Position } from "../geodesy/position.ts";
import type {
  AngleSize,
  Feet,
  FeetMsl,
  FeetPerMinute,
  NauticalMiles,
  Share,
  TrueDegrees,
} from "../quantity/units.ts";
import type { Drawn } from "./random.ts";
import type { Habit, Side } from "./script.ts";
import type { TurnOnto } from "./turn-onto.ts";

/** A landing direction: the threshold and where it points. */
export interface SimulatedRunway {
  readonly threshold: Position;
  readonly course: TrueDegrees;
  readonly elevation: FeetMsl;
}

/** How the way down is flown. */
export type Descent =
  /** On a glide path, `off` degrees above or below it (by `beyond` miles before the threshold only, where given). */
  | {
      readonly by: "path";
      readonly angle: AngleSize;
      readonly crossing: Feet;
      readonly off: Drawn;
      readonly beyond?: NauticalMiles;
    }
  /** Down to each altitude at `rate` as soon as its distance is passed, and level there. */
  | {
      readonly by: "steps";
      readonly steps: readonly { readonly from: NauticalMiles; readonly altitude: FeetMsl }[];
      readonly rate: FeetPerMinute;
    };

export interface ApproachStep {
  readonly do: "approach";
  readonly runway: SimulatedRunway;
  /** Distance of the final fix before the threshold, and the altitude flown until there. */
  readonly finalFix: NauticalMiles;
  readonly fixAltitude: FeetMsl;
  /** The turn onto the final begins so many metres past it (negative: before); `arc`: from an arc about a station. */
  readonly join: {
    readonly cut: AngleSize;
    readonly late: Drawn;
    readonly arc?: Arc;
    /** One turn onto the final instead, begun by its own moment. */
    readonly turn?: TurnOnto;
  };
  /** Full scale of the needle, centre to side, and its antenna's distance from the threshold, miles. */
  readonly localizer: { readonly half: AngleSize; readonly antenna: NauticalMiles };
  readonly flown: Habit;
  readonly descent: Descent;
  /** Airspeed from the final fix, and from `unsteady.at` miles on, as shares of the first. */
  readonly speed: Drawn;
  readonly unsteady?: { readonly at: NauticalMiles; readonly share: Share };
  /** Decision or minimum descent altitude. */
  readonly minimum: FeetMsl;
  /** Landing; or a climb: so far below the minimum, or at a distance before the threshold. */
  readonly ends:
    | { readonly by: "landing" }
    | { readonly by: "missed"; readonly below: Drawn }
    | { readonly by: "missed"; readonly at: Drawn };
  readonly climb: { readonly altitude: FeetMsl; readonly rate: FeetPerMinute };
  readonly exercise: string;
}

/** Flown until the final is near. */
export interface Arc {
  readonly centre: Position;
  readonly radius: NauticalMiles;
  readonly turns: Side;
}
