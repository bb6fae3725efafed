/** Files in hand: kept first, then read, then on the sheet or, if they are of many flights, in the logbook. */
import { ANALYSIS_VERSION } from "../src/index.ts";
import { addSeveral } from "./adding.ts";
import { alone } from "./alone.ts";
import { alsoSay, flight, notices, orSay, question, work } from "./flight.ts";
import type { Debriefed, OpenRequest } from "./messages.ts";
import { failureWords } from "./outcome-words.ts";
import { place } from "./place.ts";
import { choicesOf, keptFiles, requestOf } from "./request.ts";
import { begin, goToSheet, show, workedOut } from "./show.ts";
import { arrivals, arrive, beginArrival, dismiss } from "./store/arrivals.ts";
import { addFlights, flightRow, flightsOf, keepDocument, replaceSource } from "./store/flights.ts";
import { fingerprintOf } from "./store/identity.ts";
import { type Arrival, type FlightRow, type Labels, NO_LABELS } from "./store/schema.ts";

/** Files that ended the page so often while they were read are left aside. Chosen: once may be chance, twice the user's own doing. */
const MOST_TRIES = 3;

/** The row of a flight just worked out: the one that the same files already have, else a new one. */
async function rowFor(
  { document }: Debriefed,
  request: OpenRequest,
  { id, labels }: Pick<Arrival, "id" | "labels">,
): Promise<FlightRow | null> {
  const files = keptFiles(request.files);
  const fingerprint = await fingerprintOf(files);
  const known = fingerprint ? await flightsOf(fingerprint) : [];
  const same = known.find(({ summary }) => summary?.flight === document.log.flight);
  if (same) await dismiss(id);
  const [row] = same
    ? [same]
    : await addFlights([{ files, choices: choicesOf(request), labels, fingerprint }], id);
  await keepDocument(row!.id, document, ANALYSIS_VERSION);
  if (same) alsoSay("This flight was in the logbook already, and is shown with what was noted on it.");
  return row!;
}

async function openArrival(request: OpenRequest, arrival: Arrival | null): Promise<void> {
  if (arrival) await orSay(beginArrival(arrival.id));
  const outcome = await workedOut(request);
  if (outcome.kind === "done") {
    const row = arrival && (await orSay(rowFor(outcome.flight, request, arrival)));
    const said = notices.value;
    show(outcome.flight, request, row);
    alsoSay(...said);
    goToSheet();
    return;
  }
  if (outcome.kind === "several") return addSeveral(request, outcome, arrival);
  if (outcome.kind === "columns") {
    question.value = { file: outcome.file, rows: outcome.rows, meanings: outcome.meanings, request, arrival };
    requestAnimationFrame(() => document.getElementById("columns-title")?.scrollIntoView());
    return;
  }
  if (arrival) await orSay(dismiss(arrival.id));
  if (outcome.kind !== "cancelled") notices.value = failureWords(outcome);
}

/** Opens files given together: first they are kept, so that a reload at any moment finds them. */
export async function openFiles(request: OpenRequest, labels: Labels = NO_LABELS): Promise<void> {
  if (request.files.length === 0) return;
  begin("Keeping the files");
  const turn = work.value;
  const arrival = await orSay(arrive(keptFiles(request.files), choicesOf(request), labels));
  if (work.value !== turn) {
    // Cancelled, or other files came, while these were being kept.
    if (arrival) await orSay(dismiss(arrival.id));
    return;
  }
  await underLock(arrival, () => openArrival(request, arrival));
}

const underLock = (arrival: Arrival | null, work: () => Promise<void>): Promise<unknown> =>
  arrival ? alone(`arrival ${arrival.id}`, work) : work();

export const openOnSheet = (
  files: readonly File[],
  { route = null, flight = null, columns = null }: Partial<Omit<OpenRequest, "files">> = {},
  labels?: Labels,
): void => void openFiles({ files, route, flight, columns }, labels);

/** The table of the question, now with its columns told. */
export async function answer(columns: OpenRequest["columns"]): Promise<void> {
  const asked = question.value;
  if (!asked) return;
  const { arrival } = asked;
  const request = { ...asked.request, columns };
  begin("Reading");
  await underLock(arrival, () => openArrival(request, arrival));
}

/** The question is left: its files go as if they had not come. */
export async function leaveQuestion(): Promise<void> {
  const arrival = question.value?.arrival;
  question.value = null;
  if (arrival) await orSay(dismiss(arrival.id));
}

/** The flight on the sheet, worked out anew from other files or choices; what was noted on it stays. */
export async function openAnew(change: Partial<OpenRequest>): Promise<void> {
  const before = flight.value;
  if (!before) return;
  const request: OpenRequest = { ...before.request, ...change };
  begin("Reading");
  const outcome = await workedOut(request);
  if (outcome.kind === "unusable" || outcome.kind === "fault") notices.value = failureWords(outcome);
  if (outcome.kind !== "done") return;
  const row = before.id === null ? null : await orSay(keepAnew(before.id, request, outcome.flight));
  show(outcome.flight, request, row);
  goToSheet();
}

async function keepAnew(
  id: string,
  request: OpenRequest,
  { document }: Debriefed,
): Promise<FlightRow | null> {
  const files = keptFiles(request.files);
  const fingerprint = await fingerprintOf(files);
  await replaceSource(id, { files, choices: choicesOf(request), fingerprint });
  await keepDocument(id, document, ANALYSIS_VERSION);
  return flightRow(id);
}

/** Goes on with files that had come in before a reload. */
export async function resumeArrivals(): Promise<void> {
  for (const arrival of (await orSay(arrivals())) ?? []) {
    if (arrival.tries >= MOST_TRIES) {
      await orSay(dismiss(arrival.id));
      alsoSay(
        `${arrival.files.map(({ name }) => name).join(", ")}: the page closed each time while reading this, and it is left aside.`,
      );
      continue;
    }
    // Of a flight that is looked at, the sheet is not taken away.
    if (place.value === "sheet" && flight.value) return;
    await alone(`arrival ${arrival.id}`, async () => {
      begin("Reading");
      await openArrival(requestOf(arrival.files, arrival.choices), arrival);
    });
  }
}
