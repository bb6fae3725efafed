/** The gate of `npm test` for habits: one pilot of each kind of those that `npm run accuracy -- --habits` flies in hundreds. */
import { describe, expect, it } from "vitest";
import { habitsOf } from "../../src/habit/index.ts";
import { PILOTS, type PilotName } from "../../src/simulator/index.ts";
import { claimed, EXPECTED, flyLessons } from "./habits.ts";

/** Never used for tuning. */
const FIRST_SEED = 40_000;
/** One pilot scatters: enough flights that in the big run all of such pilots are told. */
const FLIGHTS: Readonly<Record<PilotName, number>> = {
  "no-habit": 20,
  "sits-downwind": 12,
  "half-the-correction": 20,
  "chases-the-needle": 10,
  "rolls-out-late-to-the-left": 20,
  "outbound-parallel": 20,
  "descends-late": 10,
};

describe("lessons of a simulated pilot, unseen seeds", () => {
  it.each(PILOTS)("%s: the habit is told, and of a pilot without one nothing", (pilot) => {
    const count = FLIGHTS[pilot];
    const flights = flyLessons(pilot, FIRST_SEED, count).map(({ flight }) => flight);
    const report = habitsOf(flights);
    expect(report.flights).toHaveLength(count);
    expect(report.exercises).toBeGreaterThan(3 * count);
    const told = claimed(report);
    if (EXPECTED[pilot].length === 0) expect(told).toEqual([]);
    else expect(told.filter((id) => EXPECTED[pilot].includes(id))).not.toEqual([]);
  });

  it("is told alike every time", () => {
    const once = () => habitsOf(flyLessons("descends-late", FIRST_SEED, 5).map(({ flight }) => flight));
    expect(JSON.stringify(once())).toBe(JSON.stringify(once()));
  });
});
