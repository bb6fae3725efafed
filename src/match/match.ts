/** When each exercise of the brief was flown, and how sure that is. */
import type { Span } from "../quantity/span.ts";
import type { Share } from "../quantity/units.ts";

export interface Match {
  /** Index of the exercise in the brief. */
  readonly exercise: number;
  /**
   * Rows of the path, from the intercept that leads onto the course to the fix or the turn away. Null where the
   * exercise was not found, or its window lies outside the flight.
   */
  readonly span: Span | null;
  readonly by: "between" | "geometry";
  /**
   * 1 = the brief gives the times. By geometry: how well the run fits (how much of it was flown, how near, how
   * well aligned, as a product of shares), halved as far as another run fits as well in the same place of the
   * brief's order. A well-flown course has about 0.8 or more, one flown 2 NM off about half. 0 where the span is null.
   */
  readonly confidence: Share;
  /** Of an approach or a course: where else on the flight it was flown, in flown order, and belongs to no exercise; missing where nowhere. */
  readonly again?: readonly Span[];
  /** With `again`: how many exercises of the brief are this approach and were flown, this one among them. */
  readonly asked?: number;
  /** With `again`: this is the last that was flown whole, from the final fix to close in; else it is the one that fits best. */
  readonly lastWhole?: boolean;
}
