/** Why an excursion happened, as far as the wind is known: correction flown against correction needed. */
import type { Finding } from "../quantity/record.ts";
import type { AngleSize, Share } from "../quantity/units.ts";
import type { ExcursionRows } from "./excursion.ts";
import type { CorrectionMeasured } from "./wind-correction.ts";

/** The heading was on the course, not into the wind, when within this of it. Tuned against hand-flown wander. */
const ON_THE_COURSE: AngleSize = 2;
/** A need smaller than this is not worth a cause. Tuned: the threshold of the track error. */
const LEAST_NEED: AngleSize = 3;
/** Over-corrected: beyond the need by more than half. */
const BEYOND: Share = 0.5;

/**
 * `wind-uncorrected`, `under-corrected`, `over-corrected` or `corrected-wrong-way`; null where the wind's need is
 * small, or within its own doubt, or does not explain the side that the aircraft went to. Flown and needed
 * correction carry the same error of the wind, so their difference is known better than either.
 */
export function windFinding({ record }: ExcursionRows, m: CorrectionMeasured): Finding | null {
  const size = Math.abs(m.needed);
  if (!(size >= LEAST_NEED && size >= m.doubt95)) return null;
  const downwind = (record.side === "right" ? 1 : -1) === -Math.sign(m.needed);
  /** Of the need, in the needed direction. */
  const applied = (m.flown * Math.sign(m.needed)) / size;
  let code: string | null = null;
  if (downwind && Math.abs(m.flown) <= ON_THE_COURSE) code = "wind-uncorrected";
  else if (downwind && applied < 0) code = "corrected-wrong-way";
  else if (downwind && applied < 1) code = "under-corrected";
  else if (!downwind && applied > 1 + BEYOND) code = "over-corrected";
  if (!code) return null;
  return {
    code,
    facts: {
      side: record.side,
      flownDeg: m.flown,
      neededDeg: m.needed,
      doubt95Deg: m.doubt95,
      windAcrossKt: m.across,
      windAcross95Kt: m.across95,
    },
    evidence: { fromUtc: record.trackOffUtc, toUtc: record.correctedUtc ?? record.worstUtc },
  };
}
