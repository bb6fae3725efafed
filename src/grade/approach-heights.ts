/** The criteria of heights by the altimeter on an approach: over the final fix, at step-downs, at the minimum. */
import { type ApproachFacts, onWheels } from "../approach/facts.ts";
import { aboveMinimum, downToMinimum, groundNear } from "../approach/index.ts";
import type { MinimumLimits, TestStandard } from "../standard/test-standard.ts";
import { doubtOfHeight } from "./altitude.ts";
import { momentUntold } from "./approach-gates.ts";
import type { Criterion, Found } from "./criterion.ts";

/** A log that ends on the final shows a part of it, of which nothing is met for the whole. */
export const wholeUnless = ({ outcome, judged }: ApproachFacts): { readonly notWhole?: string } =>
  outcome === "log-ends" && judged.ends === "end-of-match" ? { notWhole: "log-ends-on-final" } : {};

const OVER_FIX: Criterion<ApproachFacts> = {
  id: "approach-fix-height",
  title: "Height over the final fix, against the briefed one",
  unit: "ft",
  limit: ({ approach }) => approach.fixAltitude,
  find(facts): Found | null {
    const { finalFix, finalFixPassage: passage } = facts;
    if (!finalFix || finalFix.altitudeFt === null) return null;
    if (!passage) return { cannotTell: momentUntold(facts, "fix-not-passed") };
    if (passage.altitudeFt === null || passage.altimeter95Ft === null) return { cannotTell: "no-height" };
    const value = Math.abs(passage.altitudeFt - finalFix.altitudeFt);
    const doubt95 = passage.altimeter95Ft;
    return { value, doubt95, beyond: null, worstUtc: passage.utc, doubtIs: doubtOfHeight(facts) };
  },
};

/** What is said of a minimum that was gone below by right, or never flown down to; null where it is judged. */
function minimumNotFlown(facts: ApproachFacts, { minimumDescent }: TestStandard["approach"]): Found | null {
  const { minimum, outcome } = facts;
  const decision = minimum?.kind === "decision";
  const perhaps = outcome === "touch-and-go-or-low-pass";
  if (decision && perhaps) return { cannotTell: "maybe-touched" };
  if (perhaps || onWheels(outcome))
    return decision ? { notFlown: "no-missed-approach" } : { cannotTell: "left-for-landing" };
  if (decision && outcome === "left-final") return { notFlown: "turned-away" };
  if (decision && outcome === "log-ends") return { cannotTell: "log-ends" };
  const { margin, doubt95 } = aboveMinimum(facts);
  if (margin === null || doubt95 === null) return { cannotTell: "crossing-not-known" };
  if (outcome === "missed" && margin < 0 && groundNear(facts)) return { cannotTell: "maybe-touched" };
  if (outcome === "log-ends") return null;
  const turned = outcome === "left-final";
  const down = downToMinimum(facts, turned ? minimumDescent.above?.limit : undefined);
  if (down === "yes") return null;
  if (down === "perhaps") return { cannotTell: "minimum-not-reached" };
  return { notFlown: turned ? "turned-away-above" : "climbed-above" };
}

function minimumCriterion(kind: "descent" | "decision", side: keyof MinimumLimits): Criterion<ApproachFacts> {
  const name = kind === "descent" ? "the minimum descent altitude" : "the decision altitude, at the climb";
  return {
    id: `approach-${kind === "descent" ? "minimum" : "decision"}-${side}`,
    title: `${side === "below" ? "Below" : "Above"} ${name}`,
    unit: "ft",
    limit: ({ approach: a }) => (kind === "descent" ? a.minimumDescent : a.decision)[side],
    find(facts, limit, { approach }): Found | null {
      const { minimum, outcome, height } = facts;
      if (minimum?.kind !== kind) return null;
      if (!height) return { cannotTell: "no-height" };
      const notFlown = minimumNotFlown(facts, approach);
      if (notFlown) return notFlown;
      const above = aboveMinimum(facts);
      const margin = above.margin!;
      const toward = side === "below" ? -margin : margin;
      const { unseen } = minimum;
      // never flown down to: the log ends before
      const short = side === "above" && margin > limit && minimum.passedNm === null && !minimum.passedIn;
      if (kind === "descent" && outcome === "log-ends" && (short || toward < 0))
        return { cannotTell: "log-ends" };
      // what was seen too high may have been low enough in a silence
      if (side === "above" && kind === "descent" && margin > limit && unseen && -unseen.most <= limit)
        return { cannotTell: "log-silent" };
      return {
        value: toward,
        oneSided: true,
        doubt95: above.doubt95!,
        beyond: null,
        worstUtc: above.utc,
        unseen: side === "below" ? unseen : null,
        doubtIs: doubtOfHeight(facts),
      };
    },
  };
}

const STEP_DOWN: Criterion<ApproachFacts> = {
  id: "approach-step-down",
  title: "Below a step-down before it, worst",
  unit: "ft",
  limit: ({ approach }) => approach.stepDown,
  find(facts): Found | null {
    const { stepDowns } = facts;
    if (stepDowns.length === 0) return null;
    if (!facts.height) return { cannotTell: "no-height" };
    const known = stepDowns.filter(
      ({ marginFt, altimeter95Ft }) => marginFt !== null && altimeter95Ft !== null,
    );
    if (known.length === 0) return { cannotTell: "crossing-not-known" };
    // one after the climb away, or after the log, was not flown to, unless it was gone below on the way
    const flown = known.filter(
      ({ passedFt, silence, marginFt }) => passedFt !== null || silence || marginFt! < 0,
    );
    if (flown.length === 0)
      return facts.outcome === "log-ends"
        ? { cannotTell: "log-ends" }
        : { notFlown: facts.outcome === "left-final" ? "turned-away-before" : "climbed-before" };
    const worst = flown.reduce((a, b) => (b.marginFt! < a.marginFt! ? b : a));
    const unseen = flown.flatMap((step) => step.unseen ?? []).sort((a, b) => b.most - a.most)[0];
    return {
      value: -worst.marginFt!,
      oneSided: true,
      doubt95: worst.altimeter95Ft!,
      beyond: null,
      worstUtc: worst.lowestUtc ?? null,
      unseen,
      ...(flown.length < known.length ? wholeUnless(facts) : {}),
      doubtIs: doubtOfHeight(facts),
    };
  },
};

export const HEIGHTS: readonly Criterion<ApproachFacts>[] = [
  OVER_FIX,
  STEP_DOWN,
  minimumCriterion("descent", "below"),
  minimumCriterion("descent", "above"),
  minimumCriterion("decision", "below"),
  minimumCriterion("decision", "above"),
];
