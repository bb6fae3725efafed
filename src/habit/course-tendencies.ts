/** What may come back on courses: the side, the wind, the lead, the chase, the intercept. */
import type { CourseFacts, CourseRecord } from "../debrief/document.ts";
import type { AngleSize, Seconds } from "../quantity/units.ts";
import { CHASED } from "../standard/tracking.ts";
import { chasedPerMinute } from "./chasing.ts";
import { limitOf } from "./limit.ts";
import { type Measured, shownAt, type Tendency, tendency, type WhyUntold } from "./tendency.ts";
import { A_THIRD, missingShare, whyNoShare } from "./wind-share.ts";

/** A correction that needs less is in the wander of the heading. Chosen: twice the 2 degrees of hand-flown wander. */
const LEAST_NEEDED: AngleSize = 4;
/** Below it neither side is upwind. Chosen: as far as a heading's own wander. */
const LEAST_WIND: AngleSize = 2;
/** Chosen: at 100 kt and 10 degrees off, a minute is 0.3 NM. */
const LEAD: Seconds = 60;

type Facts = (facts: CourseFacts) => Measured | null;

/** Only what a brief asked for: a fitted line is where it was flown. Within a mile of the station nothing is judged, so nothing is counted. */
const of =
  (measure: Facts) =>
  ({ source, facts }: CourseRecord): Measured | null =>
    source !== "brief" || !facts || facts.cannotTell.some(({ fact }) => fact === "needle")
      ? null
      : measure(facts);

const needleLimit = limitOf("course-needle");

const needle = ({ needle: { mean, doubt95, maxUtc } }: CourseFacts): Measured | null =>
  mean === undefined ? null : { value: mean, doubt95: Math.min(1, doubt95), at: shownAt(maxUtc) };

/** Downwind of the course positive. */
const downwind: Facts = (facts) => {
  const { windCorrection } = facts;
  const side = needle(facts);
  if (!windCorrection || !side) return null;
  const { neededDeg, doubt95Deg } = windCorrection;
  if (!(Math.abs(neededDeg) >= Math.max(LEAST_WIND, doubt95Deg))) return null;
  // a correction to the right is needed because the wind pushes to the left
  return { ...side, value: -Math.sign(neededDeg) * side.value };
};

const correction =
  (...forms: readonly CourseFacts["form"][]): Facts =>
  ({ form, windCorrection }) => {
    if (!forms.includes(form) || typeof windCorrection?.heldDeg !== "number") return null;
    const { heldDeg, neededDeg, doubt95Deg } = windCorrection;
    const missing = missingShare(heldDeg, neededDeg, doubt95Deg, LEAST_NEEDED);
    // an error of the wind moves held and needed alike: of a correction that is all there it moves nothing
    return missing && { ...missing, doubt95: missing.doubt95 * Math.min(1, Math.abs(missing.value)) };
  };

const noCorrection =
  (...forms: readonly CourseFacts["form"][]) =>
  ({ source, facts }: CourseRecord): WhyUntold | null => {
    if (source !== "brief" || !facts || !forms.includes(facts.form)) return null;
    const { neededDeg = null, doubt95Deg = null } = facts.windCorrection ?? {};
    return whyNoShare(neededDeg, doubt95Deg, LEAST_NEEDED);
  };

/**
 * The time that was drifted, for each correction that came: a drift that no correction ended counts with its time, for
 * as long as it is known, and short ones beside it lower nothing. Source: J. F. Lawless, *Statistical Models and Methods
 * for Lifetime Data* (1982), 3.1: the mean of times some of which are cut off, from memory. Where none was corrected the
 * time is a lower bound, and tells only when that is late already.
 */
const lead: Facts = ({ excursions }) => {
  let seconds = 0;
  let corrected = 0;
  let longest = { of: -1, at: shownAt(null) };
  for (const { correctedUtc, leadS, trackOffUtc, worstUtc, silence } of excursions) {
    const end = correctedUtc ?? silence?.fromUtc ?? worstUtc;
    const drifted = leadS ?? (Date.parse(silence?.fromUtc ?? worstUtc) - Date.parse(trackOffUtc)) / 1000;
    seconds += drifted;
    if (drifted > longest.of) longest = { of: drifted, at: shownAt(trackOffUtc, end) };
    if (leadS !== null) corrected++;
  }
  if (corrected === 0 && seconds < LEAD) return null;
  return { value: seconds / Math.max(1, corrected), doubt95: 0, at: longest.at };
};

const course = (
  id: string,
  unit: Tendency["unit"],
  tolerance: (exercise: CourseRecord) => number,
  measure: Facts,
  oneSided = false,
): Tendency => tendency("course", { id, unit, oneSided, tolerance, measure: of(measure) });

const corrections = (id: string, ...forms: readonly CourseFacts["form"][]): Tendency =>
  tendency("course", {
    ...{ id, unit: "part", oneSided: false },
    tolerance: () => A_THIRD,
    measure: of(correction(...forms)),
    untold: noCorrection(...forms),
  });

export const COURSE_TENDENCIES: readonly Tendency[] = [
  course("needle-side", "share", needleLimit, needle),
  course("needle-downwind", "share", needleLimit, downwind),
  corrections("correction-inbound", "to", "leg"),
  corrections("correction-outbound", "from"),
  course("first-correction", "s", () => LEAD, lead, true),
  course(
    "chasing",
    "per-min",
    () => CHASED.perMinute,
    ({ reversals, judged }) => reversals && chasedPerMinute(reversals.perMinute, judged.seconds),
    true,
  ),
  course(
    "intercept-overshoot",
    "share",
    needleLimit,
    ({ intercept, needle: { doubt95 } }) =>
      typeof intercept?.overshootNeedle === "number"
        ? {
            ...{ value: intercept.overshootNeedle, doubt95: Math.min(1, doubt95) },
            at: shownAt(intercept.startUtc, intercept.joinedUtc),
          }
        : null,
    true,
  ),
];
