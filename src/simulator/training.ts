/** An hour of training: climbs, courses, holds, approaches and changes of speed, in air drawn anew for every seed. */
import { destination } from "../geodesy/index.ts";
import { METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import type { NauticalMiles } from "../quantity/units.ts";
import { DRAWN_MODELS } from "./models.ts";
import { atTarno, BELVO, KESTI, LINDHOLT_22, RUNWAY_22, TARNO } from "./orsa-vale.ts";
import { GOOD_HOLD, holdAtTarno, procedureTurn } from "./patterns.ts";
import type { Scenario } from "./scenario.ts";
import type { CourseStep, Habit, Step } from "./script.ts";

const tidy: Habit = { habit: "tidy", share: 1, delay: 20 };
const course = (
  step: Pick<CourseStep, "form" | "fix" | "until" | "exercise"> & Partial<CourseStep>,
): CourseStep => ({ do: "course", cut: 30, scale: "vor", flown: tidy, ...step });

/** On the extended centre line, so many miles before the threshold. */
const onFinal = (miles: NauticalMiles) =>
  destination(LINDHOLT_22, RUNWAY_22 + 180, miles * METRES_PER_NAUTICAL_MILE);

/** Down to 300 ft above the threshold, then up and away. 3 degrees at 100 kt is 530 ft/min. */
const approach = (title: string): readonly Step[] => [
  { do: "direct", to: onFinal(9), within: 0.7 },
  { do: "speed", share: [0.85, 0.9] },
  course({ form: "to", fix: LINDHOLT_22, course: RUNWAY_22, until: 5.5, exercise: null, scale: "localizer" }),
  { do: "height", altitude: 720, rate: 530 },
  course({ form: "to", fix: LINDHOLT_22, course: RUNWAY_22, until: 0, exercise: title, scale: "localizer" }),
  { do: "height", altitude: 3000, rate: 600 },
  { do: "speed", share: [0.78, 0.85] },
  { do: "heading", heading: RUNWAY_22, seconds: 40 },
];

export const TRAINING: Scenario = {
  name: "hour-of-training",
  about:
    "A climb, radials, a hold, a leg, a procedure turn, two approaches, with changes of speed and height.",
  start: {
    position: LINDHOLT_22,
    heading: RUNWAY_22,
    altitude: 600,
    time: Date.UTC(2026, 9, 17, 3, 0, 0),
  },
  ...DRAWN_MODELS,
  script: [
    { do: "speed", share: [0.78, 0.85] },
    { do: "height", altitude: 3000, rate: 600 },
    { do: "heading", heading: RUNWAY_22, seconds: 60 },
    { do: "direct", to: TARNO, within: 3 },
    { do: "speed", share: 1 },
    holdAtTarno("right", 2, GOOD_HOLD),
    { do: "height", altitude: 4000, rate: 500 },
    course({ form: "from", fix: TARNO, course: atTarno(300), until: 7, exercise: "Course 300°M from TARNO" }),
    { do: "direct", to: BELVO, within: 0.6 },
    { do: "speed", share: [1.05, 1.15] },
    course({
      form: "leg",
      fix: KESTI,
      fromFix: BELVO,
      until: 0.3,
      exercise: "Leg BELVO to KESTI",
      scale: "rnav-1",
    }),
    { do: "speed", share: [0.9, 0.95] },
    { do: "height", altitude: 2500, rate: 500 },
    ...procedureTurn(100, "left"),
    ...approach("First approach, runway 22"),
    { do: "speed", share: 1 },
    { do: "turn", by: 360 },
    ...approach("Second approach, runway 22"),
  ],
  brief: null,
};
