/** What a direction comes to as it is typed: true, with the variation that makes it so. */
import {
  type BriefExercise,
  courseBetween,
  threeFigures,
  variationAt,
  variationText,
} from "../../src/index.ts";
import type { Field } from "./fields.ts";
import { at, listOf, mapOf, type Values } from "./values.ts";
import { writtenValues } from "./written.ts";

const tenth = (degrees: number): string => {
  const rounded = Math.round(degrees * 10) / 10;
  return Number.isInteger(rounded) ? threeFigures(rounded) : rounded.toFixed(1).padStart(5, "0");
};

/** The true direction that a field stands for; null where it stands for none. */
function trueDirection(exercise: BriefExercise, { at: path }: Field): number | null {
  const key = path.at(-1);
  switch (exercise.kind) {
    case "arc":
      return key === "from_radial" ? exercise.fromRadial : exercise.toRadial;
    case "approach":
      return key === "missed_course" ? (exercise.missedCourse?.azimuth ?? null) : exercise.course.azimuth;
    case "descent":
      return null;
    default:
      return exercise.course.azimuth;
  }
}

/** Of a course, a radial or an inbound course, once its exercise can be read. */
export function directionNote(exercise: BriefExercise | null, field: Field): string | null {
  if (!exercise || !("variation" in exercise)) return null;
  const { variation } = exercise;
  const trueDeg = trueDirection(exercise, field);
  if (trueDeg === null) return null;
  const from = { station: "of the station", model: `by ${variation.model}`, "written-true": "", unknown: "" };
  if (variation.from === "unknown") return `${tenth(trueDeg)}°T`;
  return `${tenth(trueDeg)}°T, variation ${variationText(variation.degrees)} ${from[variation.from]}`.trim();
}

/** Of a runway, as soon as both of its ends can be read: which way it runs. `time` of the flight, ms UTC. */
export function runwayNote(exercise: Values, time: number | null): string | null {
  const written = mapOf(
    at(writtenValues({ exercises: [exercise] }, time), ["exercises", 0, "approach", "runway"]),
  );
  const ends = [written.threshold, written.end].map((end) => {
    const [latitude, longitude] = listOf(end);
    return typeof latitude === "number" && typeof longitude === "number" ? { latitude, longitude } : null;
  });
  const [threshold, end] = ends;
  if (!threshold || !end) return null;
  const variation = variationAt(threshold, time ?? Date.now());
  const runs = `runs ${tenth(courseBetween(threshold, end).azimuth)}°T`;
  return variation ? `${runs}, variation ${variationText(variation.degrees)} by ${variation.model}` : runs;
}
