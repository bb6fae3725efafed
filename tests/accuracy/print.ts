/** The big run, `npm run accuracy`: every scenario, mismatch and logging over many seeds, and real flights where there are some. */
import { matched } from "./bound.ts";
import { Meter } from "./compare.ts";
import { printHolds, printRealHolds } from "./holds.ts";
import { printApproaches } from "./print-approaches.ts";
import { printCauses } from "./print-causes.ts";
import { printHabits } from "./print-habits.ts";
import { scoreReal } from "./real.ts";
import { flyScenario, LOGGINGS, MISMATCHES, SCENARIOS, USUAL_SHEAR } from "./scenarios.ts";

/** Seeds from here on are never used for tuning; those below are. */
const FIRST_SEED = 800_000;

const kt = (v: number) => (Number.isNaN(v) ? "-" : v.toFixed(2));
const share = (v: number) => (Number.isNaN(v) ? "-" : v.toFixed(3));

export default function print(args: readonly string[], write: (line: string) => void): void {
  const after = (flag: string) => (args.includes(flag) ? args[args.indexOf(flag) + 1] : undefined);
  const folder = after("--real");
  if (args.includes("--holds")) {
    if (folder) printRealHolds(folder, write);
    else printHolds(Number(after("--seeds") ?? 400), write);
    return;
  }
  if (args.includes("--habits")) {
    const pilots = after("--pilots");
    if (pilots !== undefined && !/^[1-9]\d{0,3}$/.test(pilots))
      throw new RangeError(`invalid --pilots: ${pilots}; a whole number from 1 to 9999`);
    printHabits(pilots === undefined ? undefined : Number(pilots), write);
    return;
  }
  if (args.includes("--real")) {
    printReal(folder ?? "", write);
    return;
  }
  const seeds = Number(after("--seeds") ?? 200);
  if (!(Number.isInteger(seeds) && seeds > 0)) throw new RangeError(`invalid --seeds: ${after("--seeds")}`);
  if (args.includes("--approaches")) {
    printApproaches(seeds, write);
    return;
  }
  if (args.includes("--causes")) {
    printCauses(seeds, write);
    return;
  }
  write(
    `${seeds} flights a line, seeds from ${FIRST_SEED} on; errors of the wind vector, kt; coverage of the 95 % ellipse; nothing told beforehand`,
  );
  write(
    "| log | air | flight | RMSE | told | bound | coverage | mean wind | told | bound | direction, deg | claimed | median where claimed | 90 % | coverage where claimed |",
  );
  write(`|${"---|".repeat(15)}`);
  const only = after("--only");
  for (const every of LOGGINGS) {
    for (const air of every === 1 ? MISMATCHES : MISMATCHES.slice(0, 1)) {
      for (const scenario of SCENARIOS) {
        const name = `${every} ${air.name}, ${scenario.name}`;
        if (only !== undefined && !name.includes(only)) continue;
        const meter = new Meter();
        // of a straight nothing is known but what was believed beforehand
        const comparable = air.name === "base" && scenario.name !== "straight";
        const mean = { bound: 0, error: 0, meanBound: 0, meanError: 0 };
        for (let seed = FIRST_SEED; seed < FIRST_SEED + seeds; seed++) {
          const flown = flyScenario(scenario, seed, { every, ...air.options });
          meter.flight(flown);
          if (!comparable) continue;
          const best = matched(flown, scenario.options?.shear ?? USUAL_SHEAR);
          for (const key of ["bound", "error", "meanBound", "meanError"] as const)
            mean[key] += best[key] / seeds;
        }
        const root = (v: number) => (comparable ? kt(Math.sqrt(v)) : "-");
        const r = meter.report();
        if (r.flights !== seeds || r.samples === 0) throw new Error(`${scenario.name} dropped flights`);
        write(
          `| ${[
            every === "adaptive" ? every : `${every} s`,
            air.name,
            scenario.name,
            kt(r.rmse),
            root(mean.error),
            root(mean.bound),
            share(r.coverage),
            kt(r.meanWind),
            root(mean.meanError),
            root(mean.meanBound),
            kt(r.meanDirection),
            r.claimed.toFixed(2),
            kt(r.claimedMedian),
            kt(r.claimed90),
            share(r.claimedCoverage),
          ].join(" | ")} |`,
        );
      }
    }
  }
}

function printReal(folder: string, write: (line: string) => void): void {
  const scores = scoreReal(folder);
  if (!scores) {
    write(`no folder ${folder}: no real flights scored`);
    return;
  }
  write(
    "| flight | rows claimed | truth samples | claimed | median kt | 90 % kt | coverage | along-track coverage |",
  );
  write("|---|---|---|---|---|---|---|---|");
  for (const { flight, claimed, score } of scores) {
    const cells = score
      ? [
          score.samples,
          score.claimed.toFixed(2),
          kt(score.claimedMedian),
          kt(score.claimed90),
          share(score.claimedCoverage),
          share(score.alongCoverage),
        ]
      : ["no measured wind", "-", "-", "-", "-", "-"];
    write(`| ${[flight, claimed.toFixed(2), ...cells].join(" | ")} |`);
  }
}
