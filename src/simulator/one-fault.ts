/** A lesson of four courses, or an approach, in which the pilot has one fault, or none: what the telling of causes is measured on. */
import { destination } from "../geodesy/index.ts";
import type { Position } from "../geodesy/position.ts";
import { METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import type { NauticalMiles } from "../quantity/units.ts";
import { drawnApproach } from "./approaches.ts";
import { DRAWN_MODELS, KNOWN_MODELS } from "./models.ts";
import { atTarno, BELVO, FIXES_YAML, KESTI, TARNO } from "./orsa-vale.ts";
import type { Scenario } from "./scenario.ts";
import type { CourseStep, Habit, Step } from "./script.ts";
import type { TurnOnto } from "./turn-onto.ts";

export const FAULTS = [
  "wind-uncorrected",
  "over-corrected",
  "chased",
  "rolled-out-off",
  "turned-late",
  "turned-early",
  "none",
] as const;
export type Fault = (typeof FAULTS)[number];

/** What every pilot here does unless it is the fault. Sizes of ordinary error: common practice, no source. */
const TIDY: Habit = { habit: "tidy", share: 1, delay: 0 };
const IN_TIME: TurnOnto = { late: [-3, 3], off: [0, 2], eitherSide: true, heldFor: 0 };

const waits = (share: number): Habit => ({
  habit: "waits",
  tidyFor: 100, // past the mile about the station, where nothing is judged
  share,
  correctsAt: 0.4,
  cut: 15,
  thenShare: 1,
});

/** Sizes: common practice, no source; each is one that an instructor would speak of. */
const HABITS: Readonly<Partial<Record<Fault, Habit>>> = {
  "wind-uncorrected": waits(0),
  "over-corrected": waits(2),
  chased: { habit: "chases", share: 1, period: 45, cut: 14 },
};
const TURNS: Readonly<Partial<Record<Fault, TurnOnto>>> = {
  "rolled-out-off": { late: [-3, 3], off: [8, 14], eitherSide: true, heldFor: [50, 80] },
  "turned-late": { late: [14, 22], off: [0, 2], eitherSide: true, heldFor: 10 },
  "turned-early": { late: [-22, -14], off: [0, 2], eitherSide: true, heldFor: [25, 40] },
};

/** So far out on the way to TARNO on a course, and so far to its right. */
function beside(course: number, out: NauticalMiles, right: NauticalMiles): Position {
  const on = destination(TARNO, atTarno(course) + 180, out * METRES_PER_NAUTICAL_MILE);
  return destination(on, atTarno(course) + 90, right * METRES_PER_NAUTICAL_MILE);
}

/** Courses 1 and 4 are joined from a cut, 2 goes on over the station, 3 begins at a fix. */
function script(fault: Fault): readonly Step[] {
  const flown = HABITS[fault] ?? TIDY;
  const joined = TURNS[fault] ?? IN_TIME;
  const course = (step: Pick<CourseStep, "form" | "fix" | "until" | "exercise"> & Partial<CourseStep>) =>
    ({ do: "course", cut: 35, scale: "vor", flown, ...step }) as const;
  return [
    { do: "turn", by: 360 },
    { do: "direct", to: beside(241, 17, -1.6), within: 0.3 },
    course({
      ...{ form: "to", fix: TARNO, course: atTarno(241), until: 0.2, joined },
      exercise: "Course 241°M to TARNO",
    }),
    course({
      ...{ form: "from", fix: TARNO, course: atTarno(270), until: 12.5 },
      exercise: "Course 270°M from TARNO",
    }),
    { do: "direct", to: BELVO, within: 0.6, turn: "right" },
    course({
      ...{ form: "leg", fix: KESTI, fromFix: BELVO, until: 0, scale: "rnav-1" },
      exercise: "Leg BELVO to KESTI",
    }),
    { do: "direct", to: beside(190, 14, 1.6), within: 0.3 },
    course({
      ...{ form: "to", fix: TARNO, course: atTarno(190), until: 0, joined },
      exercise: "Course 190°M to TARNO",
    }),
    { do: "heading", heading: 130, seconds: 40 },
  ];
}

/** Wind and receiver drawn anew for every seed. The fourth of the courses is 12 NM long, so that it can be joined. */
export const oneFault = (fault: Fault): Scenario => ({
  name: `one-fault-${fault}`,
  about: `Four courses; the one fault of the pilot: ${fault.replaceAll("-", " ")}.`,
  start: {
    position: { latitude: 35.79, longitude: 172.5 },
    heading: 90,
    altitude: 4000,
    time: Date.UTC(2026, 9, 17, 1, 12, 0),
  },
  ...DRAWN_MODELS,
  airspeed: KNOWN_MODELS.airspeed,
  wind: { ...DRAWN_MODELS.wind, speed: [8, 30], altitude: 4000, slow: { sd: 1.5, time: 900 }, shearRms: 1 },
  script: script(fault),
  brief: `brief: 1
title: Four courses
aircraft: { tas_kt: 100, tas_doubt_kt: 5 }
${FIXES_YAML}exercises:
  - { course: 241, to: TARNO, scale: vor, altitude_ft: 4000 }
  - { course: 270, from: TARNO, scale: vor, altitude_ft: 4000 }
  - { leg: [BELVO, KESTI], scale: rnav-1, altitude_ft: 4000 }
  - { course: 190, to: TARNO, scale: vor, altitude_ft: 4000 }
`,
});

/** On a final the habit comes up so long after it was joined, and the needle says so at so much of its scale. Common practice, no source. */
const ON_FINAL = { tidyFor: 45, correctsAt: 0.55 } as const;
/** ... and is chased in shorter swings. */
const CHASED_ON_FINAL: Habit = { habit: "chases", share: 1, period: 40, cut: 12 };

/** A localizer approach from either side; wind, receiver, heights and speeds drawn anew for every seed. */
export function oneFaultFinal(fault: Fault, side: 1 | -1): Scenario {
  const drawn = drawnApproach("landing", undefined, side);
  const habit = HABITS[fault] ?? TIDY;
  const flown =
    habit.habit === "waits" ? { ...habit, ...ON_FINAL } : habit.habit === "chases" ? CHASED_ON_FINAL : habit;
  const turn = TURNS[fault] ?? IN_TIME;
  return {
    ...drawn,
    name: `one-fault-final-${fault}`,
    about: `A final; the one fault of the pilot: ${fault.replaceAll("-", " ")}.`,
    wind: { ...drawn.wind, speed: [8, 30] },
    // at the height of the final until the way down
    start: {
      ...drawn.start,
      altitude: drawn.script.reduce((h, s) => (s.do === "approach" ? s.fixAltitude : h), 0),
    },
    script: [
      { do: "turn", by: side * 360 },
      ...drawn.script.map((step) =>
        step.do === "approach" ? { ...step, flown, join: { ...step.join, turn } } : step,
      ),
    ],
  };
}
