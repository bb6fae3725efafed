/** The criteria of a course: the needle, and the height. */
import type { CourseFacts } from "../course/facts.ts";
import type { Seconds, Share } from "../quantity/units.ts";
import { altitudeCriteria } from "./altitude.ts";
import type { Criterion, Found } from "./criterion.ts";

/** Time that the needle spent beyond a share, where the facts count that. */
function beyond({ needle, judged }: CourseFacts, limit: Share): Seconds | null {
  const counted: [Share, Share][] = [
    [0.25, needle.beyondQuarter],
    [0.5, needle.beyondHalf],
    [0.75, needle.beyondThreeQuarter],
    [1, needle.beyondFull],
  ];
  const [, share] = counted.find(([of]) => of === limit) ?? [];
  return share === undefined || judged.seconds === null ? null : share * judged.seconds;
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
      const { beforeEstablished: before } = facts;
      const part = before
        ? { part: { fromUtc: facts.judged.fromUtc, before: Math.abs(before.worstNeedle) } }
        : {};
      const found = {
        value: Math.abs(max),
        doubt95,
        beyond: beyond(facts, limit),
        worstUtc,
        unseen,
        ...part,
      };
      if (!course.briefly || facts.scale.kind === "angular") return found;
      return { ...found, leave: { upTo: course.briefly.limit } };
    },
  },
  ...altitudeCriteria<CourseFacts>(
    "course",
    ({ course }) => course.altitude,
    (facts) => facts.altitude,
  ),
];
