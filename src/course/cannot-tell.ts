/** What a log cannot tell of a course, and why, as codes: said, never guessed. */
import type { CorrectionMeasured } from "../wind/index.ts";
import type { WindFact } from "../wind/wind.ts";
import type { CourseFacts } from "./facts.ts";
import type { Judged } from "./judged.ts";
import type { Rows } from "./path.ts";

export type CannotTell = CourseFacts["cannotTell"][number];

const TIME_FACTS = [
  "trackAngleError",
  "groundSpeed",
  "intercept",
  "excursions",
  "reversals",
  "wind",
] as const;
const WIND_FACTS = ["drift", "windCorrection", "whatWouldHaveWorked"] as const;

/** Reasons that lie in the log itself. */
export function wholeReasons(rows: Rows, judged: Judged, withoutHeight: boolean): CannotTell[] {
  return [
    ...(rows.timed ? [] : TIME_FACTS.map((fact) => ({ fact, reason: "no-times" }))),
    ...(judged.allNearStation ? [{ fact: "needle", reason: "all-near-station" }] : []),
    ...(withoutHeight ? [{ fact: "altitude", reason: "no-height" }] : []),
  ];
}

/** Reasons that lie in the wind: `full` knowledge with a correction measured gives none. */
export function correctionFacts(
  rows: Rows,
  wind: WindFact | null,
  measured: CorrectionMeasured | null,
): CannotTell[] {
  if (measured) return [];
  let reason = "wind-not-known";
  if (!rows.timed) reason = "no-times";
  else if (wind?.knowledge === "along") reason = "wind-along-only";
  return WIND_FACTS.map((fact) => ({ fact, reason }));
}
