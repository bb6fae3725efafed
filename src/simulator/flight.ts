/** A flight as it truly was: columns at each second, and what each exercise was. */
import type { Degrees, FeetMsl, Knots, Seconds, TrueDegrees } from "../quantity/units.ts";
import type { Column } from "../track/track.ts";
import { newAircraft, STEP } from "./aircraft.ts";
import type { FlownArc } from "./arc.ts";
import type { FlownDescent } from "./descent.ts";
import type { FlownApproach } from "./flown-approach.ts";
import type { EventCode } from "./habits.ts";
import type { FlownHold } from "./hold.ts";
import { manoeuvre, type PlainStep } from "./manoeuvre.ts";
import { type Random, randomStream } from "./random.ts";
import type { Scenario } from "./scenario.ts";
import type { CourseStep, Step } from "./script.ts";
import type { Sight } from "./sight.ts";

/** One row a second (or a half, where asked for), from the start of the flight. */
export interface TrueColumns {
  readonly length: number;
  readonly seconds: Column<Seconds>;
  readonly latitude: Column<Degrees>;
  readonly longitude: Column<Degrees>;
  readonly altitude: Column<FeetMsl>;
  readonly heading: Column<TrueDegrees>;
  readonly trueAirspeed: Column<Knots>;
  /** Velocity of the air over the ground, gusts included. */
  readonly airEast: Column<Knots>;
  readonly airNorth: Column<Knots>;
}

export interface FlownCourse {
  readonly step: CourseStep;
  readonly title: string;
  readonly start: Seconds;
  readonly end: Seconds;
  /** Sights since it was established, one a step. */
  readonly sights: readonly Sight[];
  readonly events: readonly { readonly code: EventCode; readonly time: Seconds }[];
}

export interface Flight {
  readonly columns: TrueColumns;
  readonly courses: readonly FlownCourse[];
  readonly holds: readonly FlownHold[];
  readonly arcs: readonly FlownArc[];
  readonly descents: readonly FlownDescent[];
  readonly approaches: readonly FlownApproach[];
}

/** A script that has not ended by then will not end, seconds. */
const LONGEST = 4 * 3600;

/** The steps as flown: those that are drawn are drawn now. */
function plainSteps(steps: readonly Step[], random: Random): PlainStep[] {
  return steps.flatMap((step) => (step.do === "drawn" ? plainSteps(step.steps(random), random) : [step]));
}

/** Flies a scenario, without the receiver, with a row each `interval` seconds: 1, or 0.5. */
export function flyTrue(scenario: Scenario, seed: number, interval: Seconds = 1): Flight {
  const a = newAircraft(scenario, seed);
  const chances = { script: randomStream(seed, "script"), pilot: randomStream(seed, "habits") };
  const rows: number[][] = [[], [], [], [], [], [], [], []];
  const courses: FlownCourse[] = [];
  const holds: FlownHold[] = [];
  const arcs: FlownArc[] = [];
  const descents: FlownDescent[] = [];
  const approaches: FlownApproach[] = [];
  const record = () => {
    const values = [
      a.time,
      a.position.latitude,
      a.position.longitude,
      a.altitude,
      ((a.heading % 360) + 360) % 360,
      a.trueAirspeed,
      a.air.east,
      a.air.north,
    ];
    for (let i = 0; i < values.length; i++) rows[i]!.push(values[i]!);
  };
  record();
  for (const step of plainSteps(scenario.script, randomStream(seed, "plan"))) {
    const start = a.time;
    const sights: Sight[] = [];
    const events: { code: EventCode; time: Seconds }[] = [];
    const steer = manoeuvre(step, a, chances, {
      saw: (sight) => sights.push(sight),
      held: (hold) => holds.push(hold),
      rounded: (arc) => arcs.push(arc),
      descended: (descent) => descents.push(descent),
      approached: (approach) => approaches.push(approach),
      note: (code) => events.push({ code, time: a.time }),
    });
    for (let wanted = steer(a); wanted !== null; wanted = steer(a)) {
      a.advance(wanted);
      if (a.time % interval < STEP / 2) record();
      if (a.time > LONGEST) throw new RangeError(`invalid script: step "${step.do}" does not end`);
    }
    if (step.do === "course" && step.exercise !== null)
      courses.push({ step, title: step.exercise, start, end: a.time, sights, events });
  }
  const [seconds, latitude, longitude, altitude, heading, trueAirspeed, airEast, airNorth] = rows.map((r) =>
    Float64Array.from(r),
  ) as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  return {
    columns: {
      length: seconds.length,
      seconds,
      latitude,
      longitude,
      altitude,
      heading,
      trueAirspeed,
      airEast,
      airNorth,
    },
    courses,
    holds,
    arcs,
    descents,
    approaches,
  };
}

/** The rows at whole seconds. */
export function everySecond(columns: TrueColumns, interval: Seconds): TrueColumns {
  if (interval === 1) return columns;
  const thinned = (column: Float64Array) => column.filter((_, i) => (i * interval) % 1 === 0);
  const entries = Object.entries(columns).map(([name, v]) => [
    name,
    v instanceof Float64Array ? thinned(v) : v,
  ]);
  const rows = Object.fromEntries(entries) as TrueColumns;
  return { ...rows, length: rows.seconds.length };
}
