/** What the flight was meant to do, with every direction already true. */
import type { Course } from "../geodesy/course.ts";
import type { PointKind } from "../geodesy/index.ts";
import type { Position } from "../geodesy/position.ts";
import type { Issue } from "../quantity/issue.ts";
import type { VariationUsed } from "../quantity/magnetic.ts";
import type { AirspeedPrior, WindPrior } from "../quantity/prior.ts";
import type {
  AngleSize,
  Feet,
  FeetMsl,
  MagneticDegrees,
  NauticalMiles,
  Seconds,
  TrueDegrees,
  UtcMillis,
  VariationDegrees,
} from "../quantity/units.ts";
import type { GuidanceKind } from "../standard/approach-guidance.ts";
import type { TurnSide } from "../standard/holding.ts";
import type { NeedleScale } from "../standard/needle.ts";

export interface Fix extends Position {
  readonly ident: string;
  readonly kind: PointKind;
  /** The station's own declination, where the brief gives it. */
  readonly declination: VariationDegrees | null;
  readonly elevation: FeetMsl | null;
}

interface ExerciseBase {
  /** From 0, the brief's order. */
  readonly index: number;
  /** As in "Course 218°M to TARNO". */
  readonly title: string;
  /** The time window that the brief gives, or null. */
  readonly between: { readonly start: UtcMillis; readonly end: UtcMillis } | null;
  readonly altitude: FeetMsl | null;
}

export interface CourseExercise extends ExerciseBase {
  readonly kind: "course";
  /** `to`: ends at its fix; `from`: begins there; `leg`: from one fix to another. */
  readonly form: "to" | "from" | "leg";
  /** The station or fix that the course is named for; the far fix of a leg. */
  readonly fix: Fix;
  /** The first fix of a leg, else null. */
  readonly fromFix: Fix | null;
  /** The line. Its origin is `fix` for `to` and `from`, `fromFix` for `leg`. */
  readonly course: Course;
  /** As written or derived, for the words. Null where no variation is known. */
  readonly magnetic: MagneticDegrees | null;
  readonly variation: VariationUsed;
  readonly scale: NeedleScale;
}

/** How long the legs of a hold are, as written: a time, or a distance from the fix to the end of the outbound leg. */
export type BriefedHoldLeg =
  | { readonly by: "time"; readonly seconds: Seconds }
  | { readonly by: "distance"; readonly distance: NauticalMiles };

export interface HoldExercise extends ExerciseBase {
  readonly kind: "hold";
  readonly fix: Fix;
  /** The inbound course: through the fix, which is its origin, so that the holding pattern lies at negative `along`. */
  readonly course: Course;
  /** The inbound course as written or derived, for the words. Null where no variation is known. */
  readonly magnetic: MagneticDegrees | null;
  readonly variation: VariationUsed;
  readonly turns: TurnSide;
  /** Null where the brief leaves it to the standard. */
  readonly leg: BriefedHoldLeg | null;
}

/** A part of the circle at a constant distance from a station, from one of its radials to another. */
export interface ArcExercise extends ExerciseBase {
  readonly kind: "arc";
  /** The station in the middle. */
  readonly fix: Fix;
  readonly radius: NauticalMiles;
  /** True azimuths at the station. */
  readonly fromRadial: TrueDegrees;
  readonly toRadial: TrueDegrees;
  /** As written or derived, for the words. Null where no variation is known. */
  readonly fromMagnetic: MagneticDegrees | null;
  readonly toMagnetic: MagneticDegrees | null;
  readonly variation: VariationUsed;
  /** Right: clockwise, the station off the right wing. As written, else the shorter way. */
  readonly turns: TurnSide;
}

/** Down to a height, to be there so far before a fix. */
export interface DescentExercise extends ExerciseBase {
  readonly kind: "descent";
  readonly fix: Fix;
  readonly toAltitude: FeetMsl;
  /** Before passing the fix, along the way flown to it; 0 = at the fix. */
  readonly before: NauticalMiles;
}

/** A landing direction: from the threshold to the far end. */
export interface Runway {
  /** As in "22"; null where not written. */
  readonly ident: string | null;
  readonly threshold: Position;
  readonly end: Position;
  /** Of the threshold. NaN where not known: of a list without elevations; a brief always gives it. */
  readonly elevation: FeetMsl;
  /** Its length was not known, so that `end` tells the direction alone. */
  readonly lengthAssumed?: true;
}

/** What the lateral needle was set to. Null: not written, so that the standard's usual value holds. */
export interface Guidance {
  readonly kind: GuidanceKind;
  /** Whole width of a localizer. */
  readonly width: AngleSize | null;
  /** From a localizer's antenna to the threshold. */
  readonly antenna: Feet | null;
  /** The station of a VOR approach. */
  readonly station: Fix | null;
  readonly rnp: NauticalMiles | null;
}

/** Not lower than `altitude` until past a place so far before the threshold. */
export interface StepDown {
  readonly name: string;
  readonly distance: NauticalMiles;
  readonly altitude: FeetMsl;
}

export interface ApproachExercise extends ExerciseBase {
  readonly kind: "approach";
  readonly runway: Runway;
  /** The final approach course. Its origin is the threshold, or abeam it where the course passes beside. */
  readonly course: Course;
  readonly magnetic: MagneticDegrees | null;
  readonly variation: VariationUsed;
  readonly guidance: Guidance;
  readonly finalFix: Fix | null;
  readonly finalFixAltitude: FeetMsl | null;
  /** Null where no path is flown: level-offs and step-downs. `crossing`: height of the path over the threshold. */
  readonly glidePath: { readonly angle: AngleSize; readonly crossing: Feet } | null;
  /** `decision`: passed on the path; `descent`: not to be gone below before the visual segment. */
  readonly minimum: { readonly kind: "decision" | "descent"; readonly altitude: FeetMsl } | null;
  /** Farthest first. */
  readonly stepDowns: readonly StepDown[];
  /** Where a missed approach begins at the latest, before the threshold. */
  readonly missedPoint: NauticalMiles;
  readonly missedTo: Fix | null;
  /** Of the climb after a missed approach. */
  readonly missedCourse: { readonly azimuth: TrueDegrees; readonly magnetic: MagneticDegrees | null } | null;
}

export type Exercise = CourseExercise | HoldExercise | ArcExercise | DescentExercise | ApproachExercise;

export interface Brief {
  readonly title: string;
  readonly file: string;
  readonly source: "yaml" | "json" | "gpx-route" | "page";
  readonly aircraft: AirspeedPrior | null;
  readonly standard: string | null;
  readonly winds: readonly WindPrior[];
  readonly fixes: readonly Fix[];
  readonly exercises: readonly Exercise[];
  readonly issues: readonly Issue[];
}
