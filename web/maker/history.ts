/** What was done to the brief in the making, so that it can be undone; typing in one field is one step. */
import type { Values } from "./values.ts";

export interface History {
  readonly now: Values;
  readonly before: readonly Values[];
  readonly after: readonly Values[];
  /** What the last step touched, as "exercises[0].course", and when. */
  readonly last: { readonly what: string; readonly at: number } | null;
}

/** Letters typed into one field within so many milliseconds of each other are one step. Chosen. */
const ONE_STEP_MS = 2000;
/** So many steps are kept. Chosen: more than anybody goes back. */
const MOST_STEPS = 200;

export const startOf = (now: Values): History => ({ now, before: [], after: [], last: null });

/** `what` null: a step of its own. */
export function stepped(history: History, now: Values, what: string | null, at: number): History {
  if (now === history.now) return history;
  const { last, before } = history;
  const goesOn = what !== null && last?.what === what && at - last.at < ONE_STEP_MS;
  return {
    now,
    before: goesOn ? before : [...before, history.now].slice(-MOST_STEPS),
    after: [],
    last: what === null ? null : { what, at },
  };
}

export function undone({ now, before, after }: History): History {
  const previous = before.at(-1);
  if (previous === undefined) return { now, before, after, last: null };
  return { now: previous, before: before.slice(0, -1), after: [now, ...after], last: null };
}

export function redone({ now, before, after }: History): History {
  const [next, ...rest] = after;
  if (next === undefined) return { now, before, after, last: null };
  return { now: next, before: [...before, now], after: rest, last: null };
}
