/** Chasing too slow to be counted by its turns: excursions to one side and the other, again and again. */
import { median } from "../quantity/weigh.ts";
import type { ExcursionRows } from "./excursion.ts";
import type { Reversals } from "./reversal.ts";
import { isTold } from "./told-excursion.ts";

/** So many changes of side. Chosen: a drift, a correction too large and the way back from it are two, which one error explains. */
const LEAST_CHANGES = 3;
/** ... at this rate a minute from the first to the last. Chosen: half of the rate of chasing, beyond two minutes a side each drift has its own story. */
const LEAST_RATE = 0.5;

/**
 * The swings that excursions in flown order make; null where they are no weave. One wind does not carry an aircraft to
 * both sides in turn: what a weave is made of has one cause, and not the opposite ones that each side alone would tell.
 * `minutes`: what is judged.
 */
export function weaveOf(
  { timeMs }: { readonly timeMs: Float64Array },
  excursions: readonly ExcursionRows[],
  minutes: number,
): Reversals | null {
  const told = excursions.filter(isTold);
  const begins = told.filter(({ record }, k) => k === 0 || record.side !== told[k - 1]!.record.side);
  const count = begins.length - 1;
  const [first, last] = [begins[0], begins.at(-1)];
  if (!first || !last || count < LEAST_CHANGES || !(minutes > 0)) return null;
  const at = ({ drifting }: ExcursionRows) => timeMs[drifting.start]!;
  if (count / ((at(last) - at(first)) / 60_000) < LEAST_RATE) return null;
  const halves = begins.slice(1).map((e, k) => (at(e) - at(begins[k]!)) / 1000);
  return {
    count,
    perMinute: count / minutes,
    medianAmplitudeDeg: median(Float64Array.from(told, ({ record }) => Math.abs(record.trackErrorDeg))),
    medianPeriodS: 2 * median(Float64Array.from(halves)),
    from: told[0]!.drifting.start,
    to: told.at(-1)!.drifting.end - 1,
  };
}
