/** Single arcs and descents in air drawn anew for every seed: what finding and measuring them is tried on. */

import { direction } from "../quantity/angle.ts";
import { METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import type { TrueDegrees } from "../quantity/units.ts";
import { DRAWN_MODELS } from "./models.ts";
import { atTarno, BELVO, FIXES_YAML, TARNO } from "./orsa-vale.ts";
import type { Scenario } from "./scenario.ts";
import type { ArcHabit, ArcStep, Habit, Step } from "./script.ts";
import { stepOver } from "./step.ts";

const TIME = Date.UTC(2026, 9, 17, 2, 0, 0);
const tidy: Habit = { habit: "tidy", share: 1, delay: 0 };
const FROM = 300;
const TO = 350;

/** Out on a radial, round the arc, in on another. */
function arcScenario(name: string, about: string, flown: ArcHabit, pieces?: number): Scenario {
  const common = { do: "course", fix: TARNO, cut: 30, scale: "vor", flown: tidy, exercise: null } as const;
  const arc: ArcStep = {
    do: "arc",
    station: TARNO,
    radius: 10,
    fromRadial: atTarno(FROM),
    toRadial: atTarno(TO),
    turns: "right",
    flown,
    ...(pieces === undefined ? {} : { pieces }),
    lead: 4,
    leaves: "inbound",
    exercise: `Arc 10 NM around TARNO, radials ${FROM}°M to ${TO}°M`,
  };
  const outbound = atTarno(FROM);
  return {
    name,
    about,
    start: { position: away(outbound, 4), heading: outbound, altitude: 3000, time: TIME },
    ...DRAWN_MODELS,
    script: [
      { ...common, form: "from", course: outbound, until: 9.5 },
      arc,
      { ...common, form: "to", course: atTarno(TO + 180), until: 2 },
      { do: "turn", by: 360 }, // makes the wind known
    ],
    brief: `brief: 1
title: ${name}
${FIXES_YAML}exercises:
  - { arc: TARNO, radius_nm: 10, from_radial: ${FROM}, to_radial: ${TO} }
`,
  };
}

/** So many miles from TARNO on a true radial. */
function away(radial: TrueDegrees, miles: number) {
  const a = (radial * Math.PI) / 180;
  return stepOver(
    TARNO,
    miles * METRES_PER_NAUTICAL_MILE * Math.sin(a),
    miles * METRES_PER_NAUTICAL_MILE * Math.cos(a),
  );
}

/** From 20 NM away straight to BELVO, down from 4,000 ft. */
function descentScenario(name: string, about: string, late: number, level: boolean): Scenario {
  const heading: TrueDegrees = 250;
  const back = (direction(heading + 180) * Math.PI) / 180;
  const script: Step[] = [
    {
      do: "descent",
      fix: BELVO,
      to: 1800,
      before: 1,
      rate: 500,
      late,
      ...(level ? { levelOff: { at: 3000, seconds: 45 } } : {}),
      exercise: "Descent to 1800 ft, 1 NM before BELVO",
    },
    { do: "height", altitude: 1800, rate: 500 },
    { do: "turn", by: 360 },
    { do: "heading", seconds: 90 },
  ];
  return {
    name,
    about,
    start: {
      position: stepOver(
        BELVO,
        20 * METRES_PER_NAUTICAL_MILE * Math.sin(back),
        20 * METRES_PER_NAUTICAL_MILE * Math.cos(back),
      ),
      heading,
      altitude: 4000,
      time: TIME,
    },
    ...DRAWN_MODELS,
    script,
    brief: `brief: 1
title: ${name}
${FIXES_YAML}exercises:
  - { descent: BELVO, to_ft: 1800, before_nm: 1 }
`,
  };
}

export const ARC_AND_DESCENT_PATTERNS: readonly Scenario[] = [
  arcScenario("arc-tidy", "An arc held closely in a gentle turn.", { habit: "tidy", share: 1 }),
  arcScenario(
    "arc-in-pieces",
    "An arc flown in straight pieces of ten degrees.",
    { habit: "tidy", share: 1 },
    10,
  ),
  arcScenario("arc-left-to-the-wind", "An arc on which the wind is left alone until far off it.", {
    habit: "waits",
    share: 0,
    correctsAt: 0.8,
    cut: 20,
    thenShare: 1,
  }),
  descentScenario("descent-in-time", "A descent to a height before a fix, begun in time.", 0, false),
  descentScenario("descent-late", "A descent to a height before a fix, begun a minute late.", 60, false),
  descentScenario("descent-early", "A descent to a height before a fix, begun a minute early.", -60, false),
  descentScenario("descent-with-level-off", "A descent begun in time and held up by a level-off.", 0, true),
];
