/** Rounds about a runway, flown over the ground with the wind corrected: with corners or half circles, landing or level. */
import { destination } from "../geodesy/index.ts";
import type { Position } from "../geodesy/position.ts";
import { METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import type { FeetMsl, NauticalMiles } from "../quantity/units.ts";
import { LINDHOLT_22, RUNWAY_22 } from "./orsa-vale.ts";
import { type Drawn, draw, type Random } from "./random.ts";
import type { Step } from "./script.ts";

/** Elevation of the field, and of the circuit over it, feet. */
const FIELD: FeetMsl = 420;
const CIRCUIT: FeetMsl = FIELD + 1000;
/** Of rounds without a landing. */
const LEVEL: FeetMsl = 2500;
/** A turn begins so far before its corner, miles. */
const LEAD: NauticalMiles = 0.35;

/**
 * How wide rounds are, and how fast they are turned. Corners at 20 to 30 degrees of bank leave a straight of 6 s or more
 * between them; those of narrow rounds at rate one do not, so that their ends are half circles too. Common practice, no source.
 */
const SHAPES = {
  rectangular: { width: [1.1, 1.7], rate: [3.5, 5], corners: true },
  narrow: { width: [0.9, 1.05], rate: [3, 3], corners: true },
  oval: { width: [1, 1.25], rate: [3, 3], corners: false },
} as const satisfies Record<string, { width: Drawn; rate: Drawn; corners: boolean }>;

/** From anywhere to a long final, and two to five rounds. Sizes: common practice, no source. */
export function circuits(shape: keyof typeof SHAPES, landing: boolean, random: Random): readonly Step[] {
  const side = random.uniform() < 0.7 ? -1 : 1;
  const turn = side > 0 ? "right" : "left";
  /** From the threshold: along the runway, and toward the circuit's side. */
  const place = (along: NauticalMiles, aside: NauticalMiles): Position => {
    const on = destination(LINDHOLT_22, RUNWAY_22, along * METRES_PER_NAUTICAL_MILE);
    return destination(on, RUNWAY_22 + side * 90, aside * METRES_PER_NAUTICAL_MILE);
  };
  const { width: widths, rate, corners } = SHAPES[shape];
  const upwind = draw([1.3, 2.2], random);
  const base = draw([-1.6, -0.7], random);
  const width = draw(widths, random);
  const rounds = 2 + Math.floor(random.uniform() * 4);
  const around = destination(
    LINDHOLT_22,
    360 * random.uniform(),
    draw([7, 10], random) * METRES_PER_NAUTICAL_MILE,
  );

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
  const back: readonly Step[] = corners
    ? [to(place(upwind, width)), to(place(base, width)), ...down, to(place(base, 0))]
    : [turning(place(base, width))];
  return [
    { do: "height", altitude: landing ? CIRCUIT : LEVEL, rate: 700 },
    to(around, 0.6),
    to(place(-4, 0), 0.5),
    { do: "rate", rate: draw(rate, random) },
    ...down,
    to(place(0, 0), 0.3),
    ...Array.from({ length: rounds }, (): readonly Step[] => [
      ...up,
      to(place(upwind, 0)),
      ...back,
      ...(corners ? [to(place(0, 0), 0.3)] : [...down, turning(place(0, 0))]),
    ]).flat(),
    ...up,
    to(place(upwind, 0)),
    { do: "rate", rate: 3 },
  ];
}
