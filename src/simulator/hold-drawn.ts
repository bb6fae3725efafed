/** Holds of every kind, drawn anew for each seed: what finding and measuring holds is tried on. */
import { destination } from "../geodesy/index.ts";
import { METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import type { NauticalMiles } from "../quantity/units.ts";
import { DRAWN_MODELS } from "./models.ts";
import { TARNO } from "./orsa-vale.ts";
import { type Drawn, draw, type Random } from "./random.ts";
import type { Scenario } from "./scenario.ts";
import type { HoldLength, HoldSkill, Step } from "./script.ts";

/** How large the holds of an aircraft are. */
interface Size {
  /** Where the flight to the fix begins, and where it leads after the hold, from the fix. */
  readonly away: NauticalMiles;
  readonly within: NauticalMiles;
  readonly seconds: readonly number[];
  readonly distance: Drawn;
}

const FACTORS: readonly HoldSkill["factor"][] = [1, 2, 3, "solved"];
/** One hold in so many has its legs by distance, half of those as a station shows it. */
const BY_DISTANCE = 4;

const pick = <T>(values: readonly T[], random: Random): T =>
  values[Math.floor(random.uniform() * values.length)]!;

function drawnLeg({ seconds, distance }: Size, random: Random): HoldLength {
  if (random.uniform() > 1 / BY_DISTANCE) return { seconds: pick(seconds, random) };
  const by = random.uniform() < 0.5 ? "along-track" : "slant-range";
  return { distance: Math.round(draw(distance, random)), by };
}

/** To the fix from anywhere, one to four laps, and away to anywhere. */
function drawnHold(size: Size, random: Random): readonly Step[] {
  const around = (): Step => ({
    do: "direct",
    to: destination(TARNO, 360 * random.uniform(), size.away * METRES_PER_NAUTICAL_MILE),
    within: size.within,
  });
  return [
    around(),
    {
      do: "hold",
      fix: TARNO,
      inbound: 360 * random.uniform(),
      turns: pick(["right", "left"], random),
      leg: drawnLeg(size, random),
      laps: pick([1, 2, 3, 4], random),
      skill: {
        factor: pick(FACTORS, random),
        windWrong: draw([2, 4], random),
        timingWrong: draw([4, 6], random),
      },
      exercise: "Hold at TARNO",
    },
    around(),
  ];
}

const START: Scenario["start"] = {
  position: destination(TARNO, 280, 15 * METRES_PER_NAUTICAL_MILE),
  heading: 100,
  altitude: 3000,
  time: Date.UTC(2026, 9, 18, 2, 0, 0),
};
const wind = { ...DRAWN_MODELS.wind, speed: [0, 35] } as const;

export const DRAWN_HOLDS: readonly Scenario[] = [
  {
    name: "hold-any",
    about: "One to four laps of a hold: any entry, side, wind, leg and skill.",
    start: START,
    ...DRAWN_MODELS,
    wind,
    script: [
      {
        do: "drawn",
        steps: (random) => drawnHold({ away: 7, within: 0.6, seconds: [60], distance: [3, 6] }, random),
      },
    ],
    brief: null,
  },
  {
    name: "hold-any-fast",
    about: "The same at 220 to 260 kt, where 25 degrees of bank turn at about 2 degrees per second.",
    start: { ...START, position: destination(TARNO, 280, 40 * METRES_PER_NAUTICAL_MILE), altitude: 9000 },
    ...DRAWN_MODELS,
    wind: { ...wind, altitude: 9000, speed: [0, 60] },
    airspeed: { ...DRAWN_MODELS.airspeed, trueAirspeed: [220, 260], wander: { sd: 3, time: 60 } },
    pilot: { ...DRAWN_MODELS.pilot, turnRate: 2, heading: { sd: 1, time: 20 } },
    script: [
      {
        do: "drawn",
        steps: (random) =>
          drawnHold({ away: 20, within: 2.5, seconds: [60, 60, 90], distance: [7, 12] }, random),
      },
    ],
    brief: null,
  },
];
