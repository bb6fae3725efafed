/** Rounds about a runway, flown over the ground with the wind corrected: with corners or half circles, landing or level. */
import { destination } from "../geodesy/index.ts";
import type { Position } from "../geodesy/position.ts";
import { METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import type { FeetMsl, NauticalMiles } from "../quantity/units.ts";
import { LINDHOLT_22, RUNWAY_22 } from "./orsa-vale.ts";
import { draw, type Random } from "./random.ts";
import type { Step } from "./script.ts";

/** Elevation of the field, and of the circuit over it, feet. */
const FIELD: FeetMsl = 420;
const CIRCUIT: FeetMsl = FIELD + 1000;
/** A turn begins so far before its corner, miles. */
const LEAD: NauticalMiles = 0.35;

/** Two to five rounds. Sizes: common practice, no source. */
export function circuits(shape: "rectangular" | "oval", landing: boolean, random: Random): readonly Step[] {
  const side = random.uniform() < 0.7 ? -1 : 1;
  const turn = side > 0 ? "right" : "left";
  /** From the threshold: along the runway, and toward the circuit's side. */
  const place = (along: NauticalMiles, aside: NauticalMiles): Position => {
    const on = destination(LINDHOLT_22, RUNWAY_22, along * METRES_PER_NAUTICAL_MILE);
    return destination(on, RUNWAY_22 + side * 90, aside * METRES_PER_NAUTICAL_MILE);
  };
  const upwind = draw([1.3, 2.2], random);
  const base = draw([-1.6, -0.7], random);
  const width = shape === "oval" ? draw([1, 1.25], random) : draw([0.9, 1.6], random);
  const rounds = 2 + Math.floor(random.uniform() * 4);
  const level: FeetMsl = 2500;

  const down: readonly Step[] = landing
    ? [
        { do: "speed", share: 0.75 },
        { do: "height", altitude: FIELD, rate: 600 },
      ]
    : [];
  const up: readonly Step[] = landing
    ? [
        { do: "speed", share: 1 },
        { do: "height", altitude: CIRCUIT, rate: 700 },
      ]
    : [];
  const to = (position: Position, within = LEAD): Step => ({ do: "direct", to: position, within });
  const turning = (position: Position): Step => ({ do: "direct", to: position, within: LEAD, turn });
  const back: readonly Step[] =
    shape === "oval"
      ? [turning(place(base, width))]
      : [to(place(upwind, width)), to(place(base, width)), ...down, to(place(base, 0))];
  return [
    { do: "height", altitude: landing ? FIELD : level, rate: 700 },
    { do: "direct", to: place(-6, 0), within: 0.5 },
    to(place(0, 0), 0.3),
    ...Array.from({ length: rounds }, (): readonly Step[] => [
      ...up,
      to(place(upwind, 0)),
      ...back,
      ...(shape === "oval" ? [...down, turning(place(0, 0))] : [to(place(0, 0), 0.3)]),
    ]).flat(),
    ...up,
    to(place(upwind, 0)),
  ];
}
