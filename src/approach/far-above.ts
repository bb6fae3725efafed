/** A missed approach begun far above the minimum is none at it: nobody came down to it. */
import type { Feet } from "../quantity/units.ts";
import type { ApproachFacts } from "./facts.ts";

/** A climb begun by more above a minimum was none at it. Chosen: three times what the US test allows above it. */
export const FAR_ABOVE: Feet = 300;

/** Whether the climb was begun far above the minimum, beyond the doubt of the log, without ever having come down to it. */
export function neverDownTo({ minimum, missed }: Pick<ApproachFacts, "minimum" | "missed">): boolean {
  if (!minimum || !missed || minimum.passedNm !== null || minimum.passedIn) return false;
  const above = missed.altitudeFt - minimum.altitudeFt;
  return above > FAR_ABOVE && above > (missed.altimeter95Ft ?? Number.POSITIVE_INFINITY);
}
