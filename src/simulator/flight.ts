/** A flight as it truly was: columns at each second, and what each exercise was. */
import type { Degrees, FeetMsl, Knots, Seconds, TrueDegrees } from "../quantity/units.ts";
import type { Column } from "../track/track.ts";
import { newAircraft, STEP } from "./aircraft.ts";
import type { FlownApproach } from "./approach.ts";
import type { EventCode } from "./habits.ts";
import type { FlownHold } from "./hold.ts";
import { manoeuvre } from "./manoeuvre.ts";
import { randomStream } from "./random.ts";
import type { Scenario } from "./scenario.ts";
import type { CourseStep } from "./script.ts";
import type { Sight } from "./sight.ts";

/** One row a second, from the start of the flight. */
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
  readonly approaches: readonly FlownApproach[];
}

/** A script that has not ended by then will not end, seconds. */
const LONGEST = 4 * 3600;

/** Flies a scenario, without the receiver. */
export function flyTrue(scenario: Scenario, seed: number): Flight {
  const a = newAircraft(scenario, seed);
  const chances = { script: randomStream(seed, "script"), pilot: randomStream(seed, "habits") };
  const rows: number[][] = [[], [], [], [], [], [], [], []];
  const courses: FlownCourse[] = [];
  const holds: FlownHold[] = [];
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
  for (const step of scenario.script) {
    const start = a.time;
    const sights: Sight[] = [];
    const events: { code: EventCode; time: Seconds }[] = [];
    const steer = manoeuvre(step, a, chances, {
      saw: (sight) => sights.push(sight),
      held: (hold) => holds.push(hold),
      approached: (approach) => approaches.push(approach),
      note: (code) => events.push({ code, time: a.time }),
    });
    for (let wanted = steer(a); wanted !== null; wanted = steer(a)) {
      a.advance(wanted);
      if (a.time % 1 < STEP / 2) record();
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
    approaches,
  };
}
