/** The brief that is being made for the flight on the sheet: open or not, its history, and its reading. */
import { computed, signal } from "@preact/signals";
import { type ListedPoint, POINT_KINDS } from "../../src/index.ts";
import { flight } from "../flight.ts";
import { type History, redone, startOf, stepped, undone } from "./history.ts";
import { known } from "./points.ts";
import { exercisesOf, readMaking } from "./reading.ts";
import { listOf, mapOf, type Path, put, textOf, type Values } from "./values.ts";
import { writtenValues } from "./written.ts";

/** Null while no brief is made. */
export const history = signal<History | null>(null);
/** Which exercise is open, from 0. */
export const chosen = signal<number | null>(null);
/** Told to who cannot see what has changed. */
export const said = signal("");

export const values = computed<Values>(() => history.value?.now ?? {});
/** The first moment of the flight, ms UTC; null where the log has no times. */
export const flightTime = computed<number | null>(() => {
  const start = flight.value?.document.log.startUtc;
  return start ? Date.parse(start) : null;
});
export const reading = computed(() => readMaking(values.value, known.value, flightTime.value));

/** Puts a value at a path. Letters typed one after the other into one field are one step back. */
export function change(path: Path, to: unknown): void {
  if (history.value)
    history.value = stepped(history.value, put(values.value, path, to) as Values, path.join("/"), Date.now());
}

/** What was dragged or typed until now is a step: what follows is another. */
export function endStep(): void {
  if (history.value) history.value = { ...history.value, last: null };
}

/** Puts other values in place of all, as a step of its own. */
export function replace(now: Values, words: string): void {
  if (!history.value) return;
  history.value = stepped(history.value, now, null, Date.now());
  said.value = words;
}

export function undo(): void {
  if (history.value) history.value = undone(history.value);
  stayChosen();
}
export function redo(): void {
  if (history.value) history.value = redone(history.value);
  stayChosen();
}
function stayChosen(): void {
  const count = exercisesOf(values.value).length;
  if (chosen.value !== null && chosen.value >= count) chosen.value = count > 0 ? count - 1 : null;
}

export function start(now: Values): void {
  history.value = startOf(now);
  chosen.value = null;
  said.value = "";
}
export function stop(): void {
  history.value = null;
  chosen.value = null;
}

/** When an exercise begins by its window, as text that sorts; empty where it has none. */
const beginning = (exercise: unknown): string => textOf(listOf(mapOf(exercise).between)[0]).padStart(8, "0");

/** Adds an exercise with fixes that it brings, and opens it: at the end, or where its window belongs in the order flown. */
export function addExercise(exercise: Values, words: string, fixes: Values = {}): void {
  const now = values.value;
  const others = exercisesOf(now);
  const later = exercise.between
    ? others.findIndex((other) => mapOf(other).between && beginning(other) > beginning(exercise))
    : -1;
  const index = later < 0 ? others.length : later;
  const exercises = [...others.slice(0, index), exercise, ...others.slice(index)];
  const own = mapOf(now.fixes);
  replace({ ...now, fixes: { ...own, ...fixes, ...own }, exercises }, words);
  chosen.value = index;
}

export function removeExercise(index: number): void {
  const exercises = exercisesOf(values.value).filter((_, i) => i !== index);
  replace({ ...values.value, exercises }, `Exercise ${index + 1} was taken out.`);
  chosen.value = null;
}

export function moveExercise(index: number, by: 1 | -1): void {
  const exercises = [...exercisesOf(values.value)];
  const [moved] = exercises.splice(index, 1);
  if (moved === undefined || index + by < 0 || index + by > exercises.length) return;
  exercises.splice(index + by, 0, moved);
  replace({ ...values.value, exercises }, `Exercise ${index + 1} is now number ${index + by + 1}.`);
  chosen.value = index + by;
}

/** Gives a fix another ident, everywhere that it is named. */
export function renameFix(from: string, to: string): void {
  const now = values.value;
  const fixes = Object.fromEntries(
    Object.entries(mapOf(now.fixes)).map(([ident, fix]) => [ident === from ? to : ident, fix]),
  );
  const exercises = exercisesOf(now).map((exercise) => renamed(exercise, from, to));
  replace({ ...now, fixes, exercises }, `${from} is now ${to}.`);
}

const IDENT_KEYS = new Set([
  "to",
  "from",
  "hold",
  "arc",
  "descent",
  "final_fix",
  "missed_to",
  "station",
  "fix",
]);

function renamed(value: unknown, from: string, to: string, key: string | null = null): unknown {
  if (typeof value === "string") return value === from && key !== null && IDENT_KEYS.has(key) ? to : value;
  if (Array.isArray(value))
    return key === "leg" ? value.map((v) => (v === from ? to : v)) : value.map((v) => renamed(v, from, to));
  if (typeof value === "object" && value !== null)
    return Object.fromEntries(Object.entries(value).map(([k, v]) => [k, renamed(v, from, to, k)]));
  return value;
}

/** An ident that no fix of the brief has yet: P1, P2, ... */
export function freeIdent(): string {
  const taken = new Set(Object.keys(mapOf(values.value.fixes)));
  for (const point of known.value.points) taken.add(point.ident);
  for (let i = 1; ; i++) if (!taken.has(`P${i}`)) return `P${i}`;
}

/** The points of the brief that have a place, as typed. */
export const ownPoints = computed<readonly ListedPoint[]>(() =>
  Object.entries(mapOf(writtenValues(values.value, flightTime.value).fixes)).flatMap(([ident, fix]) => {
    const { lat, lon, kind, declination } = mapOf(fix);
    if (typeof lat !== "number" || typeof lon !== "number") return [];
    return [
      {
        ident,
        latitude: lat,
        longitude: lon,
        kind: POINT_KINDS.find((one) => one === kind) ?? "waypoint",
        declination: typeof declination === "number" ? declination : null,
        elevation: null,
      },
    ];
  }),
);

/** Without clock times: a lesson flown again is flown at another time. */
export const withoutTimes = (now: Values): Values => ({
  ...now,
  exercises: listOf(now.exercises).map((exercise) => {
    const { between: _, ...rest } = mapOf(exercise);
    return rest;
  }),
});
