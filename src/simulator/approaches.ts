/** How an approach to runway 22 at Lindholt is set up: its step, its brief, and those drawn anew for measuring. */
import { destination, type Position } from "../geodesy/index.ts";
import { METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import type { AngleSize, FeetMsl, NauticalMiles } from "../quantity/units.ts";
import type { ApproachStep, SimulatedRunway } from "./approach-step.ts";
import { DRAWN_MODELS } from "./models.ts";
import { FIXES_YAML, LINDHOLT_22, LINDHOLT_ELEVATION, RUNWAY_22, RUNWAY_22_LENGTH } from "./orsa-vale.ts";
import type { Scenario } from "./scenario.ts";
import type { Habit } from "./script.ts";

export const RUNWAY: SimulatedRunway = {
  threshold: LINDHOLT_22,
  course: RUNWAY_22,
  elevation: LINDHOLT_ELEVATION,
};
/** The final fix LUMDO before the threshold, and where the localizer's antenna stands. */
export const FINAL_FIX: NauticalMiles = 5;
const ANTENNA_FT = 6500;
const HALF: AngleSize = 3;
export const FIX_ALTITUDE: FeetMsl = 2100;
const CLIMB = { altitude: 3000, rate: 600 };

/** So far before the threshold and beside the final, right positive, from any threshold. */
export function besideFinal(
  { threshold, course }: SimulatedRunway,
  before: NauticalMiles,
  right: NauticalMiles,
): Position {
  const on = destination(threshold, course + 180, before * METRES_PER_NAUTICAL_MILE);
  return destination(on, course + 90, right * METRES_PER_NAUTICAL_MILE);
}

const tidy: Habit = { habit: "tidy", share: 1, delay: 0 };

export const approachStep = (changes: Partial<ApproachStep> = {}): ApproachStep => ({
  do: "approach",
  runway: RUNWAY,
  finalFix: FINAL_FIX,
  fixAltitude: FIX_ALTITUDE,
  join: { cut: 35, late: -350 },
  localizer: { half: HALF, antenna: (ANTENNA_FT * 0.3048) / METRES_PER_NAUTICAL_MILE },
  flown: tidy,
  descent: { by: "path", angle: 3, crossing: 50, off: 0 },
  speed: 0.9,
  minimum: 620,
  ends: { by: "landing" },
  climb: CLIMB,
  exercise: "Approach runway 22 over LUMDO, localizer",
  ...changes,
});

const degrees = ({ latitude, longitude }: Position) => `[${latitude.toFixed(6)}, ${longitude.toFixed(6)}]`;

/** The brief of one approach. `keys`: what differs, as YAML. */
export function approachBrief(title: string, keys: string, runway: SimulatedRunway = RUNWAY): string {
  const end = destination(runway.threshold, runway.course, RUNWAY_22_LENGTH);
  const fix = besideFinal(runway, FINAL_FIX, 0);
  return `brief: 1
title: ${title}
aircraft: { tas_kt: 100, tas_doubt_kt: 5, category: A }
standard: instrument-rating-us
${FIXES_YAML}  LUMDO: { lat: ${fix.latitude.toFixed(6)}, lon: ${fix.longitude.toFixed(6)}, kind: waypoint }
exercises:
  - approach:
      runway: { ident: "22", threshold: ${degrees(runway.threshold)}, end: ${degrees(end)}, elevation_ft: ${runway.elevation} }
      final_fix: LUMDO
${keys}`;
}

export const PRECISION = `      guidance: localizer
      antenna_ft: ${ANTENNA_FT}
      final_fix_ft: ${FIX_ALTITUDE}
      glide_path_deg: 3
      threshold_crossing_ft: 50
      decision_ft: 620
      missed_course: 221.5T
      missed_to: TARNO
`;

/** What the accuracy of approaches is measured on: wind to 30 kt from anywhere, any intercept, landing or missed. */
export function drawnApproach(
  ends: "landing" | "missed",
  runway: SimulatedRunway = RUNWAY,
  side: 1 | -1 = 1,
): Scenario {
  const step = approachStep({
    runway,
    fixAltitude: runway.elevation + 1680,
    minimum: runway.elevation + 200,
    join: { cut: 35, late: [-600, 250] },
    descent: { by: "path", angle: 3, crossing: 50, off: [-0.25, 0.25] },
    speed: [0.85, 1],
    ends: ends === "landing" ? { by: "landing" } : { by: "missed", below: [-20, 40] },
    climb: { altitude: runway.elevation + 2600, rate: 600 },
  });
  return {
    name: `approach-drawn-${ends}`,
    about: `An approach in air drawn anew for every seed, to a ${ends === "landing" ? "landing" : "missed approach"}.`,
    start: {
      position: besideFinal(runway, 4, 4 * side),
      heading: runway.course - 180,
      altitude: runway.elevation + 2600,
      time: Date.UTC(2026, 9, 17, 5, 0, 0),
    },
    ...DRAWN_MODELS,
    wind: { ...DRAWN_MODELS.wind, speed: [0, 30], altitude: runway.elevation + 1500 },
    script: [
      { do: "direct", to: besideFinal(runway, 11, 4.2 * side), within: 0.5 },
      { do: "height", altitude: step.fixAltitude, rate: 500 },
      { do: "direct", to: besideFinal(runway, 11.5, 2.6 * side), within: 0.4 },
      step,
    ],
    brief: approachBrief(
      "An approach",
      PRECISION.replace(String(FIX_ALTITUDE), String(step.fixAltitude))
        .replace("620", String(step.minimum))
        .replace("221.5T", `${runway.course}T`),
      runway,
    ),
  };
}
