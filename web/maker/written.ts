/** From what was typed to a written brief: numbers become numbers, empty fields go, places become coordinates. */
import { direction, readRunwayCourse, runwayEnd, variationAt } from "../../src/index.ts";
import { typedRunwayLine } from "./runway-line.ts";
import { typedSteps } from "./steps.ts";
import { isMap, listOf, type Path, typedNumber, typedPlace, type Values } from "./values.ts";
import { windsWritten } from "./winds.ts";

const NUMBERS = new Set([
  ...["lat", "lon", "declination", "elevation_ft", "tas_kt", "tas_doubt_kt", "altitude_ft", "radius_nm"],
  ...["to_ft", "before_nm", "width_deg", "antenna_ft", "rnp_nm", "final_fix_ft", "glide_path_deg"],
  ...["threshold_crossing_ft", "decision_ft", "minimum_ft", "not_below_ft", "missed_point_nm"],
]);
const DIRECTIONS = new Set(["course", "inbound", "from_radial", "to_radial"]);
/** An exercise is not what it is without them: the reader says that they are missing. */
const NEEDED = new Set([
  ...["course", "to", "from", "leg", "arc", "hold", "descent", "approach", "inbound", "radius_nm"],
  ...[
    "from_radial",
    "to_radial",
    "to_ft",
    "threshold",
    "end",
    "elevation_ft",
    "guidance",
    "runway",
    "not_below_ft",
  ],
]);
const empty = (value: unknown): boolean =>
  value === "" ||
  value === undefined ||
  value === null ||
  (Array.isArray(value) && value.every((v) => v === ""));

/** The far end of a runway that was typed as a course and a length; the text itself where it is neither. */
function typedEnd(text: string, threshold: unknown, time: number | null): unknown {
  const place = typedPlace(text);
  if (place) return place;
  const { courseText, lengthFt } = typedRunwayLine(text) ?? {};
  if (courseText === undefined || lengthFt === undefined) return text;
  const course = readRunwayCourse(courseText, false);
  const [latitude, longitude] = listOf(threshold).map(Number);
  if (course === null || latitude === undefined || longitude === undefined) return text;
  const from = { latitude, longitude };
  const variation = course.reference === "true" ? 0 : variationAt(from, time ?? Date.now())?.degrees;
  if (variation === undefined) return text;
  const end = runwayEnd(from, direction(course.degrees + variation), lengthFt);
  return [end.latitude, end.longitude];
}

function writtenMap(map: Values, path: Path, time: number | null): Values {
  const entries: [string, unknown][] = [];
  for (const [key, value] of Object.entries(map)) {
    if (key === "at" && typeof value === "string") {
      const place = typedPlace(value);
      entries.push(["lat", place?.[0] ?? value], ["lon", place?.[1] ?? value]);
      continue;
    }
    if (key === "wind" && path.length === 0) {
      const winds = windsWritten(value);
      if (!empty(winds)) entries.push([key, winds]);
      continue;
    }
    const written = writtenValue(value, [...path, key], time);
    const isNeeded =
      NEEDED.has(key) && !(key === "course" && path.includes("approach")) && !path.includes("fixes");
    if (empty(written) && !(isNeeded && !(key === "leg" && map.hold !== undefined))) continue;
    if (isMap(written) && Object.keys(written).length === 0 && path.length === 0 && key !== "fixes") continue;
    entries.push([key, written]);
  }
  const done: Record<string, unknown> = Object.fromEntries(entries);
  if (typeof done.step_downs === "string") done.step_downs = typedSteps(done.step_downs) ?? done.step_downs;
  if (typeof done.threshold === "string") done.threshold = typedPlace(done.threshold) ?? done.threshold;
  if (typeof done.end === "string") done.end = typedEnd(done.end, done.threshold, time);
  return done;
}

function writtenValue(value: unknown, path: Path, time: number | null): unknown {
  if (Array.isArray(value)) return value.map((entry, i) => writtenValue(entry, [...path, i], time));
  if (isMap(value)) return writtenMap(value, path, time);
  const key = path.at(-1);
  if (typeof value !== "string" || typeof key !== "string") return value;
  if (NUMBERS.has(key) || DIRECTIONS.has(key)) return value.trim() === "" ? "" : typedNumber(value, key);
  return value;
}

/** `time` of the flight, for the variation of a runway's magnetic course. */
export const writtenValues = (values: Values, time: number | null): Values => writtenMap(values, [], time);
