/** Procedure turns as taught and as limited: published numbers as data, no logic. */
import type { AngleSize, NauticalMiles, Seconds } from "../quantity/units.ts";

export const PROCEDURE_TURN = {
  /** Within so far of the fix where it begins, unless the procedure says otherwise. */
  within: 10,
  /** Between the two turns of a 45/180, for the slower categories. */
  away: 60,
  kinds: [
    { id: "45/180", away: 45, back: 180 },
    { id: "80/260", away: 80, back: 260 },
  ],
  citation:
    "FAA AIM 5-4-9 a, from memory: normally within 10 NM; ICAO Doc 8168, from memory: 45/180 one minute from the start of the turn for categories A and B, 80/260",
} as const satisfies {
  within: NauticalMiles;
  away: Seconds;
  kinds: readonly { id: "45/180" | "80/260"; away: AngleSize; back: AngleSize }[];
  citation: string;
};
