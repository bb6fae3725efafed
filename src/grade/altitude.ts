/** The two criteria of height, alike for every exercise flown level: how steady it was, and how near the briefed height. */
import type { HeightReached } from "../quantity/height-record.ts";
import type { Feet, FeetMsl } from "../quantity/units.ts";
import type { UnseenRecord } from "../quantity/unseen.ts";
import type { Limit, TestStandard } from "../standard/test-standard.ts";
import type { Criterion, Found } from "./criterion.ts";

/** What the facts of an exercise say cannot be told. */
export interface Untold {
  readonly cannotTell: readonly { readonly reason: string }[];
}

/** What the facts of an exercise say of its heights. */
export interface Heights {
  readonly targetFt: FeetMsl | null;
  readonly lowestFt: FeetMsl;
  readonly highestFt: FeetMsl;
  readonly change95Ft: Feet;
  readonly worstFt: FeetMsl;
  readonly altimeter95Ft: Feet;
  readonly worstUtc: string | null;
  readonly onPurpose?: HeightReached["way"] | undefined;
  readonly reached?: HeightReached | undefined;
  readonly unseenRange?: UnseenRecord | null | undefined;
  readonly unseenTarget?: UnseenRecord | null | undefined;
}

/** What a height against the briefed one lies in doubt by: a GPS, or a pressure whose setting is not known. */
export const doubtOfHeight = ({ cannotTell }: Untold): string =>
  cannotTell.some(({ reason }) => reason === "height-is-pressure") ? "height-is-pressure" : "height-by-gps";

/** Climbed or descended all along: to no briefed height, or toward the briefed one and never there. */
const onPurposeUntold = ({ onPurpose, targetFt }: Heights): string | null =>
  onPurpose ? `${onPurpose}-${targetFt === null ? "without-height" : "all-along"}` : null;

/** What was climbed or descended to is judged from there; one that was flown level elsewhere for a while before is *met* by no part of it. */
const sinceReached = ({ reached }: Heights, notWhole: string | null) => ({
  ...(reached ? { part: { fromUtc: reached.utc, before: 0 } } : {}),
  notWhole: reached?.level ? "level-elsewhere-before" : notWhole,
});

/**
 * Half of the whole range tells, whatever the altimeter showed: who ranges over more than twice the limit was
 * outside it at least once. Against the briefed height itself a GPS can seldom tell. `partOf`: why, as a code, what was seen is not the whole.
 */
export function altitudeCriteria<Facts extends Untold>(
  kind: string,
  limit: (standard: TestStandard) => Limit<Feet> | null,
  heightsOf: (facts: Facts) => Heights | null,
  partOf: (facts: Facts) => string | null = () => null,
): Criterion<Facts>[] {
  return [
    {
      id: `${kind}-height-steady`,
      title: "Height, about its own middle",
      unit: "ft",
      limit,
      find(facts): Found {
        const heights = heightsOf(facts);
        if (!heights) return { cannotTell: "no-height" };
        const untold = onPurposeUntold(heights);
        if (untold) return { cannotTell: untold };
        const { lowestFt, highestFt, change95Ft, worstUtc, unseenRange: unseen } = heights;
        return {
          value: (highestFt - lowestFt) / 2,
          doubt95: change95Ft,
          beyond: null,
          worstUtc,
          unseen,
          ...sinceReached(heights, partOf(facts)),
        };
      },
    },
    {
      id: `${kind}-height-briefed`,
      title: "Height, worst, against the briefed one",
      unit: "ft",
      limit,
      find(facts): Found | null {
        const heights = heightsOf(facts);
        if (!heights) return { cannotTell: "no-height" };
        const { targetFt, worstFt, altimeter95Ft, worstUtc, unseenTarget: unseen } = heights;
        if (targetFt === null) return null;
        const untold = onPurposeUntold(heights);
        if (untold) return { cannotTell: untold };
        const value = Math.abs(worstFt - targetFt);
        return {
          value,
          doubt95: altimeter95Ft,
          beyond: null,
          worstUtc,
          unseen,
          doubtIs: doubtOfHeight(facts),
          ...sinceReached(heights, partOf(facts)),
        };
      },
    },
  ];
}
