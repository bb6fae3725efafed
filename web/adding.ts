/** Many flights at once: kept first, then worked out one after the other, while the page is free for other things. */
import { signal } from "@preact/signals";
import { ANALYSIS_VERSION, shownName } from "../src/index.ts";
import { alone, inTurn } from "./alone.ts";
import { newAnalyst, type Outcome } from "./analyst.ts";
import { alsoSay, orSay, sayInPassing } from "./flight.ts";
import { writeNames } from "./labelling.ts";
import type { OpenRequest } from "./messages.ts";
import { tablesApart } from "./named-flights.ts";
import { failureWords, flightsWords, leftOutWords, unreadWords, whenCancelled } from "./outcome-words.ts";
import { go } from "./place.ts";
import { choicesOf, keptFiles } from "./request.ts";
import { rowFor } from "./row-for.ts";
import { dismiss } from "./store/arrivals.ts";
import { addFlights, clearAway, flightRow, flightRows, flightsOf, type NewFlight } from "./store/flights.ts";
import { fingerprintOf } from "./store/identity.ts";
import type { Arrival, FlightRow, Labels } from "./store/schema.ts";
import { columnsWords, workOutOne } from "./working-out.ts";

export interface Adding {
  readonly words: string;
  readonly done: number;
  readonly of: number;
  readonly stop: () => void;
}
export const adding = signal<Adding | null>(null);

const analyst = newAnalyst();
let stopped = false;

/** The flight under way is not finished, and no other begun. */
function stopAdding(): void {
  stopped = true;
  analyst.end(true);
}

interface WorkedOut {
  /** What was to be done, with the other flights that came to light. */
  readonly rows: readonly FlightRow[];
  /** How many were worked out before it was stopped. */
  readonly done: number;
}

async function workOut(known: readonly FlightRow[], what: string): Promise<WorkedOut> {
  stopped = false;
  const rows = [...known];
  let done = 0;
  for (let next = rows[0]; next && !stopped; next = rows[done]) {
    const words = `${what}: ${shownName(next.fileNames[0] ?? "")}`;
    adding.value = { words, done, of: rows.length, stop: stopAdding };
    rows.push(...((await orSay(workOutOne(analyst, next.id, () => stopped))) ?? []));
    if (!stopped) done++;
  }
  adding.value = null;
  return { rows, done };
}

/** Takes what waits in the logbook, or was made by another analysis, one after the other. */
async function whatWaits(): Promise<FlightRow[]> {
  const rows = (await orSay(flightRows())) ?? [];
  return rows
    .filter((row) => row.deleted === null && row.analysis !== ANALYSIS_VERSION)
    .sort((a, b) => b.added - a.added);
}

/** After a reload, or with a new analysis: goes on where it was left. Stopped, it waits for the next visit. */
export const resumeAdding = (): Promise<unknown> =>
  alone("adding", async () => {
    const rows = await whatWaits();
    const anew = rows.every((row) => row.summary !== null);
    if (rows.length > 0) await workOut(rows, anew ? "Working out anew" : "Working out");
  });

async function newFlights(request: OpenRequest, flights: readonly (readonly number[])[], labels: Labels) {
  const fresh: NewFlight[] = [];
  let known = 0;
  for (const of of flights) {
    const files = keptFiles(of.map((i) => request.files[i]!));
    const fingerprint = await fingerprintOf(files);
    if (fingerprint && (await flightsOf(fingerprint)).length > 0) known++;
    else fresh.push({ files, choices: choicesOf(request), labels, fingerprint });
  }
  return { fresh, known };
}

/** Files of several flights: all in the logbook at once, then worked out. */
export async function addSeveral(
  request: OpenRequest,
  { flights, unread, leftOut }: Extract<Outcome, { kind: "several" }>,
  arrival: Arrival | null,
  tables: readonly File[] = [],
): Promise<void> {
  if (!arrival) {
    alsoSay(`These files are of ${flightsWords(flights.length)}. Without a logbook, open one at a time.`);
    return;
  }
  go("logbook");
  alsoSay(...unreadWords(unread), ...leftOutWords(leftOut));
  const sorted = await orSay(
    newFlights(
      request,
      flights.map(({ files }) => files),
      arrival.labels,
    ),
  );
  const rows = sorted && (await orSay(addFlights(sorted.fresh, arrival.id)));
  if (!rows) return;
  await writeNames(tables);
  const { rows: all, done } = await inTurn("adding", () => workOut(rows, "Working out"));
  const already = sorted.known > 0 ? ` ${sorted.known} of these stood there already.` : "";
  if (done === all.length) {
    sayInPassing(`${flightsWords(done)} added to the logbook.${already}`);
    return;
  }
  // One may have been finished while it was stopped: what is kept counts, and of what cannot be read nothing is claimed.
  const now = await orSay(Promise.all(all.map(({ id }) => flightRow(id))));
  if (!now) return;
  const { unfinished, words } = whenCancelled(now);
  await orSay(clearAway(unfinished));
  sayInPassing(`${words}${already}`);
}

/** Files that gave way to others before they were on the sheet: into the logbook, without a word if all goes well. */
export async function addQuietly(given: OpenRequest, arrival: Arrival): Promise<void> {
  const { files, tables } = await tablesApart(given.files);
  const request = { ...given, files };
  const outcome = await inTurn("adding", () => {
    adding.value = {
      words: `Working out: ${shownName(request.files[0]!.name)}`,
      done: 0,
      of: 1,
      stop: stopAdding,
    };
    return analyst.run(request, () => {});
  });
  adding.value = null;
  if (outcome.kind === "done") await orSay(rowFor(outcome.flight.document, request, arrival));
  else if (outcome.kind === "several") await addSeveral(request, outcome, arrival, tables);
  else {
    await orSay(dismiss(arrival.id));
    if (outcome.kind === "columns") alsoSay(columnsWords(outcome.file));
    else if (outcome.kind !== "cancelled") alsoSay(...failureWords(outcome));
  }
  await writeNames(tables);
}
