/** Flights that turn much and hold nowhere, drawn anew for each seed: what must not be taken for a hold. */
import { destination } from "../geodesy/index.ts";
import { direction } from "../quantity/angle.ts";
import { METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import type { TrueDegrees, TurnDegrees } from "../quantity/units.ts";
import { circuits } from "./circuits.ts";
import { DRAWN_MODELS } from "./models.ts";
import { TARNO } from "./orsa-vale.ts";
import { procedureTurn } from "./patterns.ts";
import { type Drawn, draw, type Random } from "./random.ts";
import type { Scenario } from "./scenario.ts";
import type { Step } from "./script.ts";

const START: Scenario["start"] = {
  position: destination(TARNO, 60, 8 * METRES_PER_NAUTICAL_MILE),
  heading: 250,
  altitude: 3000,
  time: Date.UTC(2026, 9, 18, 3, 0, 0),
};

const side = (random: Random): 1 | -1 => (random.uniform() < 0.5 ? 1 : -1);
const count = (low: number, high: number, random: Random): number =>
  low + Math.floor(random.uniform() * (high - low + 1));
const repeat = (times: number, steps: (i: number) => readonly Step[]): Step[] =>
  Array.from({ length: times }, (_, i) => steps(i)).flat();
/** On the present heading. */
const on = (seconds: Drawn): Step => ({ do: "heading", seconds });
const turn = (by: TurnDegrees): Step => ({ do: "turn", by });
const rate = (random: Random, between: Drawn): Step => ({ do: "rate", rate: draw(between, random) });

/** A flight to somewhere, the thing itself, and on. */
const drawn = (name: string, about: string, steps: (random: Random) => readonly Step[]): Scenario => ({
  name,
  about,
  start: START,
  ...DRAWN_MODELS,
  script: [
    {
      do: "drawn",
      steps: (random) => [on(draw([90, 300], random)), ...steps(random), on(draw([90, 240], random))],
    },
  ],
  brief: null,
});

/** 45/180 or 80/260, each outbound from where the last came in. */
function procedureTurns(random: Random): readonly Step[] {
  let outbound: TrueDegrees = 360 * random.uniform();
  return repeat(count(1, 2, random), () => {
    const away = side(random);
    const flown = outbound;
    outbound = direction(outbound + 180 + draw([-60, 60], random));
    if (random.uniform() < 0.6) return procedureTurn(flown, away > 0 ? "right" : "left");
    return [{ do: "heading", heading: flown, seconds: 75 }, turn(80 * away), turn(-260 * away), on(90)];
  });
}

export const NO_HOLDS: readonly Scenario[] = [
  drawn("orbits", "One to five full circles one way.", (random) => [
    rate(random, [2, 4]),
    turn(360 * side(random) * count(1, 5, random)),
  ]),
  drawn("s-turns", "Half circles to alternate sides, as across a road.", (random) => {
    const first = side(random);
    return repeat(count(3, 8, random), (i) => [
      turn(180 * (i % 2 === 0 ? first : -first)),
      on(draw([0, 25], random)),
    ]);
  }),
  drawn("eights", "Full circles to alternate sides, or loops of an eight with crossing lines.", (random) => {
    const first = side(random);
    const crossing = random.uniform() < 0.5;
    const by = crossing ? draw([220, 270], random) : 360;
    return repeat(count(2, 6, random), (i) => [
      turn(by * (i % 2 === 0 ? first : -first)),
      on(crossing ? draw([15, 50], random) : draw([0, 20], random)),
    ]);
  }),
  drawn("steep-turns", "Circles at 45 degrees of bank, one way and the other.", (random) => {
    const first = side(random);
    return [
      { do: "rate", rate: draw([8, 11], random) },
      ...repeat(count(2, 4, random), (i) => [
        turn((i % 2 === 0 ? first : -first) * pick360(random)),
        on(draw([3, 40], random)),
      ]),
      { do: "rate", rate: 3 },
    ];
  }),
  drawn("vectors", "Headings as a radar controller gives them, to either side.", (random) =>
    repeat(count(6, 12, random), () => [
      turn(side(random) * draw([20, 120], random)),
      on(draw([40, 180], random)),
    ]),
  ),
  drawn("procedure-turns", "Course reversals of 45/180 or 80/260.", procedureTurns),
  drawn(
    "teardrop-reversals",
    "Outbound at an angle, and a turn of about 210 degrees back to the course.",
    (random) => {
      const inbound = 360 * random.uniform();
      return repeat(count(1, 2, random), () => {
        const s = side(random);
        const angle = draw([18, 36], random);
        return [
          { do: "heading", heading: direction(inbound + 180), seconds: draw([40, 120], random) },
          { do: "heading", heading: direction(inbound + 180 - s * angle), seconds: draw([60, 150], random) },
          turn(s * (180 + angle)),
          on(draw([90, 200], random)),
        ];
      });
    },
  ),
  drawn("rectangular-circuits", "Two to five rounds with four corners, most with landings.", (random) =>
    circuits("rectangular", random.uniform() < 0.7, random),
  ),
  drawn(
    "narrow-circuits",
    "Two to five rounds so narrow that their four corners join by twos, most with landings.",
    (random) => circuits("narrow", random.uniform() < 0.7, random),
  ),
  drawn(
    "oval-circuits",
    "Two to five rounds with half circles at both ends, each with a landing.",
    (random) => circuits("oval", true, random),
  ),
];

const pick360 = (random: Random): number => (random.uniform() < 0.5 ? 360 : 720);
