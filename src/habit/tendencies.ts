/** The tendencies that are looked for: one list. */
import { APPROACH_TENDENCIES } from "./approach-tendencies.ts";
import { COURSE_TENDENCIES } from "./course-tendencies.ts";
import { HOLD_TENDENCIES } from "./hold-tendencies.ts";
import { limitOf } from "./limit.ts";
import { shownAt, type Tendency, tendency } from "./tendency.ts";
import { TURN_TENDENCIES } from "./turn-tendencies.ts";

/** Chosen: at the usual 500 ft/min, 30 s late leaves 250 ft to lose at the point. */
const DESCENT_LATE = 30;
/** How well a log tells when a descent began, s: its beginning and its end are soft, which makes a tidy one some 7 s early, and heights come in steps. Chosen; tidy descents on simulation seeds 1 to 200. */
const BEGAN_95 = 11;

export const TENDENCIES: readonly Tendency[] = [
  ...COURSE_TENDENCIES,
  ...HOLD_TENDENCIES,
  ...APPROACH_TENDENCIES,
  ...TURN_TENDENCIES,
  /** Outside the arc positive. */
  tendency("arc", {
    id: "arc-outside",
    unit: "NM",
    oneSided: false,
    tolerance: limitOf("arc-distance"),
    measure: ({ facts }) =>
      facts && {
        ...{ value: facts.deviation.meanNm, doubt95: facts.deviation.doubt95Nm },
        at: shownAt(facts.deviation.maxUtc),
      },
  }),
  /** Begun later than the rate flown asked for positive: the very number that the sheet tells. */
  tendency("descent", {
    id: "descent-late",
    unit: "s",
    oneSided: false,
    tolerance: () => DESCENT_LATE,
    measure: ({ facts }) => {
      const late = facts?.constant.find(({ basis }) => basis === "as-flown")?.lateS ?? null;
      return late === null
        ? null
        : { value: late, doubt95: BEGAN_95, at: shownAt(facts?.began?.utc ?? null) };
    },
  }),
];
