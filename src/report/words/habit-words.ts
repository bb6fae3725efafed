/** What each tendency is called, and what one says of it: kind, plain, exact. */

export interface HabitWords {
  readonly title: string;
  /** The sides of the panel: values above 0, and below. */
  readonly more: string;
  readonly less: string;
  /** `size` comes with its unit; `more`: above 0. Begins small, ends without a stop. */
  readonly says: (size: string, more: boolean) => string;
  readonly practise: string;
  /** Whose tolerance counts as 1. */
  readonly from: string;
  /** What it is the mean of, where that is not plain; ends without a stop. */
  readonly over?: string;
}

const otherwise = (limit: string) =>
  `the limit of the standard; ${limit} where it sets none or none is named`;
const NEEDLE = otherwise("¾ of full scale (FAA-S-ACS-8C V.A.S6)");
const FINAL = otherwise("¾ of full scale (FAA-S-ACS-8C VI.A.S12, VI.B.S12)");
const CHOSEN = "chosen here";
/** As `course/held-correction.ts` measures it. */
const HELD =
  "the mean over the whole judged course, less the times in which the track leads back to it: what is flown there with the right correction makes it smaller than it is at the worst";
const CORRECTION =
  "before the course is joined, work out the correction from the forecast wind, fly that heading for two minutes and judge it by the track, not by the needle.";

const missing =
  (where: string) =>
  (size: string, more: boolean): string =>
    more
      ? `${where}, on average ${size} of the wind correction is missing`
      : `${where}, the wind is on average corrected by ${size} too much`;

const share = { more: "too little", less: "too much" };
const past = { more: "past", less: "short" };

function rolledOut(side: "left" | "right"): HabitWords {
  const turns = `${side === "left" ? "Left" : "Right"} turns`;
  return {
    title: `Roll-out of ${side} turns`,
    ...past,
    says: (size, more) =>
      `${turns.toLowerCase()} are rolled out ${size} ${more ? "past" : "short of"} the direction that is held after them`,
    practise: `turns to the ${side} onto headings called out beforehand; begin the roll-out half the bank angle before the heading.`,
    from: "±10° of heading, FAA-S-ACS-8C IV.A (from memory)",
  };
}

function rolledOutPast(side: "left" | "right"): HabitWords {
  return {
    title: `Inbound turn, holds to the ${side}`,
    ...past,
    says: (size, more) =>
      `in holds with ${side} turns the inbound turn ends ${size} ${more ? "past" : "short of"} the inbound course`,
    practise: `three laps with ${side} turns; solve the racetrack first, and compare where the inbound turn ends.`,
    from: CHOSEN,
  };
}

export const HABIT_WORDS: Readonly<Record<string, HabitWords>> = {
  "needle-side": {
    title: "Side of the course",
    more: "right",
    less: "left",
    says: (size, more) =>
      `courses are flown ${size} to the ${more ? "right" : "left"} of the course on average`,
    practise: "one course with the needle brought to the middle, then kept there; do not settle beside it.",
    from: NEEDLE,
  },
  "needle-downwind": {
    title: "Downwind of the course",
    more: "downwind",
    less: "upwind",
    says: (size, more) =>
      `courses are flown ${size} ${more ? "downwind" : "upwind"} of the course on average`,
    practise:
      "get back onto the course first, then hold the heading that keeps it; a needle that stands still beside the course is not on it.",
    from: NEEDLE,
  },
  "correction-inbound": {
    title: "Wind correction inbound",
    ...share,
    says: missing("inbound to a fix"),
    practise: CORRECTION,
    from: CHOSEN,
    over: HELD,
  },
  "correction-outbound": {
    title: "Wind correction outbound",
    ...share,
    says: missing("outbound from a fix"),
    practise: CORRECTION,
    from: CHOSEN,
    over: HELD,
  },
  "first-correction": {
    title: "Lead before the first correction",
    more: "late",
    less: "early",
    says: (size) => `the first correction comes ${size} after the track has turned off`,
    practise:
      "needle covered, hold a course by the track alone for five minutes; uncover it, and see how far off it is.",
    from: CHOSEN,
  },
  chasing: {
    title: "Chasing the needle",
    more: "often",
    less: "",
    says: (size) => `the needle is chased, with ${size} reversals of the track`,
    practise: "one correction, a heading held for a whole minute, then a look; no turn in between.",
    from: CHOSEN,
  },
  "intercept-overshoot": {
    title: "Intercepts",
    more: "past",
    less: "",
    says: (size) => `intercepts go ${size} past the course`,
    practise: "name the lead before each intercept, and begin the turn at it; half the cut where it is late.",
    from: NEEDLE,
  },
  "hold-outbound": {
    title: "Wind correction outbound in holds",
    ...share,
    says: missing("outbound in holds"),
    practise:
      "solve the racetrack before the entry (heading and seconds), fly three laps, and compare where the inbound turn ends.",
    from: CHOSEN,
  },
  "hold-inbound": {
    title: "Wind correction inbound in holds",
    ...share,
    says: missing("inbound in holds"),
    practise:
      "note the heading that holds the inbound course on the first lap, and take it up at once on the next.",
    from: CHOSEN,
  },
  "roll-out-left": rolledOut("left"),
  "roll-out-right": rolledOut("right"),
  "roll-out-past-left": rolledOutPast("left"),
  "roll-out-past-right": rolledOutPast("right"),
  "leg-time": {
    title: "Timed legs of holds",
    more: "long",
    less: "short",
    says: (size, more) => `the timed legs of holds are ${size} too ${more ? "long" : "short"}`,
    practise: "time each leg aloud, and change the next outbound leg by what the inbound one was off.",
    from: otherwise("10 s (common practice, no source)"),
  },
  "final-side": {
    title: "Side of the final course",
    more: "right",
    less: "left",
    says: (size, more) =>
      `final approaches are flown ${size} to the ${more ? "right" : "left"} of the course on average`,
    practise:
      "join the final early enough to find the heading that holds it before the descent begins, and change it by no more than a few degrees after.",
    from: FINAL,
  },
  "final-path": {
    title: "Glide path",
    more: "above",
    less: "below",
    says: (size, more) => `the glide path is flown ${size} ${more ? "above" : "below"} its middle on average`,
    practise:
      "work out the rate of descent from the ground speed before the final fix, set it there, and correct from it by 100 ft/min at a time.",
    from: FINAL,
  },
  "final-intercept": {
    title: "Intercepts of the final course",
    more: "past",
    less: "",
    says: (size) => `intercepts of the final course go ${size} past it`,
    practise: "half the cut when the needle moves off its stop, and begin the turn with it.",
    from: FINAL,
  },
  "final-chasing": {
    title: "Chasing on final",
    more: "often",
    less: "",
    says: (size) => `on final the needle is chased, with ${size} reversals of the track`,
    practise: "one heading a minute: bracket the final course with three headings and no more.",
    from: CHOSEN,
  },
  "arc-outside": {
    title: "Arcs",
    more: "outside",
    less: "inside",
    says: (size, more) => `arcs are flown ${size} ${more ? "outside" : "inside"} their radius on average`,
    practise:
      "an arc in pieces of ten degrees: a heading a little inside the tangent, corrected for the wind at each.",
    from: otherwise("±1 NM (FAA-S-ACS-8C V.A.S6)"),
  },
  "descent-late": {
    title: "Descents begun",
    more: "late",
    less: "early",
    says: (size, more) =>
      `descents are begun ${size} too ${more ? "late" : "early"} for the rate that is flown`,
    practise:
      "before each descent say the miles: height to lose over the gradient, and the seconds at that ground speed.",
    from: CHOSEN,
  },
};
