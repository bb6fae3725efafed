/** The truth of a flight, to be written beside its log: what it was, free of any estimate. */
import { cosDeg, direction, directionOf, sinDeg, turnFrom } from "../quantity/angle.ts";
import { DEGREES_PER_RADIAN, METRES_PER_FOOT, METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import { utcText } from "../quantity/time.ts";
import type { Seconds, TrueDegrees } from "../quantity/units.ts";
import type { Flight, FlownCourse, TrueColumns } from "./flight.ts";
import { type FlownHold, factorFlown } from "./hold.ts";
import type { Scenario } from "./scenario.ts";

/** Mean over some seconds. Wind *from*, true. */
export interface TrueWind {
  /** Middle of the span, UTC. */
  readonly t: string;
  readonly ele_m: number;
  readonly wind_from: number;
  readonly wind_kt: number;
  readonly tas_kt: number;
}

/** Signs: right positive. Values from `establishedUtc` to `endUtc`. */
export interface TrueExercise {
  readonly title: string;
  readonly form: "to" | "from" | "leg";
  readonly courseTrueDeg: number;
  readonly startUtc: string;
  /** Null where the course was never established. */
  readonly establishedUtc: string | null;
  readonly endUtc: string;
  readonly windFromTrueDeg: number;
  readonly windKt: number;
  readonly tasKt: number;
  readonly meanHeadingTrueDeg: number;
  readonly meanTrackTrueDeg: number;
  /** Heading less course: the mean that was flown, and what the mean wind needed. */
  readonly flownCorrectionDeg: number;
  readonly neededCorrectionDeg: number;
  readonly maxCrossTrackNm: number;
  /** Deviation over full scale, outside the mile about a station where the needle is left alone. */
  readonly maxNeedle: number;
  readonly events: readonly TrueEvent[];
}

export interface TrueEvent {
  readonly code: string;
  readonly utc: string;
  /** When it stopped: the next event, or the end of the exercise. */
  readonly untilUtc: string;
  /** Mean track, and track less course, over that time without its first 15 s, in which the turn is made. */
  readonly trackTrueDeg: number;
  readonly trackErrorDeg: number;
  /** When the needle first showed a quarter in that time, or null. */
  readonly quarterUtc: string | null;
}

/** Times are UTC, angles true, right positive. */
export interface TrueHold {
  readonly title: string;
  readonly fix: readonly [latitude: number, longitude: number];
  readonly inboundTrueDeg: number;
  readonly turn: "left" | "right";
  readonly entry: "direct" | "teardrop" | "parallel";
  /** First passage of the fix, and the last. */
  readonly t0: string;
  readonly t1: string;
  readonly laps: readonly {
    /** Over the fix. */
    readonly utc: string;
    readonly outboundUtc: string;
    /** Between the turns. */
    readonly outboundS: number;
    readonly inboundUtc: string;
    /** From the end of the turn to the fix. */
    readonly inboundS: number;
    readonly endUtc: string;
    readonly outboundHeadingTrueDeg: number;
    readonly rolloutCrossTrackNm: number;
    readonly neededCorrectionDeg: number | null;
    /** Outbound correction over the inbound one that the wind needed; null in next to no crosswind. */
    readonly factor: number | null;
    readonly solvedOutboundHeadingTrueDeg: number | null;
    readonly solvedOutboundS: number | null;
  }[];
}

export interface Truth {
  readonly format: "hindtrack-truth";
  readonly version: 1;
  readonly scenario: string;
  readonly seed: number;
  readonly about: string;
  readonly startUtc: string;
  readonly endUtc: string;
  readonly truth: {
    readonly wind: {
      readonly method: string;
      readonly bin_seconds: number;
      readonly series: readonly TrueWind[];
    };
    readonly exercises: readonly TrueExercise[];
    readonly holds: readonly TrueHold[];
  };
}

/** Span of the wind series, seconds: that of the real flights with measured wind. */
const BIN: Seconds = 30;
/** A change of heading of 30 degrees is over in 15 s with the roll in and out. */
const TURN_OVER: Seconds = 15;

const rounded = (value: number, decimals: number): number => Number(value.toFixed(decimals)) + 0;

/** Sums over rows [start, end): mean velocity of the air, of the aircraft through it, and heights. */
function means(c: TrueColumns, start: number, end: number) {
  let [east, north, tas, altitude, noseEast, noseNorth] = [0, 0, 0, 0, 0, 0];
  for (let i = start; i < end; i++) {
    const heading = (c.heading[i]! * Math.PI) / 180;
    east += c.airEast[i]!;
    north += c.airNorth[i]!;
    tas += c.trueAirspeed[i]!;
    altitude += c.altitude[i]!;
    noseEast += c.trueAirspeed[i]! * Math.sin(heading);
    noseNorth += c.trueAirspeed[i]! * Math.cos(heading);
  }
  const n = end - start;
  return {
    from: rounded(directionOf(-east, -north), 1),
    speed: rounded(Math.hypot(east, north) / n, 1),
    tas: rounded(tas / n, 1),
    elevation: rounded((altitude / n) * METRES_PER_FOOT, 0),
    heading: rounded(directionOf(noseEast, noseNorth), 1),
    track: rounded(directionOf(noseEast + east, noseNorth + north), 1),
    /** What the wind needs on a course; source: E. Williams, *Aviation Formulary* V1.47, "Wind Triangles". */
    needed: (course: TrueDegrees) => {
      const fromRight = -east * cosDeg(course) + north * sinDeg(course);
      return rounded(Math.asin(fromRight / tas) * DEGREES_PER_RADIAN, 1);
    },
  };
}

export function truthOf(scenario: Scenario, seed: number, flight: Flight): Truth {
  const { columns } = flight;
  const utc = (t: Seconds) => utcText(scenario.start.time + t * 1000);
  const series: TrueWind[] = [];
  for (let i = 0; i + BIN <= columns.length; i += BIN) {
    const m = means(columns, i, i + BIN);
    series.push({
      t: utc(i + BIN / 2),
      ele_m: m.elevation,
      wind_from: m.from,
      wind_kt: m.speed,
      tas_kt: m.tas,
    });
  }
  return {
    format: "hindtrack-truth",
    version: 1,
    scenario: scenario.name,
    seed,
    about: scenario.about,
    startUtc: utc(0),
    endUtc: utc(columns.seconds[columns.length - 1]!),
    truth: {
      wind: { method: "simulated: mean of the true air velocity, gusts included", bin_seconds: BIN, series },
      exercises: flight.courses.map((course) => trueExercise(course, columns, utc)),
      holds: flight.holds.map((hold) => trueHold(hold, utc)),
    },
  };
}

function trueHold({ step, entry, start, end, laps }: FlownHold, utc: (t: Seconds) => string): TrueHold {
  return {
    title: step.exercise,
    fix: [step.fix.latitude, step.fix.longitude],
    inboundTrueDeg: rounded(step.inbound, 2),
    turn: step.turns,
    entry,
    t0: utc(start),
    t1: utc(end),
    laps: laps.map((lap) => {
      const factor = factorFlown(lap, step.inbound);
      return {
        utc: utc(lap.start),
        outboundUtc: utc(lap.outboundStart),
        outboundS: rounded(lap.inboundTurn - lap.outboundStart, 1),
        inboundUtc: utc(lap.inboundStart),
        inboundS: rounded(lap.end - lap.inboundStart, 1),
        endUtc: utc(lap.end),
        outboundHeadingTrueDeg: rounded(direction(lap.outboundHeading), 1),
        rolloutCrossTrackNm: rounded(lap.rollOutAcross, 3),
        neededCorrectionDeg: lap.solved && rounded(lap.solved.inboundCorrection, 1),
        factor: factor === null ? null : rounded(factor, 2),
        solvedOutboundHeadingTrueDeg: lap.solved && rounded(lap.solved.outboundHeading, 1),
        solvedOutboundS: lap.solved && rounded(lap.solved.outboundSeconds, 1),
      };
    }),
  };
}

function trueExercise(flown: FlownCourse, columns: TrueColumns, utc: (t: Seconds) => string): TrueExercise {
  const established = flown.events.find((e) => e.code === "established")?.time ?? null;
  const from = Math.ceil(established ?? flown.start);
  const to = Math.max(from + 1, Math.floor(flown.end));
  const m = means(columns, from, to);
  const course = flown.sights.at(-1)?.course ?? flown.step.course ?? 0;
  const worst = (values: readonly number[]) =>
    values.reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a), 0);
  return {
    title: flown.title,
    form: flown.step.form,
    courseTrueDeg: rounded(course, 2),
    startUtc: utc(flown.start),
    establishedUtc: established === null ? null : utc(established),
    endUtc: utc(flown.end),
    windFromTrueDeg: m.from,
    windKt: m.speed,
    tasKt: m.tas,
    meanHeadingTrueDeg: m.heading,
    meanTrackTrueDeg: m.track,
    flownCorrectionDeg: rounded(turnFrom(course, m.heading), 1),
    neededCorrectionDeg: m.needed(course),
    maxCrossTrackNm: rounded(worst(flown.sights.map((s) => s.across)) / METRES_PER_NAUTICAL_MILE, 3),
    maxNeedle: rounded(worst(flown.sights.filter((s) => s.needleWatched).map((s) => s.needle)), 3),
    events: flown.events.map(({ code, time }, i) => {
      const end = flown.events[i + 1]?.time ?? flown.end;
      const settled = end - time > 2 * TURN_OVER ? time + TURN_OVER : time;
      const { track } = means(columns, Math.ceil(settled), Math.max(Math.ceil(settled) + 1, Math.floor(end)));
      const quarter = flown.sights.find(
        (s) => s.time >= time && s.time < end && s.needleWatched && Math.abs(s.needle) >= 0.25,
      );
      return {
        code,
        utc: utc(time),
        untilUtc: utc(end),
        trackTrueDeg: track,
        trackErrorDeg: rounded(turnFrom(course, track), 1),
        quarterUtc: quarter ? utc(quarter.time) : null,
      };
    }),
  };
}
