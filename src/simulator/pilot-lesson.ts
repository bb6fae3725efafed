/** A short lesson as pilots with one habit each fly it, drawn anew for every flight: what the telling of habits is measured on. */
import { destination } from "../geodesy/index.ts";
import { direction, threeFigures } from "../quantity/angle.ts";
import { METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import type { MagneticDegrees } from "../quantity/units.ts";
import { DRAWN_MODELS } from "./models.ts";
import { atTarno, FIXES_YAML, TARNO } from "./orsa-vale.ts";
import { GOOD_HOLD } from "./patterns.ts";
import { draw, type Random, randomStream } from "./random.ts";
import type { Scenario } from "./scenario.ts";
import type { CourseStep, DescentStep, Habit, HoldSkill, HoldStep, Side, Step } from "./script.ts";

/** What each pilot does every time, with the sizes that a day draws. Sizes: common practice, no source. */
interface Ways {
  readonly course: (random: Random) => Habit;
  readonly hold: HoldSkill;
  /** How much later than asked a descent is begun, seconds. */
  readonly late: (random: Random) => number;
  readonly lateToLeft?: (random: Random) => number;
}

const TIDY: Ways = {
  course: (random) => ({ habit: "tidy", share: draw([0.9, 1.1], random), delay: draw([0, 15], random) }),
  hold: GOOD_HOLD,
  late: (random) => draw([-15, 15], random),
};
const drifting = (share: readonly [number, number]) => (random: Random) =>
  ({
    habit: "drifts",
    share: draw(share, random),
    correctsAt: draw([0.2, 0.4], random),
    cut: draw([12, 20], random),
  }) as const;

const WAYS = {
  "no-habit": TIDY,
  "sits-downwind": {
    ...TIDY,
    course: (random) => ({ habit: "beside", needle: draw([0.3, 0.5], random) }),
  },
  "half-the-correction": { ...TIDY, course: drifting([0.35, 0.65]) },
  "chases-the-needle": {
    ...TIDY,
    course: (random) => ({
      habit: "chases",
      share: draw([0.7, 1], random),
      period: draw([36, 50], random),
      cut: draw([10, 16], random),
    }),
  },
  "rolls-out-late-to-the-left": { ...TIDY, lateToLeft: (random) => draw([12, 20], random) },
  "outbound-parallel": { ...TIDY, hold: { ...GOOD_HOLD, factor: 1 } },
  "descends-late": { ...TIDY, late: (random) => draw([45, 90], random) },
} satisfies Readonly<Record<string, Ways>>;

export type PilotName = keyof typeof WAYS;
export const PILOTS = Object.keys(WAYS) as PilotName[];

const ALTITUDE = 3000;
const LOWER = 1800;
const AWAY_NM = 8;
/** Days of flying, in which a model of variation holds. */
const DAYS = 1000;
/** Side of the intercept of the first course, from it. */
const JOINS_FROM = 35;

const spoken = (magnetic: MagneticDegrees): string => threeFigures(magnetic);
const wholeDegrees = (random: Random): number => Math.floor(360 * random.uniform());

/**
 * To TARNO on one course, from it on another, down to a height before it on the way back, and a hold there of two laps,
 * with turns to the side that is asked for: about half an hour. `day` draws courses, wind, speed and the pilot's form.
 */
export function pilotLesson(pilot: PilotName, day: number, turns: Side): Scenario {
  const random = randomStream(day, "lesson");
  const ways: Ways = WAYS[pilot];
  const inbound = wholeDegrees(random);
  const outbound = direction(inbound + 180 * Math.round(random.uniform()) + draw([-60, 60], random));
  const radial = Math.round(outbound);
  const holding = wholeDegrees(random);
  const side = random.uniform() < 0.5 ? 1 : -1;
  const course = (
    form: "to" | "from",
    magnetic: MagneticDegrees,
    until: number,
    exercise: string,
  ): CourseStep => ({
    do: "course",
    form,
    fix: TARNO,
    course: atTarno(magnetic),
    until,
    cut: 30,
    scale: "vor",
    flown: ways.course(random),
    exercise,
  });
  const descent: DescentStep = {
    do: "descent",
    fix: TARNO,
    to: LOWER,
    before: 1,
    rate: 500,
    late: ways.late(random),
    exercise: "Descent to 1800 ft, 1 NM before TARNO",
  };
  const hold: HoldStep = {
    do: "hold",
    fix: TARNO,
    inbound: atTarno(holding),
    turns,
    leg: { seconds: 60 },
    laps: 2,
    skill: ways.hold,
    exercise: "Hold at TARNO",
  };
  const script: readonly Step[] = [
    { do: "heading", heading: direction(atTarno(inbound) - side * JOINS_FROM), seconds: 10 },
    course("to", inbound, 0.2, `Course ${spoken(inbound)}°M to TARNO`),
    course("from", radial, AWAY_NM, `Course ${spoken(radial)}°M from TARNO`),
    { do: "heading", heading: direction(atTarno(radial) + 180), seconds: 20 },
    descent,
    { do: "height", altitude: LOWER, rate: 500 },
    hold,
    { do: "heading", heading: direction(atTarno(holding)), seconds: 40 },
  ];
  return {
    name: `${pilot}-lesson`,
    about: "Two courses, a descent and a hold.",
    start: {
      // so far off the course that it is joined from the side drawn
      position: destination(
        destination(TARNO, atTarno(inbound) + 180, AWAY_NM * METRES_PER_NAUTICAL_MILE),
        atTarno(inbound) + side * 90,
        1.2 * METRES_PER_NAUTICAL_MILE,
      ),
      heading: direction(atTarno(inbound) - side * JOINS_FROM),
      altitude: ALTITUDE,
      time: Date.UTC(2026, 2, 1, 9, 0, 0) + (day % DAYS) * 86_400_000,
    },
    ...DRAWN_MODELS,
    wind: { ...DRAWN_MODELS.wind, speed: [8, 30] },
    pilot: {
      ...DRAWN_MODELS.pilot,
      ...(ways.lateToLeft ? { lateToLeft: ways.lateToLeft(random) } : {}),
    },
    script,
    brief: `brief: 1
title: Two courses, a descent and a hold
aircraft: { tas_kt: 105, tas_doubt_kt: 10, category: A }
standard: instrument-rating-us
${FIXES_YAML}exercises:
  - { course: ${inbound}, to: TARNO, scale: vor, altitude_ft: ${ALTITUDE} }
  - { course: ${radial}, from: TARNO, scale: vor, altitude_ft: ${ALTITUDE} }
  - { descent: TARNO, to_ft: ${LOWER}, before_nm: 1 }
  - { hold: TARNO, inbound: ${holding}, turns: ${turns}, leg: 1 min, altitude_ft: ${LOWER} }
`,
  };
}
