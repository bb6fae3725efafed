/** Excursions to one side and the other, again and again: chasing too slow to be counted by its turns, and nothing that one wind explains. */
import { median } from "../quantity/weigh.ts";
import type { CausedExcursion } from "./cause.ts";
import type { ExcursionRows } from "./excursion.ts";
import type { Reversals } from "./reversal.ts";
import { isTold } from "./told-excursion.ts";

/** So many changes of side. Chosen: a drift, a correction too large and the way back from it are two, which one error explains. */
const LEAST_CHANGES = 3;
/** ... at this rate a minute from the first to the last. Chosen: three quarters of the rate of chasing; slower than 80 s a side it is no hunting of the needle. */
const LEAST_RATE = 0.75;
/** The fewest changes of side, each excursion nearer than the one before by this share at least, are bracketing that converges; more of them are a weave however they shrink. As of swings. */
const CONVERGING = 0.75;

/** The first excursion of each stretch that went to one side. */
const sidesOf = <E extends ExcursionRows>(told: readonly E[]): E[] =>
  told.filter(({ record }, k) => k === 0 || record.side !== told[k - 1]!.record.side);

/**
 * The swings that excursions in flown order make; null where they are no weave. One wind does not carry an aircraft to
 * both sides in turn: what a weave is made of has one cause, and not the opposite ones that each side alone would tell.
 * Sought on courses, not on arcs and finals. `minutes`: what is judged.
 */
export function weaveOf(
  { timeMs }: { readonly timeMs: Float64Array },
  excursions: readonly ExcursionRows[],
  minutes: number,
): Reversals | null {
  const told = excursions.filter(isTold);
  const begins = sidesOf(told);
  const count = begins.length - 1;
  const [first, last] = [begins[0], begins.at(-1)];
  if (!first || !last || count < LEAST_CHANGES || !(minutes > 0)) return null;
  const at = ({ drifting }: ExcursionRows) => timeMs[drifting.start]!;
  const off = ({ record }: ExcursionRows) => Math.abs(record.worstCrossTrackNm);
  const converges = begins.every((e, k) => k === 0 || off(e) <= CONVERGING * off(begins[k - 1]!));
  if (count === LEAST_CHANGES && converges) return null;
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

const DOWNWIND = ["wind-uncorrected", "under-corrected", "corrected-wrong-way"];
const windSide = ({ record }: CausedExcursion): "downwind" | "upwind" | null => {
  const cause = record.causes[0]?.cause ?? "";
  if (cause === "over-corrected") return "upwind";
  return DOWNWIND.includes(cause) ? "downwind" : null;
};
/** A drift, and a correction of it that was too large, is one change of side, and both are told. */
const STORY = 1;

/**
 * Excursions whose wind causes do not contradict each other: where it went to and fro more than once, too little correction
 * and too much are not both told, but that of the farthest; what went to the other side stood off for no wind's sake.
 */
export function ofOneWind(excursions: readonly CausedExcursion[]): readonly CausedExcursion[] {
  const told = excursions.filter(isTold).filter((e) => windSide(e) !== null);
  if (sidesOf(told).length - 1 <= STORY) return excursions;
  const off = ({ record }: CausedExcursion) => Math.abs(record.worstCrossTrackNm);
  const side = windSide(told.reduce((a, b) => (off(b) > off(a) ? b : a)));
  return excursions.map((e) => {
    const own = windSide(e);
    if (own === null || own === side) return e;
    const [first, ...others] = e.record.causes;
    const causes = [{ ...first!, cause: "heading-off" as const }, ...others];
    return { ...e, record: { ...e.record, causes } };
  });
}
