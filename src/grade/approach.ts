/** The criteria of an approach: needles on the final, heights at the fix and the minimum. */
import type { ApproachFacts } from "../approach/facts.ts";
import type { MinimumLimits, TestStandard } from "../standard/test-standard.ts";
import { doubtOfHeight } from "./altitude.ts";
import { gateCriteria, needleUntold } from "./approach-gates.ts";
import { secondsBeyond } from "./beyond.ts";
import type { Criterion, Found } from "./criterion.ts";

type Approach = TestStandard["approach"];

/** A path by the altimeter, which the standard may hold in feet instead of in scale. */
const barometric = ({ guidance }: ApproachFacts, { barometricPath }: Approach): boolean =>
  guidance.kind === "lnav-vnav" && barometricPath !== null;

/** A log that ends on the final shows a part of it, of which nothing is met for the whole. */
const wholeUnless = ({ outcome, judged }: ApproachFacts): { readonly notWhole?: string } =>
  outcome === "log-ends" && judged.ends === "end-of-match" ? { notWhole: "log-ends-on-final" } : {};

const FINAL: readonly Criterion<ApproachFacts>[] = [
  {
    id: "approach-needle",
    title: "Needle on the final, worst",
    unit: "share",
    limit: ({ approach }) => approach.needle,
    find(facts, limit, { approach }): Found {
      const untold = needleUntold(facts);
      if (untold) return { cannotTell: untold };
      const { max, doubt95, maxUtc: worstUtc, unseen } = facts.needle;
      const found = {
        value: Math.abs(max),
        doubt95,
        beyond: secondsBeyond(limit, facts.needle, facts.judged),
        worstUtc,
        unseen,
        ...wholeUnless(facts),
      };
      const linear = facts.guidance.halfAngleDeg === null;
      return approach.briefly && linear ? { ...found, leave: { upTo: approach.briefly.limit } } : found;
    },
  },
  {
    id: "approach-glide-path",
    title: "Glide path needle, where it is farthest off with its doubt",
    unit: "share",
    limit: ({ approach }) => approach.glidePath,
    find(facts, limit, { approach }): Found | null {
      const path = facts.glidePath;
      if (!path) return facts.height ? null : { cannotTell: "no-height" };
      if (path.supposed || barometric(facts, approach)) return null;
      // off beyond doubt anywhere is off; within it is only where no moment may be off
      const { surest, widest } = path;
      const { needle, doubt95, utc } = Math.abs(surest.needle) - surest.doubt95 > limit ? surest : widest;
      const out = secondsBeyond(limit, path.needle, facts.judged);
      const { unseen } = path.needle;
      return { value: Math.abs(needle), doubt95, beyond: out, worstUtc: utc, unseen, ...wholeUnless(facts) };
    },
  },
  ...(["below", "aboveLow"] as const).map(
    (side): Criterion<ApproachFacts> => ({
      id: side === "below" ? "approach-path-below" : "approach-path-above",
      title: side === "below" ? "Below the path, worst" : "Above the path from 1,000 ft down, worst",
      unit: "ft",
      limit: ({ approach }) => approach.barometricPath?.[side] ?? null,
      find(facts, _, { approach }): Found | null {
        if (!facts.glidePath || !barometric(facts, approach)) return null;
        const { below, aboveLow } = facts.glidePath;
        const extreme = side === "below" ? below : aboveLow;
        if (!extreme) return { value: 0, doubt95: 0, beyond: null, worstUtc: null, ...wholeUnless(facts) };
        const { ft, doubt95Ft, utc } = extreme;
        return {
          ...{
            value: ft,
            toward: ft,
            doubt95: doubt95Ft,
            beyond: null,
            worstUtc: utc,
            ...wholeUnless(facts),
          },
          doubtIs: doubtOfHeight(facts),
        };
      },
    }),
  ),
];

const OVER_FIX: Criterion<ApproachFacts> = {
  id: "approach-fix-height",
  title: "Height over the final fix, against the briefed one",
  unit: "ft",
  limit: ({ approach }) => approach.fixAltitude,
  find(facts): Found | null {
    const { finalFix, finalFixPassage: passage } = facts;
    if (!finalFix || finalFix.altitudeFt === null) return null;
    if (!passage) return { cannotTell: "fix-not-passed" };
    if (passage.altitudeFt === null || passage.altimeter95Ft === null) return { cannotTell: "no-height" };
    const value = Math.abs(passage.altitudeFt - finalFix.altitudeFt);
    const doubt95 = passage.altimeter95Ft;
    return { value, doubt95, beyond: null, worstUtc: passage.utc, doubtIs: doubtOfHeight(facts) };
  },
};

/** At a minimum descent altitude the lowest height counts; at a decision altitude the one where the climb was begun. */
function minimumCriterion(kind: "descent" | "decision", side: keyof MinimumLimits): Criterion<ApproachFacts> {
  const name = kind === "descent" ? "the minimum descent altitude" : "the decision altitude, at the climb";
  return {
    id: `approach-${kind === "descent" ? "minimum" : "decision"}-${side}`,
    title: `${side === "below" ? "Below" : "Above"} ${name}`,
    unit: "ft",
    limit: ({ approach: a }) => (kind === "descent" ? a.minimumDescent : a.decision)[side],
    find(facts, limit): Found | null {
      const { minimum, missed, outcome, height } = facts;
      if (minimum?.kind !== kind) return null;
      if (!height) return { cannotTell: "no-height" };
      if (outcome === "landed") return kind === "descent" ? { cannotTell: "left-for-landing" } : null;
      const margin = kind === "descent" ? minimum.marginFt : missed && missed.altitudeFt - minimum.altitudeFt;
      const doubt95 = kind === "descent" ? minimum.altimeter95Ft : (missed?.altimeter95Ft ?? null);
      if (margin === null || doubt95 === null) return { cannotTell: "crossing-not-known" };
      const toward = side === "below" ? -margin : margin;
      const worstUtc = kind === "descent" ? minimum.lowestUtc : (missed?.startUtc ?? null);
      const { unseen } = minimum;
      // never flown down to: left before it by a turn away, or the log ends
      const short = side === "above" && margin > limit && minimum.passedNm === null && !minimum.passedIn;
      if (kind === "descent" && short && outcome === "left-final")
        return margin - doubt95 > limit ? { notFlown: true } : { cannotTell: "minimum-not-reached" };
      if (kind === "descent" && outcome === "log-ends" && (short || toward < 0))
        return { cannotTell: "log-ends" };
      // what was seen too high may have been low enough in a silence
      if (side === "above" && kind === "descent" && margin > limit && unseen && -unseen.most <= limit)
        return { cannotTell: "log-silent" };
      return {
        value: Math.max(0, toward),
        toward,
        doubt95,
        beyond: null,
        worstUtc,
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
      return facts.outcome === "log-ends" ? { cannotTell: "log-ends" } : { notFlown: true };
    const worst = flown.reduce((a, b) => (b.marginFt! < a.marginFt! ? b : a));
    const unseen = flown.flatMap((step) => step.unseen ?? []).sort((a, b) => b.most - a.most)[0];
    const toward = -worst.marginFt!;
    return {
      value: Math.max(0, toward),
      toward,
      doubt95: worst.altimeter95Ft!,
      beyond: null,
      worstUtc: worst.lowestUtc ?? null,
      unseen,
      ...(flown.length < known.length ? wholeUnless(facts) : {}),
      doubtIs: doubtOfHeight(facts),
    };
  },
};

const MISSED_TRACK: Criterion<ApproachFacts> = {
  id: "approach-missed-track",
  title: "Track of the missed approach, worst off its course",
  unit: "deg",
  limit: ({ approach }) => approach.missedTrack,
  find({ missed, outcome }): Found | null {
    if (outcome !== "missed" || !missed?.course) return null;
    const { track } = missed.course;
    if (!track) return { cannotTell: "log-silent" };
    const { worstErrorDeg, doubt95Deg: doubt95, worstUtc } = track;
    return { value: Math.abs(worstErrorDeg), doubt95, beyond: null, worstUtc };
  },
};

export const APPROACH_CRITERIA: readonly Criterion<ApproachFacts>[] = [
  ...FINAL,
  OVER_FIX,
  STEP_DOWN,
  minimumCriterion("descent", "below"),
  minimumCriterion("descent", "above"),
  minimumCriterion("decision", "below"),
  minimumCriterion("decision", "above"),
  MISSED_TRACK,
  ...gateCriteria(1000),
  ...gateCriteria(500),
];
