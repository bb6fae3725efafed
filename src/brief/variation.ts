/** The variation that turns a magnetic course at a fix into a true one. */
import { variationAt } from "../geodesy/index.ts";
import type { Issue, Where } from "../quantity/issue.ts";
import { utcText } from "../quantity/time.ts";
import type { UtcMillis } from "../quantity/units.ts";
import type { Fix, VariationUsed } from "./brief.ts";

/**
 * The date that stands in for a log without times: the middle of the years that the World Magnetic Model 2025 is
 * made for (2025.0 to 2030.0; NOAA NCEI, *The US/UK World Magnetic Model for 2025-2030*). Away from the
 * magnetic poles variation changes by at most about 0.2° a year, so inside those years this is within 0.5°.
 */
const UNDATED = Date.UTC(2027, 6, 1);

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
  if (fix.declination !== null) {
    return { used: { degrees: fix.declination, from: "station", model: null }, issues: [] };
  }
  const found = variationAt(fix, time ?? UNDATED);
  if (found === null) return { used: null, issues: [] };
  const used: VariationUsed = { degrees: found.degrees, from: "model", model: found.model };
  if (time !== null) return { used, issues: [] };
  const facts = {
    fix: fix.ident,
    degrees: found.degrees,
    model: found.model,
    date: utcText(UNDATED).slice(0, 10),
  };
  return { used, issues: [{ code: "variation-date-assumed", severity: "warning", where, facts }] };
}
