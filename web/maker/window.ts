/** The time window of an exercise of the brief, on the axis of the flight. */
import { change, values } from "./making.ts";
import { exercisesOf } from "./reading.ts";
import { clockText, msOfClock, type TimeAxis } from "./times-geometry.ts";
import { listOf, mapOf, textOf } from "./values.ts";

/** Shorter than this nothing is flown, s: a slip of the hand sets no window. Chosen. */
export const LEAST_WINDOW_MS = 5000;

export type Window = readonly [start: number, end: number];

/** The window that the brief gives an exercise; null where it is looked for. */
export function windowOf(index: number, axis: TimeAxis): Window | null {
  const [from, to] = listOf(mapOf(exercisesOf(values.value)[index]).between).map(textOf);
  const start = msOfClock(from ?? "", axis);
  const end = msOfClock(to ?? "", axis);
  return start !== null && end !== null && end > start ? [start, end] : null;
}

export function setWindow(index: number, [start, end]: Window): void {
  change(["exercises", index, "between"], [clockText(start), clockText(end)]);
}
