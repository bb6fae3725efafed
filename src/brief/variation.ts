/** The variation that turns a magnetic course at a fix into a true one. */
import { modelVariation, UNDATED } from "../geodesy/index.ts";
import type { Issue, Where } from "../quantity/issue.ts";
import { compassVariation, UNKNOWN_VARIATION, type VariationUsed } from "../quantity/magnetic.ts";
import { utcText } from "../quantity/time.ts";
import type { UtcMillis } from "../quantity/units.ts";
import type { Fix } from "./brief.ts";

/**
 * The station's own declination where the brief gives it (radials are aligned with that), else the model's
 * variation at the fix on the day of the flight.
 *
 * A log without times takes the latest model with a warning `variation-date-assumed`, because where the aircraft
 * was can still be compared. A date that no model covers gives null: the error could be of any size.
 */
export function variationOf(
  fix: Fix,
  time: UtcMillis | null,
  where: Where,
): { readonly used: VariationUsed | null; readonly issues: readonly Issue[] } {
  const used = modelVariation(fix, time ?? UNDATED);
  if (fix.declination !== null) {
    const { declination: degrees } = fix;
    const dayDegrees = compassVariation(used) ?? degrees;
    return { used: { degrees, from: "station", model: null, dayDegrees }, issues: [] };
  }
  if (used.from === "unknown") return { used: null, issues: [] };
  if (time !== null) return { used, issues: [] };
  const { degrees, model } = used;
  const facts = { fix: fix.ident, degrees, model, date: utcText(UNDATED).slice(0, 10) };
  return { used, issues: [{ code: "variation-date-assumed", severity: "warning", where, facts }] };
}

/** Of courses that were written true, where a variation only serves the words. */
export const writtenTrue = (used: VariationUsed | null): VariationUsed =>
  used ? { ...used, from: "written-true", model: null } : UNKNOWN_VARIATION;
