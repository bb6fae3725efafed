/** Single manoeuvres, each in air drawn anew for every seed: what an estimate of the wind is measured on. */
import type { Position } from "../geodesy/position.ts";
import { direction } from "../quantity/angle.ts";
import type { TrueDegrees, TurnDegrees } from "../quantity/units.ts";
import { DRAWN_MODELS } from "./models.ts";
import { atTarno, TARNO } from "./orsa-vale.ts";
import type { Drawn } from "./random.ts";
import type { Scenario } from "./scenario.ts";
import type { HoldSkill, HoldStep, Side, Step } from "./script.ts";
import { stepOver } from "./step.ts";

const START: Scenario["start"] = {
  position: { latitude: 35.7, longitude: 172.45 },
  heading: 250,
  altitude: 3000,
  time: Date.UTC(2026, 9, 17, 2, 0, 0),
};

const pattern = (name: string, about: string, script: readonly Step[]): Scenario => ({
  name,
  about,
  start: START,
  ...DRAWN_MODELS,
  script,
  brief: null,
});

const straight = (heading: TrueDegrees, seconds: number): Step => ({
  do: "heading",
  heading: direction(heading),
  seconds,
});

/** A turn away of 45 degrees, a minute, and a turn back of 180 to the other side. */
export const procedureTurn = (outbound: TrueDegrees, away: Side): readonly Step[] => {
  const side = away === "right" ? 1 : -1;
  return [
    straight(outbound, 60),
    straight(outbound + side * 45, 60),
    { do: "turn", by: -side * 180 },
    straight(outbound + side * 225, 30),
    straight(outbound + 180, 90),
  ];
};

/** Legs with a change of heading before each but the first; each change may be a range to draw from. */
export const crossCountry = (
  first: TrueDegrees,
  changes: readonly Drawn[],
  legSeconds: Drawn,
): readonly Step[] => [
  { do: "heading", heading: first, seconds: legSeconds },
  ...changes.flatMap((by): Step[] => [
    { do: "turn", by },
    { do: "heading", seconds: legSeconds },
  ]),
];

/** So many metres from TARNO at a bearing, for arriving at the hold from there. */
function arriving(heading: TrueDegrees): Scenario["start"] {
  const back = ((heading + 180) * Math.PI) / 180;
  const position: Position = stepOver(TARNO, 9000 * Math.sin(back), 9000 * Math.cos(back));
  return { ...START, position, heading: direction(heading) };
}

const INBOUND = atTarno(247);

export const holdAtTarno = (turns: Side, laps: number, skill: HoldSkill): HoldStep => ({
  do: "hold",
  fix: TARNO,
  inbound: INBOUND,
  turns,
  leg: { seconds: 60 },
  laps,
  skill,
  exercise: "Hold at TARNO",
});

/** A pilot who plans well, but not from the truth. Sizes: common practice, no source. */
export const GOOD_HOLD: HoldSkill = { factor: "solved", windWrong: 3, timingWrong: 5 };

/** A hold entered from a direction relative to its inbound course. */
function holding(name: string, about: string, relative: TurnDegrees, skill = GOOD_HOLD): Scenario {
  return {
    ...pattern(name, about, [holdAtTarno("right", 2, skill), straight(INBOUND, 40)]),
    start: arriving(INBOUND + relative),
  };
}

export const PATTERN_SCENARIOS: readonly Scenario[] = [
  pattern("one-360", "Straight, one full circle, straight.", [
    straight(250, 60),
    { do: "turn", by: 360 },
    straight(250, 60),
  ]),
  pattern("procedure-turn", "Outbound, a 45/180 procedure turn, inbound.", procedureTurn(250, "right")),
  pattern("cross-country", "Four legs with changes of heading of 30 to 90 degrees.", [
    ...crossCountry(
      250,
      [
        [30, 90],
        [-90, -30],
        [30, 90],
      ],
      [300, 600],
    ),
  ]),
  pattern("one-straight-leg", "A single straight leg: the crosswind cannot be known from it.", [
    straight(250, 900),
  ]),
  holding("hold-direct", "Two laps of a hold after a direct entry.", 30),
  holding("hold-teardrop", "Two laps of a hold after a teardrop entry.", 145),
  holding("hold-parallel", "Two laps of a hold after a parallel entry.", 235),
  holding(
    "hold-uncorrected",
    "A hold flown with the outbound correction only as large as the inbound one.",
    30,
    {
      factor: 1,
      windWrong: 3,
      timingWrong: 5,
    },
  ),
];
