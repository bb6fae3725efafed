/** The door of the approach wing: facts of an approach as flown, and finals found where there is no brief. */
export { groundNear } from "./below-limits.ts";
export { aboveMinimum, downToMinimum } from "./far-above.ts";
export { type FoundApproach, findApproaches, type KnownRunway, runwaysNear } from "./find.ts";
export { type ApproachMeasured, type ApproachToMeasure, measureApproach } from "./measure.ts";
export type { ApproachPath } from "./rows.ts";
