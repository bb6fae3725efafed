/** The big run of approaches, `npm run accuracy -- --approaches`: unseen seeds at 1 s and 5 s, landings and missed approaches. */
import { heightBounds } from "./approach-bound.ts";
import { meterApproach, noErrors, spreadOf } from "./approaches.ts";

/** Seeds from here on are never used for tuning; those below 1,000 are. */
const FIRST_SEED = 500_000;

export function printApproaches(seeds: number, write: (line: string) => void, first = FIRST_SEED): void {
  write(
    `${seeds} approaches a line; errors against the simulator's truth; wind to 30 kt, nothing told beforehand but the brief`,
  );
  const bounds = heightBounds(first);
  write("| log | ends | fact | n | rms | 95 % | worst | target | within |");
  write("|---|---|---|---|---|---|---|---|---|");
  for (const [fact, target, { rms, within }] of [
    ["angle flown, deg, tied to the runway", 0.05, bounds.angleDeg],
    ["minimum, s, tied to the runway", 2, bounds.minimumTiedS],
    ["minimum, s, not tied", 2, bounds.minimumUntiedS],
  ] as const)
    write(
      `| any | bound of the receiver's height error | ${fact} | | ${rms.toFixed(3)} | | | ${target} | ${Math.round(100 * within)} % |`,
    );
  for (const every of [1, 5]) {
    for (const ends of ["landing", "missed"] as const) {
      const errors = noErrors();
      for (let seed = first; seed < first + seeds; seed++) meterApproach(errors, { seed, every, ends });
      const line = (fact: string, values: readonly number[], digits: number, target: number) => {
        const { n, rms, p95, worst } = spreadOf(values);
        const within = values.filter((v) => Math.abs(v) <= target).length / n;
        if (n > 0)
          write(
            `| ${every} s | ${ends} | ${fact} | ${n} | ${rms.toFixed(digits)} | ${p95.toFixed(digits)} | ${worst.toFixed(digits)} | ${target} | ${(100 * within).toFixed(1)} % |`,
          );
      };
      line("lateral, m, rms of a flight", errors.lateralM, 2, 6);
      line("angle flown, deg, tied to the runway", errors.angleDeg, 3, 0.05);
      line("overshoot, NM", errors.overshootNm, 4, 0.02);
      line("final fix, s", errors.fixS, 2, 2);
      line("threshold, s", errors.thresholdS, 2, 2);
      line("minimum, s", errors.minimumS, 2, 2);
      line("minimum, s, without the receiver's height error", errors.minimumOwnS, 2, 2);
      line("missed approach begun, s", errors.missedS, 2, 5);
      const { flights, matched, found, anchored } = errors;
      write(
        `| ${every} s | ${ends} | matched ${matched}, found blind ${found}, tied to the runway ${anchored} | ${flights} | | | | | |`,
      );
      for (const missing of errors.missing)
        write(`| ${every} s | ${ends} | missing: ${missing} | 1 | | | | | |`);
    }
  }
}
