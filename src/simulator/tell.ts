/** Tells the truth of a flight: the wind each half minute, what each exercise was. */
import { turnFrom } from "../quantity/angle.ts";
import { METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import { utcText } from "../quantity/time.ts";
import type { Seconds } from "../quantity/units.ts";
import { trueArc } from "./arc-truth.ts";
import { trueDescent } from "./descent.ts";
import type { Flight, FlownCourse, TrueColumns } from "./flight.ts";
import type { FlownApproach } from "./flown-approach.ts";
import { means, rounded } from "./means.ts";
import type { Scenario } from "./scenario.ts";
import { trueHold } from "./tell-hold.ts";
import type { TrueApproach, TrueExercise, TrueWind, Truth } from "./truth.ts";

/** Span of the wind series, seconds: that of the real flights with measured wind. */
const BIN: Seconds = 30;
/** A change of heading of 30 degrees is over in 15 s with the roll in and out. */
const TURN_OVER: Seconds = 15;

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
      holds: flight.holds.map((hold) => trueHold(hold, columns, utc)),
      ...(flight.arcs.length > 0 && { arcs: flight.arcs.map((arc) => trueArc(arc, columns, utc)) }),
      ...(flight.descents.length > 0 && {
        descents: flight.descents.map((descent) => trueDescent(descent, utc)),
      }),
      ...(flight.approaches.length > 0
        ? { approaches: flight.approaches.map((approach) => trueApproach(approach, utc)) }
        : {}),
    },
  };
}

function trueApproach(flown: FlownApproach, utc: (t: Seconds) => string): TrueApproach {
  const { step } = flown;
  const maybe = (t: Seconds | null) => (t === null ? null : utc(t));
  return {
    title: step.exercise,
    threshold: [step.runway.threshold.latitude, step.runway.threshold.longitude],
    courseTrueDeg: rounded(step.runway.course, 2),
    elevationFt: step.runway.elevation,
    startUtc: utc(flown.start),
    interceptDeg: flown.interceptDeg === null ? null : rounded(flown.interceptDeg, 1),
    overshootNm: rounded(flown.overshoot, 3),
    establishedUtc: maybe(flown.established),
    finalFixUtc: maybe(flown.fix),
    finalFixFt: flown.fixAltitude === null ? null : rounded(flown.fixAltitude, 0),
    minimumUtc: maybe(flown.minimum),
    missedUtc: maybe(flown.missed),
    lowestFt: rounded(flown.lowest, 0),
    thresholdUtc: maybe(flown.threshold),
    outcome: flown.missed === null ? "landed" : "missed",
    endUtc: utc(flown.end),
    ...(flown.events.length > 0 && {
      events: flown.events.map(({ code, time }) => ({ code, utc: utc(time) })),
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
