/** The samples of approaches to runway 22 at Lindholt, each a case of its own. */
import { destination } from "../geodesy/index.ts";
import { METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import type { FeetMsl, NauticalMiles, TrueDegrees } from "../quantity/units.ts";
import type { ApproachStep } from "./approach-step.ts";
import {
  approachBrief,
  approachStep,
  besideFinal,
  FINAL_FIX,
  FIX_ALTITUDE,
  PRECISION,
  RUNWAY,
} from "./approaches.ts";
import { KNOWN_MODELS } from "./models.ts";
import { RUNWAY_22, TARNO } from "./orsa-vale.ts";
import type { Scenario } from "./scenario.ts";
import type { Step } from "./script.ts";

const STEPS = `      guidance: lnav
      final_fix_ft: ${FIX_ALTITUDE}
      minimum_ft: 900
      step_downs: [ { before_nm: 2.5, not_below_ft: 1300 } ]
      missed_course: 221.5T
      missed_to: TARNO
`;

const light = { from: 250, speed: 8, altitude: 2000, slow: { sd: 1, time: 900 }, shearRms: 1, gusts: null };

/** A downwind, a base leg and the approach, and what follows a missed one. */
function lesson(
  name: string,
  about: string,
  step: ApproachStep,
  keys: string,
  wind: Scenario["wind"],
): Scenario {
  const missed = step.ends.by === "missed";
  const away: readonly Step[] = missed ? [{ do: "direct", to: TARNO, within: 0.5 }] : [];
  return {
    name,
    about,
    start: {
      position: besideFinal(RUNWAY, 3, 4),
      heading: RUNWAY_22 - 180,
      altitude: 3000,
      time: Date.UTC(2026, 9, 17, 4, 0, 0),
    },
    ...KNOWN_MODELS,
    wind,
    script: [
      { do: "direct", to: besideFinal(RUNWAY, 10, 4), within: 0.5 },
      { do: "height", altitude: FIX_ALTITUDE, rate: 500 },
      { do: "direct", to: besideFinal(RUNWAY, 10.5, 2.2), within: 0.4 },
      step,
      ...away,
    ],
    brief: approachBrief(
      `Lesson 9, ${about.charAt(0).toLowerCase()}${about.slice(1).replace(/\.$/, "")}`,
      keys,
    ),
  };
}

const LNAV_TITLE = "Approach runway 22 over LUMDO, LNAV";
const steps = (altitudes: readonly (readonly [NauticalMiles, FeetMsl])[]): ApproachStep["descent"] => ({
  by: "steps",
  steps: altitudes.map(([from, altitude]) => ({ from, altitude })),
  rate: 800,
});

/** From an arc of 12 NM about TARNO, which crosses the final nearly square 6 NM before the threshold. */
function arcLesson(): Scenario {
  const base = lesson(
    "approach-from-arc",
    "An arc to the final, then a precision approach.",
    approachStep({ join: { cut: 60, late: 0, arc: { centre: TARNO, radius: 12.5, turns: "left" } } }),
    PRECISION,
    light,
  );
  const begin: TrueDegrees = 47 + 55;
  return {
    ...base,
    start: {
      ...base.start,
      position: destination(TARNO, begin, 12.5 * METRES_PER_NAUTICAL_MILE),
      heading: begin - 90,
      altitude: FIX_ALTITUDE,
    },
    script: base.script.filter((step) => step.do === "approach"),
  };
}

export const APPROACH_SAMPLES: readonly Scenario[] = [
  lesson(
    "approach-tidy-precision",
    "A tidy precision approach to a landing.",
    approachStep(),
    PRECISION,
    light,
  ),
  lesson(
    "approach-track-chased",
    "The needle is chased inside the final fix, then a missed approach.",
    approachStep({
      flown: { habit: "chases", share: 0.8, period: 36, cut: 10 },
      ends: { by: "missed", below: 0 },
    }),
    PRECISION,
    { ...light, from: 300, speed: 16 },
  ),
  lesson(
    "approach-below-minimum",
    "Level 130 ft below the minimum descent altitude, then a missed approach.",
    approachStep({
      descent: steps([
        [FINAL_FIX, 1300],
        [2.5, 770],
      ]),
      minimum: 900,
      ends: { by: "missed", at: 0 },
      exercise: LNAV_TITLE,
    }),
    STEPS,
    light,
  ),
  lesson(
    "approach-unstable-continued",
    "High and fast at the gates, and continued to a landing.",
    approachStep({
      descent: { by: "path", angle: 3, crossing: 50, off: 1.1, beyond: 1.3 },
      speed: 1.25,
      unsteady: { at: 2.6, share: 0.85 },
    }),
    PRECISION,
    { ...light, from: 60, speed: 12 },
  ),
  lesson(
    "approach-step-downs",
    "A non-precision approach by steps, level at the minimum, and a landing.",
    approachStep({
      descent: steps([
        [FINAL_FIX, 1320],
        [2.5, 930],
      ]),
      minimum: 900,
      exercise: LNAV_TITLE,
    }),
    STEPS,
    light,
  ),
  arcLesson(),
  lesson(
    "approach-wind-let-go",
    "The wind correction let go on the final, and taken up when the needle told.",
    approachStep({
      flown: { habit: "waits", tidyFor: 40, share: 0, correctsAt: 0.55, cut: 15, thenShare: 1 },
    }),
    PRECISION,
    { ...light, from: 310, speed: 17 },
  ),
];
