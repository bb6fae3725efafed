/** The criteria of a descent: the height at the point where it was wanted, and how far below it on the way there. */
import type { DescentFacts } from "../course/descent-facts.ts";
import { doubtOfHeight } from "./altitude.ts";
import type { Criterion, Found } from "./criterion.ts";

export const DESCENT_CRITERIA: readonly Criterion<DescentFacts>[] = [
  {
    id: "descent-height",
    title: "Height at the point, against the briefed one",
    unit: "ft",
    limit: ({ descent }) => descent.altitude,
    find(facts): Found {
      const { crossing } = facts;
      if (!crossing) return { cannotTell: "no-height" };
      const { overFt, doubt95Ft, utc: worstUtc, silentS } = crossing;
      return {
        value: Math.abs(overFt),
        doubt95: doubt95Ft,
        beyond: null,
        worstUtc,
        doubtIs: silentS == null ? doubtOfHeight(facts) : "passed-in-silence",
      };
    },
  },
  {
    id: "descent-below",
    title: "Below the height on the way to the point, lowest",
    unit: "ft",
    limit: ({ descent }) => descent.altitude,
    find({ lowest, cannotTell }): Found | null {
      if (!lowest) return null;
      const { underFt, doubt95Ft, utc: worstUtc } = lowest;
      const doubtIs = doubtOfHeight({ cannotTell });
      return { value: underFt, oneSided: true, doubt95: doubt95Ft, beyond: null, worstUtc, doubtIs };
    },
  },
];
