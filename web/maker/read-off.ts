/** Inbound courses read off a flight that are not sure, until another one is typed: the reader is to look. */
import { signal } from "@preact/signals";
import { listOf, textOf, type Values } from "./values.ts";

/** By the course and the beginning of its window, as they were taken over. */
const doubts = signal<ReadonlyMap<string, number>>(new Map());

const keyOf = ({ inbound, between }: Values): string => `${textOf(inbound)} ${textOf(listOf(between)[0])}`;

/** Half-width of the 95 % interval, in whole degrees. */
export function noteReadOff(hold: Values, withinDeg: number): void {
  doubts.value = new Map([...doubts.value, [keyOf(hold), withinDeg]]);
}

/** As in "± 4° as read off the flight: look at it"; null where it is sure, or was typed. */
export function readOffNote(hold: Values): string | null {
  const within = doubts.value.get(keyOf(hold));
  return within === undefined ? null : `± ${within}° as read off the flight: look at it`;
}
