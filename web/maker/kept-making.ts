/** The brief in the making of one flight, kept at every letter against a reload, with the briefs that it was made over. */
import type { Flight } from "../flight.ts";
import { isMap, listOf, type Values } from "./values.ts";

const KEPT = "hindtrack brief in the making";
/** The brief beneath, and those that were worked out last: one of them is the flight's, wherever a reload breaks in. */
const MOST_OVER = 3;

type Over = readonly (string | null)[];
interface Kept {
  readonly flight: string;
  readonly values: Values;
  /** Texts of briefs; null for none. */
  readonly over: Over;
}

const keyOf = ({ document: { log } }: Flight): string => `${log.file} ${log.startUtc} ${log.flight}`;
const textOn = ({ briefText }: Flight): string | null => briefText?.text ?? null;

/** What is kept of this flight; null where nothing is, or the browser gives nothing. */
function keptOf(on: Flight): Kept | null {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEPT) ?? "null");
    if (!isMap(kept) || kept.flight !== keyOf(on) || !isMap(kept.values)) return null;
    // an older one says nothing of what it was made over
    const over = Array.isArray(kept.over) ? (listOf(kept.over) as Over) : [textOn(on)];
    return { flight: keyOf(on), values: kept.values, over };
  } catch {
    return null;
  }
}

function keep(kept: Kept): void {
  try {
    localStorage.setItem(KEPT, JSON.stringify(kept));
  } catch {
    // A browser that keeps nothing says so when the flight is opened.
  }
}

/** What was typed last; null where nothing was, or the flight was given another brief since. */
export function keptMaking(on: Flight): Values | null {
  const kept = keptOf(on);
  return kept?.over.includes(textOn(on)) ? kept.values : null;
}

export function keepMaking(on: Flight, values: Values): void {
  const before = keptOf(on);
  const over = before?.over.includes(textOn(on)) ? before.over : [textOn(on)];
  keep({ flight: keyOf(on), values, over });
}

/** Of what is kept, this brief is worked out now. */
export function madeInto(on: Flight, text: string | null): void {
  const kept = keptOf(on);
  if (kept) keep({ ...kept, over: [...kept.over, text].slice(-MOST_OVER) });
}

export function forgetMaking(): void {
  try {
    localStorage.removeItem(KEPT);
  } catch {
    // Where nothing is kept nothing is forgotten.
  }
}
