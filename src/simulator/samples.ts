/** Three lessons in the Orsa Vale, each a case of its own: the samples that ship with the project. */
import { KNOWN_MODELS } from "./models.ts";
import { atTarno, BELVO, FIXES_YAML, KESTI, TARNO } from "./orsa-vale.ts";
import type { Scenario } from "./scenario.ts";
import type { Habit, Step } from "./script.ts";

const START: Scenario["start"] = {
  position: { latitude: 35.785, longitude: 172.578 },
  heading: 153.5,
  altitude: 4000,
  time: Date.UTC(2026, 9, 17, 1, 12, 0),
};

const brief = (title: string): string => `brief: 1
title: ${title}
aircraft: { tas_kt: 100, tas_doubt_kt: 5, category: A }
standard: instrument-rating-us
${FIXES_YAML}exercises:
  - { course: 241, to: TARNO, scale: vor, altitude_ft: 4000 }
  - { course: 270, from: TARNO, scale: vor, altitude_ft: 4000 }
  - { leg: [BELVO, KESTI], scale: rnav-1, altitude_ft: 4000 }
  - { course: 190, to: TARNO, scale: vor, altitude_ft: 4000 }
`;

/** The same lesson each time; what differs is how each of its four courses is flown. */
function lesson(
  inbound: Habit,
  outbound: Habit,
  leg: Habit,
  last: Habit,
  away: { readonly heading: number; readonly seconds: number },
): readonly Step[] {
  const cut = 30;
  return [
    { do: "heading", heading: 153.5, seconds: 75 },
    {
      do: "course",
      form: "to",
      fix: TARNO,
      course: atTarno(241),
      until: 0.2, // leads the turn
      cut,
      scale: "vor",
      flown: inbound,
      exercise: "Course 241°M to TARNO",
    },
    {
      do: "course",
      form: "from",
      fix: TARNO,
      course: atTarno(270),
      until: 12.5,
      cut,
      scale: "vor",
      flown: outbound,
      exercise: "Course 270°M from TARNO",
    },
    { do: "direct", to: BELVO, within: 0.6, turn: "right" },
    {
      do: "course",
      form: "leg",
      fix: KESTI,
      fromFix: BELVO,
      until: 0,
      cut,
      scale: "rnav-1",
      flown: leg,
      exercise: "Leg BELVO to KESTI",
    },
    { do: "heading", ...away },
    {
      do: "course",
      form: "to",
      fix: TARNO,
      course: atTarno(190),
      until: 0,
      cut,
      scale: "vor",
      flown: last,
      exercise: "Course 190°M to TARNO",
    },
    { do: "heading", heading: 130, seconds: 40 },
  ];
}

/** After the leg to KESTI, away from the last course so that it is joined from its right. */
const RIGHT_OF_THE_LAST = { heading: 220, seconds: 45 };

const tidy: Habit = { habit: "tidy", share: 1, delay: 0 };

export const SAMPLE_SCENARIOS: Readonly<Record<string, Scenario>> = {
  "calm-and-tidy": {
    name: "calm-and-tidy",
    about: "A light wind, and every course held within a few hundred feet.",
    start: START,
    ...KNOWN_MODELS,
    wind: {
      from: 310,
      speed: 6,
      altitude: 4000,
      slow: { sd: 1, time: 900 },
      shearRms: 1,
      gusts: null,
    },
    script: lesson(tidy, tidy, tidy, tidy, RIGHT_OF_THE_LAST),
    brief: brief("Lesson 6, radials and a leg, light wind"),
  },
  "strong-crosswind-badly-corrected": {
    name: "strong-crosswind-badly-corrected",
    about: "A strong wind: corrected too much inbound, let go outbound, corrected by half on the leg.",
    start: START,
    ...KNOWN_MODELS,
    wind: {
      from: 41,
      speed: 33,
      altitude: 4000,
      slow: { sd: 1, time: 900 },
      shearRms: 1,
      gusts: null,
    },
    script: lesson(
      { habit: "waits", tidyFor: 45, share: 2, correctsAt: 0.45, cut: 15, thenShare: 1 },
      { habit: "waits", tidyFor: 165, share: 0, correctsAt: 0.45, cut: 25, thenShare: 1 },
      { habit: "waits", tidyFor: 60, share: 0.5, correctsAt: 0.4, cut: 20, thenShare: 0.9 },
      { habit: "waits", tidyFor: 30, share: 0, correctsAt: 0.5, cut: 25, thenShare: 1 },
      { heading: 150, seconds: 50 }, // the wind drives it back to the course
    ),
    brief: brief("Lesson 7, radials and a leg, strong wind"),
  },
  "needle-chased": {
    name: "needle-chased",
    about: "A moderate wind, roughly corrected, and a pilot who turns after every swing of the needle.",
    start: START,
    ...KNOWN_MODELS,
    wind: {
      from: 335,
      speed: 16,
      altitude: 4000,
      slow: { sd: 1.5, time: 900 },
      shearRms: 1,
      gusts: null,
    },
    script: lesson(
      { habit: "chases", share: 0.8, period: 45, cut: 14 },
      { habit: "chases", share: 0.7, period: 40, cut: 12 },
      { habit: "chases", share: 0.8, period: 50, cut: 16 },
      tidy,
      RIGHT_OF_THE_LAST,
    ),
    brief: brief("Lesson 6, radials and a leg, second flight"),
  },
};
