/** What is said of flights, and above all what is not: by made-up exercises whose answer is plain. */
import { describe, expect, it } from "vitest";
import { habitsOf, LEAST_EXERCISES, TENDENCIES } from "../../src/habit/index.ts";
import { seeded } from "../support/flown.ts";
import { near } from "../support/near.ts";
import { flights, late } from "./made-up-flights.ts";

describe("nothing is said of too little", () => {
  it.each([
    ["four exercises on two flights", 2, 2],
    ["five exercises on one flight", 1, 5],
    ["four exercises on four flights", 4, 1],
  ])("%s", (_, count, each) => {
    const habit = late(flights(count, () => ({ "descent-late": new Array<number>(each).fill(2) })));
    expect(habit).toMatchObject({ status: "too-few", mean: null, trend: null, seenOn: [] });
  });

  it("five exercises on two flights are enough for a mean, however wide", () => {
    const habit = late(flights(2, (i) => ({ "descent-late": i === 0 ? [2, 2.1, 2] : [2.1, 1.9] })));
    expect(habit.exercises).toBe(LEAST_EXERCISES);
    expect(habit.mean).not.toBeNull();
    expect(habit.mean!.high95 - habit.mean!.low95).toBeGreaterThan(0.1);
  });

  it("of no flights there is nothing, and no fault", () => {
    expect(habitsOf([])).toEqual({ flights: [], exercises: 0, habits: [] });
  });

  it("a tendency that no exercise tells is not listed", () => {
    const { habits } = habitsOf(flights(6, () => ({ "descent-late": [0] })));
    expect(habits.map(({ id }) => id)).toEqual(["descent-late"]);
  });
});

describe("what is said", () => {
  const scattered = (seed: number, middle: number, spread: number, count = 12) => {
    const { normal } = seeded(seed);
    return flights(count, () => ({
      "descent-late": [middle + spread * normal(), middle + spread * normal()],
    }));
  };

  it.each([
    ["far beyond the tolerance", 1.8, 0.3, "beyond"],
    ["clear of what is small, within the tolerance", 0.7, 0.2, "habit"],
    ["next to nothing", 0.02, 0.1, "small"],
    ["nothing on average, but anything on the day", 0, 1.5, "cannot-tell"],
  ])("%s", (_, middle, spread, status) => {
    expect(late(scattered(3, middle, spread)).status).toBe(status);
  });

  it("is the same to the other side", () => {
    const [here, there] = [late(scattered(4, 1.8, 0.3)), late(scattered(4, -1.8, 0.3))];
    expect(there.status).toBe(here.status);
    expect(Math.sign(there.mean!.value)).toBe(-1);
  });

  it("twice the same exercise on every flight makes it no surer", () => {
    const { normal } = seeded(8);
    const days = Array.from({ length: 8 }, () => 0.8 + 0.5 * normal());
    const once = late(flights(8, (i) => ({ "descent-late": [days[i]!] })));
    const twice = late(flights(8, (i) => ({ "descent-late": [days[i]!, days[i]!] })));
    near(twice.mean!.high95 - twice.mean!.low95, once.mean!.high95 - once.mean!.low95, 1e-6);
  });

  it("with nineteen other tendencies tried, one that stands alone has to be the surer", () => {
    const alone = scattered(12, 0.62, 0.55, 8);
    const { normal } = seeded(13);
    const among = alone.map((f) => ({
      ...f,
      observations: [
        ...f.observations,
        ...TENDENCIES.filter(({ id }) => id !== "descent-late").map(({ id }) => ({
          ...{ tendency: id, exercise: 0, value: 0.3 * normal(), doubt95: 0, tolerance: 1 },
        })),
      ],
    }));
    expect(late(among).mean).toEqual(late(alone).mean);
    expect(late(among).chance!).toBeGreaterThan(5 * late(alone).chance!);
  });

  it("lists the largest first, and flights that show it most", () => {
    const says = (i: number) => ({
      "descent-late": [i === 7 ? 3 : 1.5 + 0.01 * i],
      chasing: [2.5 + 0.01 * (i % 3)],
    });
    const report = habitsOf(flights(10, says));
    expect(report.habits.map(({ id }) => id)).toEqual(["chasing", "descent-late"]);
    expect(report.exercises).toBe(10);
    expect(late(flights(10, says)).seenOn).toEqual([7, 9, 8]);
  });

  it("a habit that is being unlearnt is better, one that grows worse, one that stays neither", () => {
    const { normal } = seeded(21);
    const trend = (per: number, from: number) =>
      late(flights(15, (i) => ({ "descent-late": [from + per * i + 0.05 * normal()] }))).trend;
    expect(trend(-0.08, 2)).toMatchObject({ better: true });
    near(trend(-0.08, 2)!.perFlight, -0.08, 0.01);
    expect(trend(0.08, 1)).toMatchObject({ better: false });
    expect(trend(0.08, -2)).toMatchObject({ better: true });
    expect(trend(0, 1)).toBeNull();
  });

  it("a line from one side to the other is better where it ends next to nothing, worse where it began there, else neither", () => {
    const { normal } = seeded(22);
    const trend = (first: number, last: number) =>
      late(flights(15, (i) => ({ "descent-late": [first + ((last - first) * i) / 14 + 0.02 * normal()] })))
        .trend;
    expect(trend(1.5, -1.2)).toBeNull(); // its mean lies above 0
    expect(trend(-1.2, 1.5)).toBeNull();
    expect(trend(1.5, -0.1)).toMatchObject({ better: true });
    expect(trend(0.1, -1.5)).toMatchObject({ better: false });
    expect(trend(0.1, -0.1)).toBeNull();
  });

  it("no trend of fewer than five flights", () => {
    expect(late(flights(4, (i) => ({ "descent-late": [2 - 0.5 * i, 2 - 0.5 * i] }))).trend).toBeNull();
  });
});
