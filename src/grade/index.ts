/** The door of the only opinion: facts and a standard in, verdicts out. */
import type { CourseFacts } from "../course/facts.ts";
import { TEST_STANDARDS, type TestStandard } from "../standard/tolerance.ts";
import { COURSE_CRITERIA } from "./course.ts";
import { judge } from "./criterion.ts";
import type { Verdict } from "./verdict.ts";

/** The published standard that a brief names by its id, or null. */
export const standardNamed = (id: string): TestStandard | null =>
  TEST_STANDARDS.find((standard) => standard.id === id) ?? null;

/** The verdicts of a course; all of them "not flown" without facts, none for a line that was only fitted. */
export function gradeCourse(facts: CourseFacts | null, standard: TestStandard): Verdict[] {
  return facts?.form === "fitted" ? [] : judge(COURSE_CRITERIA, facts, standard);
}
