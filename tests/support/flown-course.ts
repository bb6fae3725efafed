/** A course flown by ruler: along and across are given second by second, and become positions by the geodesic itself. */
import type { CourseExercise } from "../../src/brief/brief.ts";
import { type CourseMeasured, measureCourse } from "../../src/course/index.ts";
import { courseBetween, courseThrough, positionOn } from "../../src/geodesy/index.ts";
import { direction } from "../../src/quantity/angle.ts";
import { NEEDLE_SCALES, type NeedleScaleId } from "../../src/standard/needle.ts";
import { findLegs, smoothTrack } from "../../src/track/index.ts";
import type { Track } from "../../src/track/track.ts";
import { estimateWind } from "../../src/wind/index.ts";

const NM = 1852;
const START = Date.UTC(2026, 9, 17, 1, 0, 0);
export const TARNO = {
  ident: "TARNO",
  kind: "vor",
  latitude: 35.6,
  longitude: 172.3,
  declination: 2.5,
  elevation: null,
} as const;
const KESTI = { ...TARNO, ident: "KESTI", kind: "waypoint", latitude: 35.785, longitude: 172.318 } as const;

/** A course as a brief gives it, magnetic, with the station's 2.5 degrees east. */
export function courseExercise(
  form: "to" | "from" | "leg",
  magnetic: number,
  scale: NeedleScaleId,
): CourseExercise {
  const leg = form === "leg";
  const course = leg
    ? courseBetween(TARNO, KESTI)
    : courseThrough({ latitude: TARNO.latitude, longitude: TARNO.longitude }, direction(magnetic + 2.5));
  return {
    kind: "course",
    index: 0,
    title: `Course ${magnetic}°M ${form} TARNO`,
    between: null,
    altitude: null,
    form,
    fix: leg ? KESTI : TARNO,
    fromFix: leg ? TARNO : null,
    course,
    magnetic: leg ? direction(course.azimuth - 2.5) : magnetic,
    variation: { degrees: 2.5, from: "station", model: null, dayDegrees: 2.5 },
    scale: NEEDLE_SCALES[scale],
  };
}

/** Along (from the course's origin) and across, NM, right positive; seconds since the start. */
export interface Row {
  readonly t: number;
  readonly along: number;
  readonly across: number;
}

/** Rows of a flight that begins at a place of the course and holds tracks off it, degrees right, for seconds each; turns at 3 degrees per second. */
export function tracksOff(
  begin: { readonly along: number; readonly across: number },
  parts: readonly (readonly [offDegrees: number, seconds: number])[],
  knots = 100,
): Row[] {
  const rows: Row[] = [];
  let { along, across } = begin;
  let off = parts[0]![0];
  let t = 0;
  const step = 0.1;
  let ticks = 0;
  for (const [wanted, seconds] of parts) {
    for (let k = 0; k < seconds / step; k++) {
      if (ticks % 10 === 0) rows.push({ t, along, across });
      off += Math.max(-3 * step, Math.min(3 * step, wanted - off));
      along += ((knots * step) / 3600) * Math.cos((off * Math.PI) / 180);
      across += ((knots * step) / 3600) * Math.sin((off * Math.PI) / 180);
      ticks++;
      t = ticks * step;
    }
  }
  return rows;
}

export const mirrored = (rows: readonly Row[]): Row[] => rows.map((r) => ({ ...r, across: -r.across }));

function trackOf(exercise: CourseExercise, rows: readonly Row[], timed: boolean): Track {
  const places = rows.map((r) => positionOn(exercise.course, r.along * NM, r.across * NM));
  return {
    name: "by ruler",
    kind: "simulated",
    length: rows.length,
    time: Float64Array.from(rows, (r) => (timed ? START + r.t * 1000 : Number.NaN)),
    latitude: Float64Array.from(places, (p) => p.latitude),
    longitude: Float64Array.from(places, (p) => p.longitude),
    altitude: new Float64Array(rows.length).fill(4000),
    segment: new Int32Array(rows.length),
    line: new Int32Array(rows.length),
  };
}

/** Measures a course flown by ruler, with what its own log tells of the wind; the match may begin at a later row and end at an earlier one. */
export function measured(
  exercise: CourseExercise,
  rows: readonly Row[],
  timed = true,
  start = 0,
  end = rows.length,
): CourseMeasured {
  const track = trackOf(exercise, rows, timed);
  const motion = timed ? smoothTrack(track) : null;
  const legs = motion ? findLegs(motion) : [];
  const wind = motion ? estimateWind(motion, legs, { airspeed: null, winds: [] }) : null;
  return measureCourse({
    exercise,
    path: {
      time: motion?.time ?? null,
      latitude: motion?.latitude ?? track.latitude,
      longitude: motion?.longitude ?? track.longitude,
      altitude: motion?.altitude ?? track.altitude,
    },
    span: { start, end },
    motion,
    wind,
  });
}

/** Milliseconds of a time of the facts since the start, as seconds. */
export const secondsOf = (utc: string): number => (Date.parse(utc) - START) / 1000;
