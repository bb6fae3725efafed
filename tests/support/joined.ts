/** Invented flights of exercises that are joined to each other: flown at once one after the other, each with its brief and its truth. */
import { destination, type Position } from "../../src/geodesy/index.ts";
import { approachStep, besideFinal, RUNWAY } from "../../src/simulator/approaches.ts";
import { fly, type Scenario, type Step } from "../../src/simulator/index.ts";
import { DRAWN_MODELS } from "../../src/simulator/models.ts";
import { RUNWAY_22, RUNWAY_22_LENGTH, TARNO } from "../../src/simulator/orsa-vale.ts";
import { GOOD_HOLD, procedureTurn } from "../../src/simulator/patterns.ts";
import type { ArcStep, CourseStep, Habit, HoldStep } from "../../src/simulator/script.ts";

/** Miles before the threshold of the final fix. */
const FIX = 5;
export const FINAL = RUNWAY_22;
const TIME = Date.UTC(2026, 9, 17, 4, 0, 0);
const NM = 1852;

/** The fixes of all these flights. LINDO is the VOR of the field, TARNO another one that lies nearly on the final, extended. */
const PLACES = {
  LUMDO: besideFinal(RUNWAY, FIX, 0),
  HALSO: besideFinal(RUNWAY, 12, 0),
  NERVA: besideFinal(RUNWAY, 11, 1.1), // 10 degrees off the final as seen from LUMDO
  SIKRO: besideFinal(RUNWAY, 11, 3.5), // 30 degrees
  VODRE: besideFinal(RUNWAY, 8.5, 0),
  LINDO: besideFinal(RUNWAY, -0.4, 0.15),
  TARNO,
} satisfies Record<string, Position>;
type Ident = keyof typeof PLACES;

const tidy: Habit = { habit: "tidy", share: 1, delay: 10 };
const degrees = ({ latitude, longitude }: Position) => `[${latitude.toFixed(6)}, ${longitude.toFixed(6)}]`;
const trueCourse = (course: number) => `"${(((course % 360) + 360) % 360).toFixed(1).padStart(5, "0")}T"`;

/** An exercise: how it is flown, and how the brief asks for it. */
interface Part {
  readonly steps: readonly Step[];
  readonly brief: string;
  readonly kind: "course" | "hold" | "arc" | "approach";
}

export function hold(
  ident: Ident,
  inbound: number,
  changes: Partial<HoldStep> & { readonly briefLeg?: string } = {},
): Part {
  const { briefLeg = "1 min", ...rest } = changes;
  const step: HoldStep = {
    do: "hold",
    fix: PLACES[ident],
    inbound: ((inbound % 360) + 360) % 360,
    turns: "right",
    leg: { seconds: 60 },
    laps: 2,
    skill: GOOD_HOLD,
    exercise: `Hold at ${ident}`,
    ...rest,
  };
  const brief = `{ hold: ${ident}, inbound: ${trueCourse(inbound)}, turns: ${step.turns}, leg: ${briefLeg} }`;
  return { kind: "hold", steps: [step], brief };
}

/** Fixes are passed just before an approach begins: its own final fix is a little later, so that it is passed too. */
export const FIX_LATER = 0.05;

export function approach(
  ends: "landing" | "missed",
  how: Parameters<typeof approachStep>[0] = {},
  keys = PRECISION,
): Part {
  const step = approachStep({
    finalFix: FIX - FIX_LATER,
    join: { cut: 35, late: -350 },
    ends: ends === "landing" ? { by: "landing" } : { by: "missed", below: 0 },
    ...how,
  });
  const end = destination(RUNWAY.threshold, RUNWAY.course, RUNWAY_22_LENGTH);
  const runway = `{ ident: "22", threshold: ${degrees(RUNWAY.threshold)}, end: ${degrees(end)}, elevation_ft: ${RUNWAY.elevation} }`;
  return {
    kind: "approach",
    steps: [step],
    brief: `approach: { runway: ${runway}, final_fix: LUMDO, ${keys} }`,
  };
}
const PRECISION =
  "guidance: localizer, final_fix_ft: 2100, glide_path_deg: 3, threshold_crossing_ft: 50, decision_ft: 620, missed_course: 221.5T";
export const BY_STEPS = "guidance: lnav, final_fix_ft: 2100, minimum_ft: 900, missed_course: 221.5T";

const course = (step: Pick<CourseStep, "form" | "fix" | "until"> & Partial<CourseStep>): CourseStep => ({
  do: "course",
  cut: 30,
  scale: step.form === "leg" ? "rnav-1" : "vor",
  flown: tidy,
  exercise: "Course",
  ...step,
});

export function leg(from: Ident, to: Ident, until = 0): Part {
  const step = course({ form: "leg", fix: PLACES[to], fromFix: PLACES[from], until });
  return { kind: "course", steps: [step], brief: `{ leg: [${from}, ${to}], scale: rnav-1 }` };
}
export function courseTo(ident: Ident, along: number, until = 0): Part {
  const step = course({ form: "to", fix: PLACES[ident], course: ((along % 360) + 360) % 360, until });
  return { kind: "course", steps: [step], brief: `{ course: ${trueCourse(along)}, to: ${ident} }` };
}
export function courseFrom(ident: Ident, along: number, until: number): Part {
  const step = course({ form: "from", fix: PLACES[ident], course: ((along % 360) + 360) % 360, until });
  return { kind: "course", steps: [step], brief: `{ course: ${trueCourse(along)}, from: ${ident} }` };
}
export function arc(
  ident: Ident,
  radius: number,
  fromRadial: number,
  toRadial: number,
  turns: "left" | "right",
  leaves: ArcStep["leaves"] = "inbound",
): Part {
  const step: ArcStep = {
    do: "arc",
    station: PLACES[ident],
    radius,
    fromRadial,
    toRadial,
    turns,
    flown: { habit: "tidy", share: 1 },
    lead: 4,
    leaves,
    exercise: "Arc",
  };
  const radials = `from_radial: ${trueCourse(fromRadial)}, to_radial: ${trueCourse(toRadial)}`;
  return {
    kind: "arc",
    steps: [step],
    brief: `{ arc: ${ident}, radius_nm: ${radius}, ${radials}, turns: ${turns} }`,
  };
}
/** Flown between two exercises and asked for by none. */
export const between = (...steps: Step[]): readonly Step[] => steps;

export interface Joined {
  readonly name: string;
  /** The approach passes over the fix of the hold that follows within minutes: which pass the hold began with is open. */
  readonly passedBefore?: true;
  readonly start: { readonly position: Position; readonly heading: number; readonly altitude: number };
  readonly parts: readonly (Part | readonly Step[])[];
}

const isPart = (part: Part | readonly Step[]): part is Part => !Array.isArray(part);
export const exercisesOf = ({ parts }: Joined): readonly Part[] => parts.filter(isPart);

/** So many miles before a fix, on a heading to it. */
export const arriving = (ident: Ident, heading: number, miles: number, altitude = 2100): Joined["start"] => ({
  position: destination(PLACES[ident], heading + 180, miles * NM),
  heading: ((heading % 360) + 360) % 360,
  altitude,
});

const FIXES = Object.entries(PLACES)
  .map(([ident, { latitude, longitude }]) => {
    const vor = ident === "LINDO" || ident === "TARNO";
    const kind = vor ? "vor, declination: 2.5" : "waypoint";
    return `  ${ident}: { lat: ${latitude.toFixed(6)}, lon: ${longitude.toFixed(6)}, kind: ${kind} }`;
  })
  .join("\n");

/** In wind of up to 25 kt from anywhere, drawn anew for every seed. */
export function scenarioOf(joined: Joined, every: number): Scenario {
  const exercises = exercisesOf(joined).map(({ brief }) => `  - ${brief}`);
  return {
    name: joined.name,
    about: "",
    start: { ...joined.start, time: TIME },
    ...DRAWN_MODELS,
    wind: { ...DRAWN_MODELS.wind, speed: [0, 25], altitude: 2000 },
    logging: { every },
    script: [...joined.parts.flatMap((part) => (isPart(part) ? part.steps : part))],
    brief: `brief: 1\ntitle: ${joined.name}\naircraft: { tas_kt: 105, tas_doubt_kt: 15 }\nfixes:\n${FIXES}\nexercises:\n${exercises.join("\n")}\n`,
  };
}

export const flown = (joined: Joined, seed: number, every: number) => {
  const scenario = scenarioOf(joined, every);
  return { ...fly(scenario, seed), brief: scenario.brief! };
};

const byLevels = (steps: readonly (readonly [number, number])[]) =>
  ({ by: "steps", rate: 700, steps: steps.map(([from, altitude]) => ({ from, altitude })) }) as const;
const LEVEL_TO_THE_END = {
  descent: byLevels([[FIX, 930]]),
  minimum: 900,
  ends: { by: "missed", at: 0 },
} as const;
const outward: Step = { do: "heading", seconds: 60 };
const straightOn = (seconds: number): Step => ({ do: "heading", seconds });
/** Straight on from a fix for so long, and turned to fly back to it. */
const outAndBack = (seconds: number, by: number) => between(straightOn(seconds), { do: "turn", by });

export const JOINED: readonly Joined[] = [
  {
    name: "hold, two laps -> approach",
    start: arriving("LUMDO", FINAL + 30, 5),
    parts: [hold("LUMDO", FINAL), approach("landing")],
  },
  {
    name: "hold by teardrop, a lap -> approach",
    start: arriving("LUMDO", FINAL + 145, 5),
    parts: [hold("LUMDO", FINAL, { laps: 1 }), approach("landing")],
  },
  {
    name: "hold by parallel entry, a lap -> approach, missed",
    start: arriving("LUMDO", FINAL + 235, 5),
    parts: [hold("LUMDO", FINAL, { laps: 1 }), approach("missed")],
  },
  {
    name: "hold to the left, one direct lap -> approach",
    start: arriving("LUMDO", FINAL + 60, 5),
    parts: [hold("LUMDO", FINAL, { turns: "left", laps: 1 }), approach("landing")],
  },
  {
    name: "hold, one lap from straight ahead -> approach",
    start: arriving("LUMDO", FINAL, 6),
    parts: [hold("LUMDO", FINAL, { laps: 1 }), approach("landing")],
  },
  {
    name: "hold on another inbound course -> approach",
    start: arriving("LUMDO", 170, 5),
    parts: [hold("LUMDO", 190), approach("landing")],
  },
  {
    name: "hold at 3,000 ft let down in it -> approach",
    start: arriving("LUMDO", FINAL + 30, 5, 3000),
    parts: [
      hold("LUMDO", FINAL, { laps: 1 }),
      between({ do: "height", altitude: 2100, rate: 400 }),
      approach("landing"),
    ],
  },
  {
    name: "approach, missed -> hold at the field, inbound the reciprocal",
    passedBefore: true,
    start: arriving("LUMDO", FINAL + 20, 7),
    parts: [approach("missed"), hold("LINDO", FINAL + 180), between(outward)],
  },
  {
    name: "approach, missed -> hold at the field, inbound the final course",
    passedBefore: true,
    start: arriving("LUMDO", FINAL - 20, 7),
    parts: [approach("missed"), hold("LINDO", FINAL), between(outward)],
  },
  {
    name: "approach, missed -> hold at the field across, to the left",
    passedBefore: true,
    start: arriving("LUMDO", FINAL + 20, 7),
    parts: [approach("missed"), hold("LINDO", FINAL - 90, { turns: "left" }), between(outward)],
  },
  {
    name: "approach by steps, missed over the VOR -> hold at once",
    passedBefore: true,
    start: arriving("LUMDO", FINAL + 20, 7),
    parts: [
      approach("missed", LEVEL_TO_THE_END, BY_STEPS),
      between({ do: "turn", by: -200 }),
      hold("LINDO", FINAL + 180, { turns: "left" }),
      between(outward),
    ],
  },
  {
    name: "approach, missed, far ahead and back -> hold at the field",
    start: arriving("LUMDO", FINAL + 20, 7),
    parts: [
      approach("missed"),
      between(straightOn(150), { do: "turn", by: 200 }),
      hold("LINDO", FINAL + 180),
      between(outward),
    ],
  },
  {
    name: "approach, missed -> hold at TARNO straight ahead",
    start: arriving("LUMDO", FINAL + 20, 7),
    parts: [approach("missed"), hold("TARNO", FINAL), between(outward)],
  },
  {
    name: "leg along the final -> approach",
    start: arriving("HALSO", FINAL, 0.3),
    parts: [leg("HALSO", "LUMDO"), approach("landing")],
  },
  {
    name: "leg 10 degrees off the final -> approach",
    start: arriving("NERVA", FINAL + 10, 0.3),
    parts: [leg("NERVA", "LUMDO"), approach("landing")],
  },
  {
    name: "leg 30 degrees off the final -> approach",
    start: arriving("SIKRO", FINAL + 30, 0.3),
    parts: [leg("SIKRO", "LUMDO"), approach("landing")],
  },
  {
    name: "course to the final fix along the final -> approach, missed",
    start: arriving("LUMDO", FINAL, 10),
    parts: [courseTo("LUMDO", FINAL), approach("missed")],
  },
  {
    name: "course to the final fix 20 degrees off -> approach",
    start: arriving("LUMDO", FINAL - 20, 10),
    parts: [courseTo("LUMDO", FINAL - 20), approach("landing")],
  },
  {
    name: "two legs, the second along the final -> approach",
    start: arriving("SIKRO", FINAL + 60, 0.3),
    parts: [leg("SIKRO", "VODRE", 0.3), leg("VODRE", "LUMDO"), approach("landing")],
  },
  {
    name: "hold right -> hold left at the same fix",
    start: arriving("TARNO", FINAL + 30, 5, 3000),
    parts: [hold("TARNO", FINAL), hold("TARNO", FINAL, { turns: "left" }), between(outward)],
  },
  {
    name: "hold -> away and back -> the same hold",
    start: arriving("TARNO", FINAL + 30, 5, 3000),
    parts: [
      hold("TARNO", FINAL),
      between(straightOn(60), { do: "turn", by: 70 }, straightOn(90)),
      hold("TARNO", FINAL),
      between(outward),
    ],
  },
  {
    name: "hold -> hold on another inbound course at the same fix",
    start: arriving("TARNO", FINAL + 30, 5, 3000),
    parts: [hold("TARNO", FINAL), hold("TARNO", FINAL + 90), between(outward)],
  },
  {
    name: "hold left -> out and back, 2 min -> hold right at the same fix",
    start: arriving("TARNO", FINAL + 30, 5, 3000),
    parts: [
      hold("TARNO", FINAL, { turns: "left" }),
      outAndBack(45, 190),
      hold("TARNO", FINAL),
      between(outward),
    ],
  },
  {
    name: "hold right -> out and back, 2 min -> hold on another inbound course at the same fix",
    start: arriving("TARNO", FINAL + 30, 5, 3000),
    parts: [hold("TARNO", FINAL), outAndBack(45, 190), hold("TARNO", FINAL + 90), between(outward)],
  },
  {
    name: "hold right -> out and back, 3 min -> hold left on another inbound course at the same fix",
    start: arriving("TARNO", FINAL + 30, 5, 3000),
    parts: [
      hold("TARNO", FINAL),
      outAndBack(60, -190),
      hold("TARNO", FINAL + 90, { turns: "left" }),
      between(outward),
    ],
  },
  {
    name: "hold left -> out and back, 2 min -> hold right on another inbound course at the same fix",
    start: arriving("TARNO", FINAL + 30, 5, 3000),
    parts: [
      hold("TARNO", FINAL, { turns: "left" }),
      outAndBack(40, 190),
      hold("TARNO", FINAL + 90),
      between(outward),
    ],
  },
  {
    name: "hold right -> out and back, 3 min -> hold left at the same fix",
    start: arriving("TARNO", FINAL + 30, 5, 3000),
    parts: [
      hold("TARNO", FINAL, { laps: 3 }),
      outAndBack(60, 190),
      hold("TARNO", FINAL, { turns: "left", laps: 3 }),
      between(outward),
    ],
  },
  {
    name: "hold -> out and back, 2 min -> the same hold",
    start: arriving("TARNO", FINAL + 30, 5, 3000),
    parts: [hold("TARNO", FINAL), outAndBack(60, 190), hold("TARNO", FINAL), between(outward)],
  },
  {
    name: "hold of 1 min -> hold of 4 NM at the same fix",
    start: arriving("TARNO", FINAL + 30, 5, 3000),
    parts: [
      hold("TARNO", FINAL),
      hold("TARNO", FINAL, { leg: { distance: 4, by: "along-track" }, briefLeg: "4 NM" }),
      between(outward),
    ],
  },
  {
    name: "arc -> approach",
    start: {
      position: destination(TARNO, 110, 12.5 * NM),
      heading: 20,
      altitude: 2100,
    },
    parts: [arc("TARNO", 12.5, 105, 46.5, "left"), approach("landing")],
  },
  {
    name: "course to a VOR -> hold -> course from it",
    start: arriving("TARNO", 243.5, 10, 3000),
    parts: [courseTo("TARNO", 243.5), hold("TARNO", 243.5), courseFrom("TARNO", 302.5, 8)],
  },
  {
    name: "course to a VOR -> hold on another course -> course from it",
    start: arriving("TARNO", 243.5, 10, 3000),
    parts: [courseTo("TARNO", 243.5), hold("TARNO", 180), courseFrom("TARNO", 302.5, 8)],
  },
  {
    name: "course to a VOR -> hold -> straight on from it",
    start: arriving("TARNO", 243.5, 10, 3000),
    parts: [courseTo("TARNO", 243.5), hold("TARNO", 243.5), courseFrom("TARNO", 243.5, 8)],
  },
  {
    name: "course from a VOR -> arc -> course to it",
    start: arriving("TARNO", 302.5, 0.3, 3000),
    parts: [
      courseFrom("TARNO", 302.5, 9.5),
      arc("TARNO", 10, 302.5, 352.5, "right"),
      courseTo("TARNO", 172.5),
      between(outward),
    ],
  },
  {
    name: "course to a VOR -> course from it on another radial -> arc -> course to it -> hold",
    start: arriving("TARNO", 243.5, 10, 3000),
    parts: [
      courseTo("TARNO", 243.5, 0.2),
      courseFrom("TARNO", 302.5, 9.5),
      arc("TARNO", 10, 302.5, 352.5, "right"),
      courseTo("TARNO", 172.5),
      hold("TARNO", 172.5),
      between(outward),
    ],
  },
  {
    name: "course from the final fix -> procedure turn -> approach",
    start: arriving("LUMDO", FINAL + 180, 0.3),
    parts: [
      courseFrom("LUMDO", FINAL + 180, 3),
      between(...procedureTurn(FINAL + 180, "right").slice(1, 3)),
      approach("landing"),
    ],
  },
  {
    name: "course -> hold at the final fix -> approach -> hold at the field",
    passedBefore: true,
    start: arriving("LUMDO", FINAL, 10),
    parts: [
      courseTo("LUMDO", FINAL),
      hold("LUMDO", FINAL),
      approach("missed"),
      hold("LINDO", FINAL + 180),
      between(outward),
    ],
  },
];
