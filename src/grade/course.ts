/** The criteria of a course: the needle, and the height. */
import type { CourseFacts } from "../course/facts.ts";
import { altitudeCriteria } from "./altitude.ts";
import { secondsBeyond } from "./beyond.ts";
import type { Criterion, Found } from "./criterion.ts";
import { partReason } from "./part.ts";

/** A course never established on was not flown, however small the part of it that was judged strayed; of one that may have been drifted off for good the rest is not known. */
const wholeUnless = (facts: CourseFacts): string | null =>
  facts.neverEstablished
    ? "never-established"
    : (partReason(facts) ?? (facts.turnedAside ? "turned-aside" : null));

/** Along the course before what is judged: in the time that the brief gives, or in a drift from the course that came before it was established on. */
function since({ judged: { fromUtc }, beforeEstablished: before, beforeJoining }: CourseFacts) {
  if (before) return { part: { fromUtc, before: Math.abs(before.worstNeedle) } };
  const drifted = beforeJoining?.drifted;
  if (!drifted) return {};
  return { part: { fromUtc, before: Math.abs(drifted.needle), why: "drifted-before-established" } };
}

export const COURSE_CRITERIA: readonly Criterion<CourseFacts>[] = [
  {
    id: "course-needle",
    title: "Needle, worst",
    unit: "share",
    limit: ({ course }) => course.needle,
    find(facts, limit, { course }): Found {
      const untold = facts.cannotTell.find(({ fact }) => fact === "needle");
      if (untold) return { cannotTell: untold.reason };
      const { max, doubt95, maxUtc: worstUtc, unseen } = facts.needle;
      const found = {
        value: Math.abs(max),
        doubt95,
        beyond: secondsBeyond(limit, facts.needle, facts.judged),
        worstUtc,
        unseen,
        notWhole: wholeUnless(facts),
        ...since(facts),
      };
      if (!course.briefly || facts.scale.kind === "angular") return found;
      return { ...found, leave: { upTo: course.briefly.limit } };
    },
  },
  ...altitudeCriteria<CourseFacts>(
    "course",
    ({ course }) => course.altitude,
    (facts) => facts.altitude,
    partReason,
  ),
];
