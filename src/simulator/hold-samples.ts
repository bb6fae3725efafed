/** Four holds over TARNO, each a case of its own: how they were entered, planned and measured. */
import { destination } from "../geodesy/index.ts";
import { direction } from "../quantity/angle.ts";
import { METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import type { Knots, MagneticDegrees, Share, TrueDegrees, TurnDegrees } from "../quantity/units.ts";
import { KNOWN_MODELS } from "./models.ts";
import { atTarno, FIXES_YAML, TARNO } from "./orsa-vale.ts";
import type { Scenario } from "./scenario.ts";
import type { HoldStep } from "./script.ts";

/** Far enough to see a straight arrival. */
const ARRIVING_FROM_NM = 9;
const ALTITUDE = 4000;
const TIME = Date.UTC(2026, 9, 24, 1, 5, 0);

interface Sample {
  readonly name: string;
  readonly about: string;
  readonly title: string;
  /** Inbound course as the brief writes it. */
  readonly inbound: MagneticDegrees;
  /** As the brief writes it. */
  readonly leg: string;
  readonly hold: Pick<HoldStep, "turns" | "leg" | "laps" | "skill">;
  /** Heading of the arrival, from the inbound course, right positive. */
  readonly arriving: TurnDegrees;
  readonly wind: { readonly from: TrueDegrees; readonly speed: Knots };
  /** How far each turn strays from its rate, as a share. */
  readonly turnRateSpread?: Share;
}

function sample({
  name,
  about,
  title,
  inbound,
  leg,
  hold,
  arriving,
  wind,
  turnRateSpread,
}: Sample): Scenario {
  const heading = direction(atTarno(inbound) + arriving);
  return {
    name,
    about,
    start: {
      position: destination(TARNO, heading + 180, ARRIVING_FROM_NM * METRES_PER_NAUTICAL_MILE),
      heading,
      altitude: ALTITUDE,
      time: TIME,
    },
    ...KNOWN_MODELS,
    pilot: { ...KNOWN_MODELS.pilot, turnRateSpread: turnRateSpread ?? KNOWN_MODELS.pilot.turnRateSpread },
    wind: { ...wind, altitude: ALTITUDE, slow: { sd: 1, time: 900 }, shearRms: 1, gusts: null },
    script: [
      { do: "hold", fix: TARNO, inbound: atTarno(inbound), exercise: "Hold at TARNO", ...hold },
      { do: "heading", heading: direction(atTarno(inbound)), seconds: 90 },
    ],
    brief: `brief: 1
title: ${title}
aircraft: { tas_kt: 100, tas_doubt_kt: 5, category: A }
standard: instrument-rating-us
${FIXES_YAML}exercises:
  - { hold: TARNO, inbound: ${inbound}, turns: ${hold.turns}, leg: ${leg}, altitude_ft: ${ALTITUDE} }
`,
  };
}

const minute = { seconds: 60 };

export const HOLD_SAMPLES: readonly Scenario[] = [
  sample({
    name: "hold-direct-well-flown",
    about: "A direct entry, and an outbound leg planned for the wind.",
    title: "Lesson 9, hold at TARNO, direct entry",
    inbound: 247,
    leg: "1 min",
    arriving: 35,
    hold: {
      turns: "right",
      leg: minute,
      laps: 5,
      skill: { factor: "solved", windWrong: 1, timingWrong: 2 },
    },
    wind: { from: 195, speed: 18 },
    turnRateSpread: 0.02,
  }),
  sample({
    name: "hold-outbound-flown-parallel",
    about: "A parallel entry in 25 kt, and every outbound leg flown parallel to the inbound one.",
    title: "Lesson 9, hold at TARNO, parallel entry",
    inbound: 247,
    leg: "1 min",
    arriving: 235,
    hold: { turns: "right", leg: minute, laps: 4, skill: { factor: 1, windWrong: 1.5, timingWrong: 3 } },
    wind: { from: 165, speed: 25 },
  }),
  sample({
    name: "hold-teardrop-left-turns",
    about: "A teardrop entry, left turns, and three times the inbound correction outbound.",
    title: "Lesson 10, hold at TARNO, left turns",
    inbound: 68,
    leg: "1 min",
    arriving: -145,
    hold: { turns: "left", leg: minute, laps: 4, skill: { factor: 3, windWrong: 2, timingWrong: 3 } },
    wind: { from: 320, speed: 16 },
  }),
  sample({
    name: "hold-by-distance",
    about:
      "A hold whose outbound leg ends by the distance of the station, corrected by half of what it needed.",
    title: "Lesson 11, hold at TARNO by distance",
    inbound: 310,
    leg: "4 NM",
    arriving: -60,
    hold: {
      turns: "right",
      leg: { distance: 4, by: "slant-range" },
      laps: 3,
      skill: { factor: 1, windWrong: 1.5, timingWrong: 3 },
    },
    wind: { from: 255, speed: 22 },
  }),
];
