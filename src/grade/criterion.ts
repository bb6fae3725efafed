/** A criterion: a small record that judges the facts of one kind of exercise against a standard. */
import type { Seconds } from "../quantity/units.ts";
import type { UnseenRecord } from "../quantity/unseen.ts";
import type { Limit, TestStandard } from "../standard/test-standard.ts";
import { confidenceBelow, confidenceWithin } from "./confidence.ts";
import type { Verdict } from "./verdict.ts";

/** What a criterion finds. */
export type Found =
  | {
      /** The deviation that decides: its size, or where one side only is out, that toward it, negative on the other. */
      readonly value: number;
      readonly oneSided?: true;
      readonly doubt95: number;
      readonly beyond: Seconds | null;
      /** The most that the value may have come to where the log is silent; of a deviation to one side, negative on the other. */
      readonly unseen?: UnseenRecord | null | undefined;
      readonly worstUtc: string | null;
      /** Where only a part of the time that was given is judged: when it begins, and the worst of what came before. */
      readonly part?: {
        readonly fromUtc: string | null;
        readonly before: number;
        /** Why, as a code, nothing is *met* where that is past the limit; else `part-of-window`. */
        readonly why?: string;
      };
      /** Where not all laps of a hold could be judged: how many were, of those flown to the fix. */
      readonly laps?: { readonly judged: number; readonly flown: number };
      /** Why, as a code, what was seen is not the whole of what is judged: then nothing is *met*. */
      readonly notWhole?: string | null;
      /** Why the doubt is what it is, as a code, where a reader should know; else the reason is `doubt-straddles-limit`. */
      readonly doubtIs?: string;
      /** Where the value is past the limit, but the text lets it be for a while that it does not measure. */
      readonly leave?: { readonly upTo: number };
    }
  | { readonly kept: boolean /** What was asked for has no amount: it was done, or it was not. */ }
  /** What it judges was never flown to, as a height that a climb away began above: why, as a code. */
  | { readonly notFlown: string }
  | { readonly cannotTell: string /** What failed, where the program did. */; readonly fault?: string };

export interface Criterion<Facts> {
  /** Kebab-case, public, stable. */
  readonly id: string;
  readonly title: string;
  /** "side": what is asked for has no amount. */
  readonly unit: Verdict["unit"];
  /** The limit that the standard sets, null where it sets none: the criterion is then left out. */
  readonly limit: (standard: TestStandard, facts: Facts | null) => Limit<number> | null;
  /** Null where it was not asked for: the criterion is then left out. */
  readonly find: (facts: Facts, limit: number, standard: TestStandard) => Found | null;
}

/** A verdict is given where it is this sure. Design: 95 %. */
const SURE = 0.95;

/**
 * One verdict a criterion for which the standard has a limit. `facts` null: the exercise was not flown.
 *
 * *Met* where the value lies inside the limit with 95 % confidence, *not met* where it lies past it on its own side
 * with as much (a doubt wider than the limit is no proof of being outside), else *cannot tell*. No value is *met* that
 * may have passed the limit where the log is silent. A criterion that fails inside says so on its own line, with the
 * error, and leaves the others alone.
 */
export function judge<Facts>(
  criteria: readonly Criterion<Facts>[],
  facts: Facts | null,
  standard: TestStandard,
): Verdict[] {
  return criteria.flatMap((criterion) => {
    const limit = criterion.limit(standard, facts);
    const verdict = limit && verdictOf(criterion, facts, limit, standard);
    return verdict ? [verdict] : [];
  });
}

function verdictOf<Facts>(
  { id, title, unit, find }: Criterion<Facts>,
  facts: Facts | null,
  { limit, citation }: Limit<number>,
  standard: TestStandard,
): Verdict | null {
  const line = { criterion: id, title, unit, limit: unit === "side" ? null : limit, citation };
  const without = { value: null, doubt95: null, confidence: null, beyondS: null, worstUtc: null };
  if (facts === null) return { ...line, ...without, verdict: "not flown", reason: null };
  let found: Found | null;
  try {
    found = find(facts, limit, standard);
  } catch (error) {
    found = { cannotTell: "fault-in-criterion", fault: String(error) };
  }
  if (found === null) return null;
  if ("notFlown" in found) return { ...line, ...without, verdict: "not flown", reason: found.notFlown };
  if ("cannotTell" in found) {
    const { cannotTell: reason, fault } = found;
    return { ...line, ...without, verdict: "cannot tell", reason, ...(fault ? { fault } : {}) };
  }
  if ("kept" in found) return { ...line, ...without, verdict: found.kept ? "met" : "not met", reason: null };
  const { value, doubt95, beyond: beyondS, worstUtc, leave, doubtIs = "doubt-straddles-limit" } = found;
  const short = confidenceBelow(value, doubt95, limit);
  const within = found.oneSided ? confidenceBelow : confidenceWithin;
  const inside = within(value, doubt95, limit);
  const part = {
    ...(found.part ? { partFromUtc: found.part.fromUtc } : {}),
    ...(found.laps ? { laps: found.laps } : {}),
  };
  const told = { ...line, ...part, value, doubt95, beyondS, worstUtc };
  const { unseen } = found;
  const unseenInside = unseen ? within(unseen.most, doubt95, limit) : inside;
  if (inside >= SURE && unseen && unseenInside < SURE) {
    const silent = { reason: "log-silent", silentS: unseen.seconds, confidence: null };
    return { ...told, verdict: "cannot tell", ...silent };
  }
  if (inside >= SURE && found.part && confidenceWithin(found.part.before, doubt95, limit) < SURE) {
    return { ...told, verdict: "cannot tell", reason: found.part.why ?? "part-of-window", confidence: null };
  }
  if (inside >= SURE && found.notWhole) {
    return { ...told, verdict: "cannot tell", reason: found.notWhole, confidence: null };
  }
  if (inside >= SURE) return { ...told, verdict: "met", reason: null, confidence: inside };
  if (leave && short <= 1 - SURE && confidenceWithin(value, doubt95, leave.upTo) >= SURE) {
    return { ...told, verdict: "cannot tell", reason: "brief-excursion", confidence: inside };
  }
  if (short <= 1 - SURE) return { ...told, verdict: "not met", reason: null, confidence: 1 - short };
  return { ...told, verdict: "cannot tell", reason: doubtIs, confidence: inside };
}
