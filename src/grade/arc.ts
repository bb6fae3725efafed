/** The criteria of an arc: its distance from the station, and the height. */
import type { ArcFacts } from "../course/arc-facts.ts";
import { altitudeCriteria } from "./altitude.ts";
import type { Criterion, Found } from "./criterion.ts";
import { partReason } from "./part.ts";

/** Distance is over the ground; the slant that a DME reads is its own. */
export const ARC_CRITERIA: readonly Criterion<ArcFacts>[] = [
  {
    id: "arc-distance",
    title: "Off the arc, worst",
    unit: "NM",
    limit: ({ arc }) => arc.distance,
    find(facts, limit): Found {
      const { deviation, judged } = facts;
      const { maxNm, doubt95Nm, maxUtc: worstUtc, withinOneNm, unseen } = deviation;
      const beyond = limit === 1 && judged.seconds !== null ? (1 - withinOneNm) * judged.seconds : null;
      const notWhole = partReason(facts);
      return { value: Math.abs(maxNm), doubt95: doubt95Nm, beyond, worstUtc, unseen, notWhole };
    },
  },
  ...altitudeCriteria<ArcFacts>(
    "arc",
    ({ arc }) => arc.altitude,
    (facts) => facts.altitude,
    partReason,
  ),
];
