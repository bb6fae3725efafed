/** The big run of habits, `npm run accuracy -- --habits`: 200 simulated pilots of each kind with 5, 10 and 20 flights. */
import { habitsOf } from "../../src/habit/index.ts";
import { PILOTS } from "../../src/simulator/index.ts";
import { EXPECTED, type FlownLesson, flyLessons, scorePilots, type TrueWays } from "./habits.ts";

/** Never used for tuning: that was done on 1 to 250. */
const FIRST_SEED = 60_000;
const PILOTS_EACH = 200;
/** Flights flown of each kind for every pilot asked for: pilots share some, or the run would take a day. */
const FLIGHTS_A_PILOT = 3;

/** What the simulator was told to do, beside what was measured. */
const TRUE: readonly (readonly [string, (truth: TrueWays) => number | null])[] = [
  ["needle-downwind", (t) => t.needleDownwind],
  ["correction-inbound", (t) => t.missingShare],
  ["correction-outbound", (t) => t.missingShare],
  ["descent-late", (t) => t.descentLateS],
  ["roll-out-left", (t) => t.lateToLeftDeg],
];

export function printHabits(pilots: number | undefined, write: (line: string) => void): void {
  const each = pilots ?? PILOTS_EACH;
  const count = each * FLIGHTS_A_PILOT;
  write(
    `${each} pilots a line, drawn from ${count} flights of their kind (two courses, a descent, a hold); wind 8 to 30 kt`,
  );
  write("| pilot | flights | found | any habit told | intervals that hold | told |");
  write("|---|---|---|---|---|---|");
  const truths: string[] = [];
  for (const pilot of PILOTS) {
    const flown = flyLessons(pilot, FIRST_SEED, count);
    const flights = flown.map(({ flight }) => flight);
    for (const n of [5, 10, 20]) {
      const { found, any, covered, intervals, claims } = scorePilots(pilot, flights, n, each);
      const told = Object.entries(claims).sort((a, b) => b[1] - a[1]);
      write(
        `| ${[
          pilot,
          n,
          EXPECTED[pilot].length > 0 ? found.toFixed(3) : "-",
          any.toFixed(3),
          `${covered.toFixed(3)} of ${intervals}`,
          told.map(([id, times]) => `${id} ${times}`).join(", "),
        ].join(" | ")} |`,
      );
    }
    truths.push(...against(pilot, flown));
  }
  write("");
  write("Mean of all flights against what the simulator was told, in the unit of each figure");
  write("| pilot | figure | told | measured | measured, tolerances |");
  write("|---|---|---|---|---|");
  for (const line of truths) write(line);
}

function against(pilot: string, flown: readonly FlownLesson[]): string[] {
  const { habits } = habitsOf(flown.map(({ flight }) => flight));
  return TRUE.flatMap(([id, of]) => {
    const values = flown.map(({ truth }) => of(truth)).filter((v) => v !== null);
    const habit = habits.find((h) => h.id === id);
    if (values.length === 0 || !habit?.mean) return [];
    const told = values.reduce((a, b) => a + b, 0) / values.length;
    const { value } = habit.mean;
    const cells = [pilot, id, told.toFixed(2), (value * habit.tolerance).toFixed(2), value.toFixed(2)];
    return [`| ${cells.join(" | ")} |`];
  });
}
