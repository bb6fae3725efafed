/** Two more lessons in the Orsa Vale: arcs round TARNO in a wind, and descents to a height before a fix. */
import { KNOWN_MODELS } from "./models.ts";
import { atTarno, BELVO, FIXES_YAML, KESTI, TARNO } from "./orsa-vale.ts";
import type { Scenario } from "./scenario.ts";
import type { ArcStep, CourseStep, Habit, Step } from "./script.ts";

const tidy: Habit = { habit: "tidy", share: 1, delay: 0 };
const TIME = Date.UTC(2026, 9, 18, 1, 5, 0);

const radial = (
  form: "to" | "from",
  magnetic: number,
  until: number,
  exercise: string | null = null,
): CourseStep => ({
  do: "course",
  form,
  fix: TARNO,
  course: atTarno(magnetic),
  until,
  cut: 30,
  scale: "vor",
  flown: tidy,
  exercise,
});

const arc = (
  from: number,
  to: number,
  step: Pick<ArcStep, "turns" | "flown" | "lead"> & Partial<ArcStep>,
): ArcStep => ({
  do: "arc",
  station: TARNO,
  radius: 10,
  fromRadial: atTarno(from),
  toRadial: atTarno(to),
  leaves: "inbound",
  exercise: `Arc 10 NM around TARNO, radials ${String(from).padStart(3, "0")}°M to ${String(to).padStart(3, "0")}°M`,
  ...step,
});

const ARCS: readonly Step[] = [
  { do: "heading", heading: 300, seconds: 40 },
  radial("from", 300, 9.5, "Course 300°M from TARNO"),
  // the wind is left alone on the first arc, and it is left late; the second is flown as it should be
  arc(300, 350, {
    turns: "right",
    flown: { habit: "waits", share: 0, correctsAt: 0.8, cut: 20, thenShare: 1 },
    lead: 1.5,
  }),
  radial("to", 170, 0, "Course 170°M to TARNO"),
  radial("from", 120, 9.4),
  arc(120, 70, { turns: "left", flown: { habit: "tidy", share: 1 }, pieces: 10, lead: 4.5 }),
  radial("to", 250, 0.3),
  { do: "heading", heading: 252, seconds: 60 },
];

const DESCENTS: readonly Step[] = [
  { do: "heading", heading: 245, seconds: 60 },
  {
    do: "descent",
    fix: BELVO,
    to: 1800,
    before: 1,
    rate: 500,
    late: 70,
    exercise: "Descent to 1800 ft, 1 NM before BELVO",
  },
  { do: "height", altitude: 1800, rate: 500 },
  { do: "heading", heading: 250, seconds: 60 },
  { do: "height", altitude: 4000, rate: 600 },
  { do: "heading", heading: 70, seconds: 5, turn: "right" },
  {
    do: "descent",
    fix: KESTI,
    to: 2000,
    before: 2,
    rate: 600,
    late: 0,
    exercise: "Descent to 2000 ft, 2 NM before KESTI",
  },
  { do: "heading", heading: 70, seconds: 30 },
  { do: "height", altitude: 4000, rate: 700 },
  { do: "heading", heading: 185, seconds: 5, turn: "right" },
  {
    do: "descent",
    fix: TARNO,
    to: 2600,
    before: 0,
    rate: 500,
    late: 0,
    levelOff: { at: 3300, seconds: 60 },
    exercise: "Descent to 2600 ft, at TARNO",
  },
  { do: "height", altitude: 2600, rate: 500 },
  { do: "heading", heading: 190, seconds: 120 },
];

const head = (title: string): string => `brief: 1
title: ${title}
aircraft: { tas_kt: 100, tas_doubt_kt: 5, category: A }
standard: instrument-rating-us
${FIXES_YAML}exercises:
`;

export const ARC_AND_DESCENT_LESSONS: Readonly<Record<string, Scenario>> = {
  "arc-to-a-radial": {
    name: "arc-to-a-radial",
    about: "Two arcs: on the first the wind carries the aircraft outside, and the turn off it comes late.",
    start: {
      position: { latitude: 35.587, longitude: 172.325 },
      heading: 300,
      altitude: 3000,
      time: TIME,
    },
    ...KNOWN_MODELS,
    wind: { from: 145, speed: 22, altitude: 3000, slow: { sd: 1, time: 900 }, shearRms: 1, gusts: null },
    script: ARCS,
    brief: `${head("Lesson 9, arcs")}  - { course: 300, from: TARNO, scale: vor, altitude_ft: 3000 }
  - { arc: TARNO, radius_nm: 10, from_radial: 300, to_radial: 350, altitude_ft: 3000 }
  - { course: 170, to: TARNO, scale: vor, altitude_ft: 3000 }
  - { arc: TARNO, radius_nm: 10, from_radial: 120, to_radial: 070, altitude_ft: 3000 }
`,
  },
  "descent-begun-late": {
    name: "descent-begun-late",
    about: "Three descents to a height before a fix: begun late, begun in time, and held up by a level-off.",
    start: { position: { latitude: 35.8, longitude: 172.4 }, heading: 245, altitude: 4000, time: TIME },
    ...KNOWN_MODELS,
    wind: { from: 60, speed: 18, altitude: 3000, slow: { sd: 1, time: 900 }, shearRms: 1, gusts: null },
    script: DESCENTS,
    brief: `${head("Lesson 10, descents to a fix")}  - { descent: BELVO, to_ft: 1800, before_nm: 1 }
  - { descent: KESTI, to_ft: 2000, before_nm: 2 }
  - { descent: TARNO, to_ft: 2600 }
`,
  },
};
