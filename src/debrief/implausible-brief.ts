/** What a brief says that cannot well be true of this flight: said, because every number after it rests on it. */
import type { Brief } from "../brief/brief.ts";
import { distanceNm, type Position, variationAt } from "../geodesy/index.ts";
import { turnFrom } from "../quantity/angle.ts";
import type { Issue } from "../quantity/issue.ts";
import type { AirspeedPrior } from "../quantity/prior.ts";
import type { Knots, NauticalMiles, TurnDegrees, UtcMillis } from "../quantity/units.ts";
import type { Motion } from "../track/motion.ts";
import { FASTEST, usualSpeed } from "./implausible-log.ts";

/** A place farther from all of the flight. Chosen: twice what the widest radio aid serves (130 NM, from memory). */
const FAR: NauticalMiles = 300;
/** A declination farther from the model. Chosen: stations keep an old one for decades, and it ages 0.1° a year or so. */
const DECLINATION_OFF: TurnDegrees = 4;
/** A wind that would be needed all the flight: more than this, and than this share of the airspeed. Chosen. */
const MUCH_WIND: Knots = 40;
const WIND_SHARE = 0.5;
/** Places of the flight that are looked at. Chosen: of an hour every 36 s, a mile at 100 kt. */
const LOOKS = 100;

type Path = { readonly latitude: Float64Array; readonly longitude: Float64Array };

function nearestNm(place: Position, { latitude, longitude }: Path): NauticalMiles {
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

/** Fixes and thresholds that lie nowhere near the flight, and declinations that the magnetic model does not bear out. */
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
