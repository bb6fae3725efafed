/** How long it takes to tell the habits of a season, and of a school's thousand flights. */
import { habitsOf, type ObservedFlight, TENDENCIES } from "../../src/habit/index.ts";
import { seeded } from "../support/flown.ts";
import { bestOf, type Line } from "./time.ts";

/** Flights in each of which every tendency is told by two exercises. */
function flights(count: number): ObservedFlight[] {
  const { normal } = seeded(1);
  return Array.from({ length: count }, (_, i) => ({
    ...{ id: String(i), title: "", pilot: null, aircraft: null },
    startUtc: new Date(Date.UTC(2026, 0, 1) + i * 86_400_000).toISOString(),
    endUtc: null,
    observations: TENDENCIES.flatMap(({ id: tendency }) =>
      [0, 1].map((exercise) => ({ tendency, exercise, value: normal(), doubt95: 0.1, tolerance: 1 })),
    ),
  }));
}

export default function bench(): Line[] {
  return [20, 1000].map((count) => {
    const flown = flights(count);
    const seconds = bestOf(3, () => habitsOf(flown));
    return {
      text: `${TENDENCIES.length} tendencies over ${count} flights, ${2 * count} exercises each: ${(seconds * 1000).toFixed(0)} ms`,
    };
  });
}
