/** The door of the only opinion: facts and a standard in, verdicts out. */
import type { ApproachFacts } from "../approach/facts.ts";
import type { ArcFacts } from "../course/arc-facts.ts";
import type { DescentFacts } from "../course/descent-facts.ts";
import type { CourseFacts } from "../course/facts.ts";
import type { HoldFacts } from "../hold/facts.ts";
import type { TestStandard } from "../standard/test-standard.ts";
import { TEST_STANDARDS } from "../standard/tolerance.ts";
import { APPROACH_CRITERIA } from "./approach.ts";
import { ARC_CRITERIA } from "./arc.ts";
import { COURSE_CRITERIA } from "./course.ts";
import { judge } from "./criterion.ts";
import { DESCENT_CRITERIA } from "./descent.ts";
import { HOLD_CRITERIA, HOLD_FOUND_CRITERIA, HOLD_NOT_FLOWN } from "./hold.ts";
import type { Verdict } from "./verdict.ts";

/** The published standard that a brief names by its id, or null. */
export const standardNamed = (id: string): TestStandard | null =>
  TEST_STANDARDS.find((standard) => standard.id === id) ?? null;

/** The verdicts of a course; all of them "not flown" without facts, none for a line that was only fitted. */
export function gradeCourse(facts: CourseFacts | null, standard: TestStandard): Verdict[] {
  return facts?.form === "fitted" ? [] : judge(COURSE_CRITERIA, facts, standard);
}

/** The verdicts of a hold; of one that no brief asked for only what needs no published course, and of a single lap, which may be no hold, none; without facts one line, "not flown". */
export function gradeHold(facts: HoldFacts | null, standard: TestStandard): Verdict[] {
  if (!facts) return judge(HOLD_NOT_FLOWN, null, standard);
  if (facts.loneLap) return [];
  const found = facts.fix.doubt95Nm !== null;
  return judge(found ? HOLD_FOUND_CRITERIA : HOLD_CRITERIA, facts, standard);
}

export const gradeArc = (facts: ArcFacts | null, standard: TestStandard): Verdict[] =>
  judge(ARC_CRITERIA, facts, standard);

export const gradeDescent = (facts: DescentFacts | null, standard: TestStandard): Verdict[] =>
  judge(DESCENT_CRITERIA, facts, standard);

/** The verdicts of an approach that a brief asked for: which of its criteria it is held to, the facts say; without facts one line, "not flown". */
export const gradeApproach = (facts: ApproachFacts | null, standard: TestStandard): Verdict[] =>
  judge(facts ? APPROACH_CRITERIA : APPROACH_CRITERIA.slice(0, 1), facts, standard);
