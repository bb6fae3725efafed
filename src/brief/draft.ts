/** A brief as read: checked, but with directions as written and clock times without a date. */
import type { Issue, Where } from "../quantity/issue.ts";
import type { AirspeedPrior, WindPrior } from "../quantity/prior.ts";
import type { FeetMsl, NauticalMiles } from "../quantity/units.ts";
import type { TurnSide } from "../standard/holding.ts";
import type { NeedleScale } from "../standard/needle.ts";
import type { ApproachExercise, Brief, BriefedHoldLeg, Fix } from "./brief.ts";
import type { WrittenDirection } from "./direction.ts";

interface DraftBase {
  readonly title: string;
  /** Clock times in UTC, as written. */
  readonly between: { readonly start: string; readonly end: string } | null;
  readonly altitude: FeetMsl | null;
  /** Where the exercise is written. */
  readonly where: Where;
}

export interface DraftCourse extends DraftBase {
  readonly kind: "course";
  readonly form: "to" | "from";
  readonly fix: Fix;
  readonly course: WrittenDirection;
  readonly scale: NeedleScale;
}

export interface DraftLeg extends DraftBase {
  readonly kind: "leg";
  readonly fromFix: Fix;
  readonly fix: Fix;
  readonly scale: NeedleScale;
}

export interface DraftHold extends DraftBase {
  readonly kind: "hold";
  readonly fix: Fix;
  readonly inbound: WrittenDirection;
  readonly turns: TurnSide;
  readonly leg: BriefedHoldLeg | null;
}

export interface DraftArc extends DraftBase {
  readonly kind: "arc";
  readonly fix: Fix;
  readonly radius: NauticalMiles;
  readonly fromRadial: WrittenDirection;
  readonly toRadial: WrittenDirection;
  /** Null where the brief leaves it to the shorter way. */
  readonly turns: TurnSide | null;
}

export interface DraftDescent extends DraftBase {
  readonly kind: "descent";
  readonly fix: Fix;
  readonly toAltitude: FeetMsl;
  readonly before: NauticalMiles;
}

/** As the exercise, but for the final course: as written, or along the runway where it is null. */
export interface DraftApproach
  extends DraftBase,
    Omit<ApproachExercise, keyof DraftBase | "index" | "course" | "magnetic" | "variation" | "missedCourse"> {
  readonly course: WrittenDirection | null;
  readonly missedCourse: WrittenDirection | null;
}

export type DraftExercise = DraftCourse | DraftLeg | DraftHold | DraftArc | DraftDescent | DraftApproach;

export interface BriefDraft {
  readonly title: string;
  readonly file: string;
  readonly source: Brief["source"];
  readonly aircraft: AirspeedPrior | null;
  readonly standard: string | null;
  readonly winds: readonly WindPrior[];
  readonly fixes: readonly Fix[];
  readonly exercises: readonly DraftExercise[];
  readonly issues: readonly Issue[];
}
