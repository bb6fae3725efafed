/** From the text of a brief to a draft: what is readable is kept, every problem is told with its place. */
import type { KnownPoints } from "../geodesy/index.ts";
import { type Issue, UnusableInput } from "../quantity/issue.ts";
import type { AirspeedPrior, WindPrior } from "../quantity/prior.ts";
import type { Fix } from "./brief.ts";
import { declinationOf, foundType } from "./direction.ts";
import type { BriefDraft, DraftExercise } from "./draft.ts";
import { readExercise } from "./exercise.ts";
import { type LookUp, lookUpIn } from "./look-up.ts";
import { errorAt, validated } from "./problems.ts";
import { type PlacedValues, readText } from "./text.ts";
import { aircraftSchema, fixSchema, frameSchema, windSchema } from "./written.ts";

/** Standard deviation of a pilot's word on true airspeed, knots: ±5 kt. Common practice, no source. */
const TAS_DOUBT_KT = 5;
/** Standard deviation of each component of a forecast wind, knots. Common practice, no source. */
const WIND_DOUBT_KT = 8;

/**
 * Reads a brief from YAML or JSON.
 *
 * An exercise, fix, wind or aircraft with anything wrong in it is left out whole, with an error issue for each
 * problem and one warning `brief-left-out` that counts them; the rest is kept. Nothing is guessed: an unknown key
 * may be a misspelt one that matters. Fixes and runways that the brief only names are looked up in the `known`
 * lists; of several of one ident the one nearest to `known.near` is taken, and that is said.
 * @throws UnusableInput with every problem found, when the text is no YAML, its version is not 1, or no exercise is left.
 */
export function readBrief(text: string, file: string, known: KnownPoints | null = null): BriefDraft {
  const placed = readText(text, file);
  const issues: Issue[] = [];
  if (typeof placed.values !== "object" || placed.values === null || Array.isArray(placed.values)) {
    const found = foundType(placed.values);
    throw new UnusableInput([errorAt(placed, [], "brief-wrong-type", { expected: "map", found })]);
  }
  const written = placed.values as Record<string, unknown>;
  validated(frameSchema, written, [], placed, issues);
  const leftOut = { exercises: 0, fixes: 0, winds: 0, aircraft: 0 };
  const lost: number[] = [];

  const fixes = new Map<string, Fix | null>();
  const lookUp = lookUpIn(fixes, known, placed, issues);
  for (const [ident, value] of Object.entries(mapOf(written.fixes))) {
    const fix = readFix(ident, value, lookUp, placed, issues);
    fixes.set(ident, fix);
    if (!fix) leftOut.fixes++;
  }
  const winds: WindPrior[] = [];
  listOf(written.wind).forEach((value, i) => {
    const wind = readWind(value, i, placed, issues);
    if (wind) winds.push(wind);
    else leftOut.winds++;
  });
  const aircraft = written.aircraft === undefined ? null : readAircraft(written.aircraft, placed, issues);
  if (written.aircraft !== undefined && !aircraft) leftOut.aircraft++;
  const exercises: DraftExercise[] = [];
  listOf(written.exercises).forEach((value, i) => {
    const exercise = readExercise(value, ["exercises", i], placed, lookUp, issues);
    if (exercise) exercises.push(exercise);
    else lost.push(i + 1);
  });

  if (listOf(written.exercises).length === 0 && Array.isArray(written.exercises)) {
    issues.push(errorAt(placed, ["exercises"], "brief-no-exercises", {}));
  }
  issues.sort((a, b) => a.where.line! - b.where.line! || a.where.column! - b.where.column!);
  if (exercises.length === 0 || written.brief !== 1) throw new UnusableInput(issues);
  leftOut.exercises = lost.length;
  if (Object.values(leftOut).some((count) => count > 0)) {
    const facts = { ...leftOut, which: lost.join(", ") };
    issues.push({ code: "brief-left-out", severity: "warning", where: { file }, facts });
  }
  return {
    title: typeof written.title === "string" && written.title.trim() !== "" ? written.title : file,
    file,
    source: /\.json$/i.test(file) || text.trimStart().startsWith("{") ? "json" : "yaml",
    aircraft,
    standard: typeof written.standard === "string" && written.standard !== "" ? written.standard : null,
    winds,
    fixes: [...[...fixes.values()].filter((fix) => fix !== null), ...lookUp.taken],
    exercises,
    issues,
  };
}

const mapOf = (value: unknown): Record<string, unknown> =>
  typeof value === "object" && value !== null && !Array.isArray(value)
    ? (value as Record<string, unknown>)
    : {};
const listOf = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);

/** A fix that gives no place of its own takes it from the lists; what else it gives holds. */
function placedByList(ident: string, value: unknown, lookUp: LookUp): unknown {
  const own = Object(value) as Record<string, unknown>;
  if (Object.hasOwn(own, "lat") || Object.hasOwn(own, "lon")) return value;
  if (value !== null && typeof value !== "object") return value;
  const listed = lookUp.listed(ident, ["fixes", ident]);
  if (!listed) return value;
  const { latitude: lat, longitude: lon, kind, declination, elevation } = listed;
  return {
    lat,
    lon,
    kind,
    ...(declination === null ? {} : { declination }),
    ...(elevation === null ? {} : { elevation_ft: elevation }),
    ...own,
  };
}

function readFix(
  ident: string,
  value: unknown,
  lookUp: LookUp,
  placed: PlacedValues,
  issues: Issue[],
): Fix | null {
  const written = placedByList(ident, value, lookUp);
  const sided =
    typeof Object(written).declination === "string"
      ? { ...Object(written), declination: declinationOf(Object(written).declination) }
      : written;
  const fix = validated(fixSchema, sided, ["fixes", ident], placed, issues);
  return (
    fix && {
      ident,
      latitude: fix.lat,
      longitude: fix.lon,
      kind: fix.kind ?? "waypoint",
      declination: fix.declination ?? null,
      elevation: fix.elevation_ft ?? null,
    }
  );
}

function readWind(value: unknown, index: number, placed: PlacedValues, issues: Issue[]): WindPrior | null {
  const wind = validated(windSchema, value, ["wind", index], placed, issues);
  return (
    wind && {
      from: wind.from_true % 360,
      speed: wind.kt,
      doubt: wind.doubt_kt ?? WIND_DOUBT_KT,
      altitude: wind.altitude_ft ?? null,
      source: wind.source ?? "brief",
    }
  );
}

function readAircraft(value: unknown, placed: PlacedValues, issues: Issue[]): AirspeedPrior | null {
  const aircraft = validated(aircraftSchema, value, ["aircraft"], placed, issues);
  return aircraft && { trueAirspeed: aircraft.tas_kt, doubt: aircraft.tas_doubt_kt ?? TAS_DOUBT_KT };
}
