/** The big run of causes and leads, `npm run accuracy -- --causes`: unseen seeds. */
import { FAULTS, type Fault } from "../../src/simulator/index.ts";
import { meterCauses, type Telling } from "./causes.ts";
import { meterFinalCauses } from "./final-causes.ts";
import { type LineLeads, meterArcLeads, meterFinalLeads } from "./line-leads.ts";

/** Seeds from here on are never used for tuning; those below 1,000 are. */
const FIRST_SEED = 600_000;

const percent = (n: number, of: number) => `${((100 * n) / Math.max(1, of)).toFixed(1)} %`;

export function printCauses(flights: number, write: (line: string) => void, first = FIRST_SEED): void {
  write(
    `${flights} flights of four courses for each fault; the cause named first against the pilot's one fault`,
  );
  const { tellings, leads, notFound } = meterCauses(first, flights);
  printTellings("courses", tellings, write);
  if (notFound > 0) write(`${notFound} courses were not found on their flight`);
  write("");
  write(`scripted corrections: ${leads.correctionS.length} found, ${leads.missed} not`);
  write("| track error, degrees | n | correction within 3 s | lead within 3 s | worst lead, s |");
  write("|---|---|---|---|---|");
  for (const [from, to] of [
    [2, 4],
    [4, 6],
    [6, 10],
    [10, 30],
    [2, 30],
  ] as const) {
    const rows = leads.errorDeg.flatMap((e, i) => (e >= from && e < to ? [i] : []));
    const within = (of: readonly number[]) => rows.filter((i) => Math.abs(of[i]!) <= 3).length;
    const worst = Math.max(0, ...rows.map((i) => Math.abs(leads.leadS[i]!)));
    const of = rows.length;
    write(
      `| ${from} to ${to} | ${of} | ${percent(within(leads.correctionS), of)} | ${percent(within(leads.leadS), of)} | ${worst.toFixed(0)} |`,
    );
  }
  write("");
  write(`${flights} finals for each fault, after a full turn in their air`);
  const finals = meterFinalCauses(first, flights);
  printTellings("finals", finals.tellings, write);
  if (finals.notFound > 0) write(`${finals.notFound} finals were not found on their flight`);
  write("");
  printLineLeads("arcs, by distance", meterArcLeads(first, flights), write);
  printLineLeads("finals", meterFinalLeads(first, flights), write);
}

function printTellings(
  of: string,
  tellings: Readonly<Record<Fault, Telling>>,
  write: (line: string) => void,
): void {
  write(`| fault | ${of} | right | told instead |`);
  write("|---|---|---|---|");
  for (const fault of FAULTS) {
    const { flown, right, instead } = tellings[fault];
    const others = Object.entries(instead).sort((a, b) => b[1] - a[1]);
    write(
      `| ${fault} | ${flown} | ${percent(right, flown)} | ${others.map(([c, n]) => `${c} ${n}`).join(", ")} |`,
    );
  }
}

function printLineLeads(line: string, leads: LineLeads, write: (line: string) => void): void {
  const { correctionS, leadS, missed, kept, blamed } = leads;
  const of = correctionS.length;
  const within = (errors: readonly number[]) => errors.filter((e) => Math.abs(e) <= 3).length;
  write(
    `${line}: scripted corrections ${of} found, ${missed} not; correction within 3 s ${percent(within(correctionS), of)}, lead within 3 s ${percent(within(leadS), of)}; of ${kept} that kept it ${blamed} told of`,
  );
}
