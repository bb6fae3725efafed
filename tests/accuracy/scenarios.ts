/** The flights that the estimator is measured on: what is flown, in which air, logged how. */
import { type FlownOptions, type FlownStep, fly, seeded } from "../support/flown.ts";

/** Shear of the simulated air where a scenario names none, kt per 1,000 ft, rms of the vector. */
export const USUAL_SHEAR = 3;

export interface MeteredScenario {
  readonly name: string;
  readonly steps: (random: () => number) => FlownStep[];
  readonly options?: Partial<FlownOptions>;
  /** The airspeed is constant but for its wander, and the wind does not change with height: the bound is that of the model. */
  readonly matched: boolean;
}

const repeat = (times: number, steps: FlownStep[]): FlownStep[] =>
  Array.from({ length: times }, () => steps).flat();
const side = (random: () => number) => (random() < 0.5 ? -1 : 1);

export const one360 = (random: () => number): FlownStep[] => [
  { straight: 120 },
  { turn: 360 * side(random) },
  { straight: 120 },
];

export const twoLaps = (random: () => number): FlownStep[] => {
  const s = side(random);
  return [
    { straight: 120 },
    ...repeat(4, [{ turn: 180 * s }, { straight: 45 + 30 * random() }]),
    { straight: 60 },
  ];
};

export const procedureTurn = (random: () => number): FlownStep[] => {
  const s = side(random);
  return [
    { straight: 180 },
    { turn: -45 * s },
    { straight: 60 },
    { turn: 180 * s },
    { straight: 50 },
    { turn: 45 * s },
    { straight: 180 },
  ];
};

export const crossCountry = (random: () => number): FlownStep[] =>
  Array.from({ length: 4 }, (_, i): FlownStep[] => [
    ...(i === 0 ? [] : [{ turn: side(random) * (30 + 60 * random()) }]),
    { straight: 420 + 240 * random() },
  ]).flat();

/** Changes of 30, 60 and 90 degrees to one side, in drawn order: courses chosen so that the wind can be known. */
export const chosenCourses = (random: () => number): FlownStep[] => {
  const s = side(random);
  const changes = [30, 60, 90];
  return Array.from({ length: 4 }, (_, i): FlownStep[] => [
    ...(i === 0 ? [] : [{ turn: s * changes.splice(Math.floor(random() * changes.length), 1)[0]! }]),
    { straight: 420 + 240 * random() },
  ]).flat();
};

export const straightOnly = (random: () => number): FlownStep[] => [{ straight: 1200 + 600 * random() }];

/** Climb, two holds, courses, descents, slower and faster, in random order. */
export const trainingHour = (random: () => number): FlownStep[] => {
  const s = () => side(random);
  const parts: FlownStep[][] = [
    [{ climbTo: 4500, feetPerMinute: 600 }, { straight: 200 }],
    repeat(5, [{ turn: 180 * s() }, { straight: 60 }]).map((step) => ("turn" in step ? { turn: 180 } : step)),
    [{ speed: 90 }, { straight: 150 }, { turn: 90 * s() }, { straight: 240 }],
    [{ turn: -45 }, { straight: 60 }, { turn: 180 }, { straight: 80 }, { turn: 45 }, { straight: 120 }],
    [{ climbTo: 2500, feetPerMinute: 500 }, { straight: 300 }, { turn: 60 * s() }, { straight: 120 }],
    [{ speed: 110 }, { turn: 90 * s() }, { straight: 300 }],
    [{ turn: 30 * s() }, { straight: 200 }, { turn: -30 }, { straight: 150 }],
    [
      { speed: 85 },
      { climbTo: 1800, feetPerMinute: 500 },
      { straight: 240 },
      { speed: 100 },
      { climbTo: 3500, feetPerMinute: 600 },
      { straight: 160 },
    ],
    repeat(4, [{ turn: -180 }, { straight: 55 }]),
  ];
  for (let i = parts.length - 1; i > 0; i--) {
    const j = Math.floor(random() * (i + 1));
    [parts[i], parts[j]] = [parts[j]!, parts[i]!];
  }
  return [{ straight: 120 }, ...parts.flat()];
};

export const SCENARIOS: readonly MeteredScenario[] = [
  { name: "one 360", matched: true, steps: one360, options: { shear: 0 } },
  { name: "two laps of a hold", matched: true, steps: twoLaps, options: { shear: 0 } },
  { name: "procedure turn", matched: true, steps: procedureTurn, options: { shear: 0 } },
  { name: "cross-country", matched: true, steps: crossCountry, options: { shear: 0 } },
  { name: "chosen courses", matched: true, steps: chosenCourses, options: { shear: 0 } },
  { name: "training hour", matched: false, steps: trainingHour },
  { name: "straight", matched: false, steps: straightOnly, options: { shear: 0 } },
];

/** How reality differs from what the estimator expects. */
export const MISMATCHES: readonly { readonly name: string; readonly options: Partial<FlownOptions> }[] = [
  { name: "base", options: {} },
  { name: "gusts 2 kt", options: { gusts: 2 } },
  { name: "airspeed wander 2.5 kt", options: { airspeedWander: 2.5 } },
  { name: "wind 3 kt over 600 s", options: { slowWind: { sd: 3, seconds: 600 } } },
  { name: "4 kt lost in turns", options: { lostInTurns: 4 } },
  { name: "wind walks with height, indicated airspeed held", options: { windWalk: 4, indicated: true } },
];

export const LOGGINGS = [1, 5, "adaptive"] as const;

export function flyScenario(scenario: MeteredScenario, seed: number, options: Partial<FlownOptions> = {}) {
  const random = seeded(seed * 7919 + 17).uniform;
  return fly({
    seed,
    shear: USUAL_SHEAR,
    airspeed: 90 + 30 * random(),
    heading: 360 * random(),
    steps: scenario.steps(random),
    ...scenario.options,
    ...options,
  });
}
