/** What a brief says that cannot well be true of this flight: said, because every number after it rests on it. */
import type { ApproachExercise, Brief } from "../brief/brief.ts";
import { distanceNm, inverse, type Position, variationAt } from "../geodesy/index.ts";
import { threeFigures, turnFrom } from "../quantity/angle.ts";
import type { Issue } from "../quantity/issue.ts";
import { magneticCourse } from "../quantity/magnetic.ts";
import type { AirspeedPrior } from "../quantity/prior.ts";
import type { Knots, NauticalMiles, TurnDegrees, UtcMillis } from "../quantity/units.ts";
import type { Motion } from "../track/motion.ts";
import { FASTEST, usualSpeed } from "./implausible-log.ts";

/** A place farther from all of the flight. Chosen: twice what the widest radio aid serves (130 NM, from memory). */
export const FAR: NauticalMiles = 300;
/** A declination farther from the model. Chosen: stations keep an old one for decades, and it ages 0.1° a year or so. */
const DECLINATION_OFF: TurnDegrees = 4;
/** A runway's course farther from its number. Chosen: numbers are kept for years and rounded to 10°, and a slip of the pen exchanges its ends. */
const IDENT_OFF: TurnDegrees = 30;
/** So far off it points the other way. Chosen. */
const OTHER_WAY: TurnDegrees = 150;
/** The tens of degrees of its magnetic course, and which of several side by side. ICAO Annex 14, 5.2.2, from memory. */
const RUNWAY_NUMBER = /^\D*(0?[1-9]|[12]\d|3[0-6])\s*[LRC]?\s*$/i;
/** A wind that would be needed all the flight: more than this, and than this share of the airspeed. Chosen. */
const MUCH_WIND: Knots = 40;
const WIND_SHARE = 0.5;
/** Places of the flight that are looked at. Chosen: of an hour every 36 s, a mile at 100 kt. */
const LOOKS = 100;

export type Path = { readonly latitude: Float64Array; readonly longitude: Float64Array };

export function nearestNm(place: Position, { latitude, longitude }: Path): NauticalMiles {
  const step = Math.max(1, Math.floor(latitude.length / LOOKS));
  let nearest = Number.POSITIVE_INFINITY;
  for (let i = 0; i < latitude.length; i += step)
    nearest = Math.min(nearest, distanceNm(place, { latitude: latitude[i]!, longitude: longitude[i]! }));
  return nearest;
}

/** The slip of the pen that puts a far place near the flight; empty where none does. */
function slipOf({ latitude, longitude }: Position, path: Path): string {
  const slips: [string, Position][] = [
    ["the sign of its longitude", { latitude, longitude: -longitude }],
    ["the sign of its latitude", { latitude: -latitude, longitude }],
    ["both of its signs", { latitude: -latitude, longitude: -longitude }],
    ["latitude and longitude, exchanged", { latitude: longitude, longitude: latitude }],
  ];
  const found = slips.find(([, p]) => Math.abs(p.latitude) <= 90 && nearestNm(p, path) <= FAR);
  return found?.[0] ?? "";
}

/** A runway whose number and whose course from threshold to far end do not agree; null where they do, or nothing tells. */
function offItsNumber({ runway, variation }: ApproachExercise): Issue["facts"] | null {
  const [, number] = RUNWAY_NUMBER.exec(runway.ident ?? "") ?? [];
  const course = inverse(runway.threshold, runway.end).azimuthAtStart;
  const magnetic = magneticCourse(course, variation);
  if (number === undefined || magnetic === null) return null;
  // near the poles runways are numbered by true north
  const off = [course, magnetic].map((c) => Math.abs(turnFrom(Number(number) * 10, c)));
  if (Math.min(...off) <= IDENT_OFF) return null;
  const exchanged = off[1]! >= OTHER_WAY;
  return { ident: runway.ident, course: `${threeFigures(magnetic)}°M`, exchanged };
}

/** Fixes and thresholds that lie nowhere near the flight, runways that point elsewhere than their number, and declinations that the magnetic model does not bear out. */
export function implausiblePlaces({ fixes, exercises, file }: Brief, path: Path, time: UtcMillis | null) {
  const issues: Issue[] = [];
  const say = (code: string, facts: Issue["facts"]) =>
    issues.push({ code, severity: "warning", where: { file }, facts });
  const thresholds = exercises.flatMap((e) =>
    e.kind === "approach" ? [{ ident: `runway ${e.runway.ident ?? ""}`.trim(), ...e.runway.threshold }] : [],
  );
  const seen = new Set<string>();
  for (const place of [...fixes, ...thresholds]) {
    const awayNm = nearestNm(place, path);
    if (awayNm <= FAR || seen.has(place.ident)) continue;
    seen.add(place.ident);
    say("brief-place-far", { ident: place.ident, awayNm: Math.round(awayNm), slip: slipOf(place, path) });
  }
  for (const e of exercises) {
    const off = e.kind === "approach" ? offItsNumber(e) : null;
    if (off) say("brief-runway-number-off", off);
  }
  if (time === null) return issues;
  for (const { declination, ident, ...place } of fixes) {
    const model = declination === null ? null : variationAt(place, time);
    if (declination === null || !model) continue;
    const offDeg = Math.abs(turnFrom(model.degrees, declination));
    if (offDeg <= DECLINATION_OFF) continue;
    say("brief-declination-off", {
      ident,
      writtenDeg: declination,
      modelDeg: model.degrees,
      model: model.model,
      offDeg,
    });
  }
  return issues;
}

/** An airspeed that only a wind beyond belief, held all the flight, would fit; null where it may be true. */
export function implausibleAirspeed(
  { trueAirspeed }: AirspeedPrior,
  motion: Motion,
  file: string,
): Issue | null {
  const groundSpeed = usualSpeed(motion);
  const needed = Math.abs(groundSpeed - trueAirspeed);
  // where the ground speed is none to be flown, the log is wrong, and says so
  if (!(groundSpeed <= FASTEST) || needed <= Math.max(MUCH_WIND, WIND_SHARE * trueAirspeed)) return null;
  const facts = {
    tasKt: trueAirspeed,
    groundSpeedKt: Math.round(groundSpeed),
    windKt: Math.floor(needed / 10) * 10,
  };
  return { code: "brief-airspeed-off", severity: "warning", where: { file }, facts };
}
