/** Holds drawn at random, each flown in air of its own and logged in one of three ways: what the finder is measured on. */
import { destination } from "../../src/geodesy/index.ts";
import { direction } from "../../src/quantity/angle.ts";
import {
  DRAWN_MODELS,
  fly,
  type Scenario,
  type SimulatedFlight,
  type Step,
} from "../../src/simulator/index.ts";
import { seeded } from "../support/flown.ts";

/** Each seed logs in one of these, in turn: 12 m off the line or 12 s is what adaptive loggers do. */
export const LOGGINGS = [{ every: 1 }, { every: 5 }, { off: 12, atMost: 12 }] as const;

/** Wind from 0 to 35 kt, 1 to 4 laps, either side, arriving from all round, good pilots and bad ones, gone off anywhere. */
export function drawHold(seed: number): Scenario {
  const { uniform } = seeded(seed * 31 + 7);
  const between = (low: number, high: number) => low + (high - low) * uniform();
  const fix = { latitude: between(-60, 60), longitude: between(-180, 180) };
  const inbound = between(0, 360);
  const heading = direction(inbound + between(-180, 180));
  const factor = ([1, 2, 3, "solved"] as const)[Math.floor(4 * uniform())]!;
  const script: Step[] = [
    {
      do: "hold",
      fix,
      inbound,
      turns: uniform() < 0.5 ? "left" : "right",
      leg: { seconds: 60 },
      laps: 1 + Math.floor(4 * uniform()),
      skill: { factor, windWrong: between(2, 4), timingWrong: between(4, 6) },
      exercise: "hold",
    },
    { do: "heading", heading: direction(inbound + (uniform() < 0.5 ? 0 : between(-120, 120))), seconds: 150 },
  ];
  return {
    name: "unseen-hold",
    about: "A hold drawn at random.",
    ...DRAWN_MODELS,
    wind: { ...DRAWN_MODELS.wind, speed: [0, 35] },
    airspeed: { ...DRAWN_MODELS.airspeed, lostInTurns: [0, 4] },
    start: {
      position: destination(fix, heading + 180, between(6000, 12_000)),
      heading,
      altitude: 3000,
      time: Date.UTC(2026, 9, 17, 2, 0, 0),
    },
    logging: LOGGINGS[seed % LOGGINGS.length]!,
    script,
    brief: null,
  };
}

export const flyHold = (seed: number): SimulatedFlight => fly(drawHold(seed), seed);
