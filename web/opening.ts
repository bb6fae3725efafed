/** Files in hand: kept first, then read, then on the sheet or, if they are of many flights, in the logbook. */
import { ANALYSIS_VERSION } from "../src/index.ts";
import { addQuietly, addSeveral } from "./adding.ts";
import { alone } from "./alone.ts";
import { isArchive } from "./archive/look.ts";
import { takeIn } from "./archiving.ts";
import { alsoSay, flight, notices, orSay, question, work } from "./flight.ts";
import { writeNames } from "./labelling.ts";
import type { Debriefed, OpenRequest } from "./messages.ts";
import { tablesApart } from "./named-flights.ts";
import { failureWords } from "./outcome-words.ts";
import { place } from "./place.ts";
import { choicesOf, keptFiles, requestOf } from "./request.ts";
import { rowFor } from "./row-for.ts";
import { leaveAside, MOST_TRIES } from "./setting-aside.ts";
import { begin, goToSheet, show, showFlight, workedOut } from "./show.ts";
import { arrivals, arrive, beginArrival, dismiss, endArrivalTry } from "./store/arrivals.ts";
import { flightRow, keepDocument, replaceSource } from "./store/flights.ts";
import { fingerprintOf } from "./store/identity.ts";
import { type Arrival, type FlightRow, type Labels, NO_LABELS } from "./store/schema.ts";

/** Tables of who flew what are no logs: they are written on the flights once these stand in the logbook. */
async function openArrival(given: OpenRequest, arrival: Arrival | null): Promise<void> {
  const { files, tables } = await tablesApart(given.files);
  await openLogs({ ...given, files }, arrival, tables);
  // with a question to the reader the flight does not stand yet
  if (question.value === null) alsoSay(...(await writeNames(tables)));
}

async function openLogs(
  request: OpenRequest,
  arrival: Arrival | null,
  tables: readonly File[],
): Promise<void> {
  if (arrival) await orSay(beginArrival(arrival.id));
  const outcome = await workedOut(request);
  if (arrival && outcome.kind !== "done") await orSay(endArrivalTry(arrival.id));
  if (outcome.kind === "done") {
    const kept = arrival && (await orSay(rowFor(outcome.flight.document, request, arrival)));
    if (kept?.asChosen === false) {
      // It stands in the logbook with choices of its own, as against which standard it is held.
      if (!(await showFlight(kept.row.id))) return;
    } else {
      const said = notices.value;
      show(outcome.flight, request, kept?.row ?? null);
      alsoSay(...said);
    }
    if (kept?.known)
      alsoSay("This flight was in the logbook already; what was chosen and noted there stands.");
    goToSheet();
    return;
  }
  if (outcome.kind === "several") return addSeveral(request, outcome, arrival, tables);
  if (outcome.kind === "columns") {
    const asked = { ...request, files: [...request.files, ...tables] };
    question.value = {
      ...{ file: outcome.file, rows: outcome.rows, meanings: outcome.meanings },
      ...{ request: asked, arrival },
    };
    requestAnimationFrame(() => document.getElementById("columns-title")?.scrollIntoView());
    return;
  }
  if (outcome.kind === "cancelled" && !outcome.wanted)
    return arrival ? addQuietly(request, arrival) : undefined;
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
    if (arrival && work.value === null) await orSay(dismiss(arrival.id));
    else if (arrival) await underLock(arrival, () => addQuietly(request, arrival));
    return;
  }
  await underLock(arrival, () => openArrival(request, arrival));
}

const underLock = (arrival: Arrival | null, work: () => Promise<void>): Promise<unknown> =>
  arrival ? alone(`arrival ${arrival.id}`, work) : work();

export const openOnSheet = (
  files: readonly File[],
  { route = null, flight = null, columns = null, standard = null }: Partial<Omit<OpenRequest, "files">> = {},
  labels?: Labels,
): void => void openFiles({ files, route, flight, columns, standard }, labels);

/** The same flight against another standard; the reader stays where they are. */
export const holdAgainst = (standard: OpenRequest["standard"]): void => void openAnew({ standard }, false);

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
export async function openAnew(change: Partial<OpenRequest>, fromTheTop = true): Promise<void> {
  const before = flight.value;
  if (!before) return;
  const request: OpenRequest = { ...before.request, ...change };
  begin("Reading");
  const outcome = await workedOut(request);
  if (outcome.kind === "unusable" || outcome.kind === "fault") notices.value = failureWords(outcome);
  if (outcome.kind !== "done") return;
  const row = before.id === null ? null : await keptAnew(before.id, request, outcome.flight);
  show(outcome.flight, request, row);
  if (fromTheTop) goToSheet();
}

/** Another flight of the log that is on the sheet: a flight of its own in the logbook, by the same people. */
export async function openOther(other: number): Promise<void> {
  const standing = flight.value;
  if (!standing) return;
  const row = standing.id === null ? null : await orSay(flightRow(standing.id));
  const labels = row ? { pilot: row.pilot, aircraft: row.aircraft, tags: row.tags } : NO_LABELS;
  await openFiles({ ...standing.request, flight: other }, labels);
}

/** As `keepAnew`; where the browser could not keep it, which is said, the flight and its notes stay those of the row. */
const keptAnew = async (id: string, request: OpenRequest, flight: Debriefed): Promise<FlightRow | null> =>
  (await orSay(keepAnew(id, request, flight))) ?? (await orSay(flightRow(id)));

/** Keeps other files and choices of a flight in the logbook, and what came of them. @throws StorageTrouble */
export async function keepAnew(
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

/** Goes on with files that had come in before a reload: the last on the sheet, unless a flight is looked at. */
export async function resumeArrivals(): Promise<void> {
  const waiting = (await orSay(arrivals())) ?? [];
  for (const [i, arrival] of waiting.entries()) {
    if (arrival.tries >= MOST_TRIES) {
      await leaveAside(arrival);
      continue;
    }
    const request = requestOf(arrival.files, arrival.choices);
    const isFree = place.value === "logbook" && work.value === null;
    await alone(`arrival ${arrival.id}`, async () => {
      const [first] = arrival.files;
      if (first && (await isArchive(first.bytes))) {
        await beginArrival(arrival.id);
        return takeIn(first.bytes, first.name, arrival);
      }
      if (i < waiting.length - 1 || !isFree) {
        await beginArrival(arrival.id);
        return addQuietly(request, arrival);
      }
      begin("Reading");
      return openArrival(request, arrival);
    });
  }
}
