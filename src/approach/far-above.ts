/** Whether an approach came down to its minimum: a missed approach begun far above it is none at it. */
import type { Feet } from "../quantity/units.ts";
import type { ApproachFacts } from "./facts.ts";

/** A climb begun by more above a minimum was none at it. Chosen: three times what the US test allows above it. */
const FAR_ABOVE: Feet = 300;

type Ending = Pick<ApproachFacts, "minimum" | "missed">;

/** How far above the minimum, with its doubt: at a minimum descent altitude the lowest height counts, at a decision altitude the one where the climb was begun. */
export function aboveMinimum({ minimum, missed }: Ending) {
  if (minimum?.kind === "descent")
    return { margin: minimum.marginFt, doubt95: minimum.altimeter95Ft, utc: minimum.lowestUtc };
  const margin = missed && minimum ? missed.altitudeFt - minimum.altitudeFt : null;
  return { margin, doubt95: missed?.altimeter95Ft ?? null, utc: missed?.startUtc ?? null };
}

/** Whether it was flown down to the minimum, or to no more than `most` above it; perhaps where the doubt of the log reaches over that. */
export function downToMinimum(ending: Ending, most: Feet = FAR_ABOVE): "yes" | "no" | "perhaps" {
  const { minimum } = ending;
  if (!minimum || minimum.passedNm !== null || minimum.passedIn) return "yes";
  const { margin, doubt95 } = aboveMinimum(ending);
  if (margin === null || margin <= most) return "yes";
  return margin - (doubt95 ?? Number.POSITIVE_INFINITY) > most ? "no" : "perhaps";
}
