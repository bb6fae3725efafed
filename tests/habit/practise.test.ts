/** What is to be practised next, and which flights are chosen; by construction. */
import { describe, expect, it } from "vitest";
import { chooseFlights, habitsOf, practiseNext, TENDENCIES } from "../../src/habit/index.ts";
import { seeded } from "../support/flown.ts";
import { flight, flights } from "./made-up-flights.ts";

describe("practise next", () => {
  it("the largest habits, and after them what may be beyond the tolerance and whose side is known", () => {
    const { normal } = seeded(30);
    // mean 1.2, standard error 0.44: surely above 0 (1.2 / 0.44 = 2.8, Student's 2.36 with 7), not surely above 0.25
    const unsure = [3, -0.3, 1.4, 0.4, 1.9, 1, 2.2, 0.2];
    const report = habitsOf(
      flights(8, (i) => ({
        "descent-late": [1.5 + 0.2 * normal()],
        chasing: [2 + 0.2 * normal()],
        "leg-time": [unsure[i]!],
        "needle-side": [0.02 * normal()],
        "roll-out-past-left": [2 * normal()],
      })),
    );
    const items = practiseNext(report);
    expect(items.map(({ habit, sure }) => [habit.id, sure])).toEqual([
      ["chasing", true],
      ["descent-late", true],
      ["leg-time", false],
    ]);
  });

  it("is never more than three", () => {
    const report = habitsOf(
      flights(8, (i) =>
        Object.fromEntries(TENDENCIES.slice(0, 6).map(({ id }, k) => [id, [2 + 0.01 * ((i + k) % 3)]])),
      ),
    );
    expect(practiseNext(report)).toHaveLength(3);
  });
});

describe("which flights", () => {
  const all = [
    flight(5, {}, { pilot: "A", aircraft: "X" }),
    flight(1, {}, { pilot: "B", aircraft: "X" }),
    flight(3, {}, { pilot: "A", aircraft: "Y" }),
    { ...flight(9, {}), startUtc: null, endUtc: null },
  ];
  const ids = (choice: Parameters<typeof chooseFlights>[1]) => chooseFlights(all, choice).map(({ id }) => id);

  it("all of them in flown order, those without a time last", () => {
    expect(ids({})).toEqual(["flight 1", "flight 3", "flight 5", "flight 9"]);
  });
  it("by pilot, aircraft and period, the end left out", () => {
    expect(ids({ pilot: "A" })).toEqual(["flight 3", "flight 5"]);
    expect(ids({ pilot: "A", aircraft: "Y" })).toEqual(["flight 3"]);
    expect(ids({ from: all[2]!.startUtc, to: all[0]!.startUtc })).toEqual(["flight 3"]);
    expect(ids({ pilot: "nobody" })).toEqual([]);
  });
});
