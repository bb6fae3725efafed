/** A flight goes to the sheet: worked out from its files, kept with its document, its notes put back. */
import { ANALYSIS_VERSION, type DebriefDocument, notesOf, shownName, withNotes } from "../src/index.ts";
import { newAnalyst, type Outcome, type Progress } from "./analyst.ts";
import { alsoSay, type Flight, flight, notices, orSay, question, work } from "./flight.ts";
import type { Debriefed, OpenRequest } from "./messages.ts";
import { failureWords, sheetWords } from "./outcome-words.ts";
import { goToFlight } from "./place.ts";
import { requestOf } from "./request.ts";
import { carryMoved, notesOfRow } from "./row-notes.ts";
import { flightRow, keepDocument, markOpened, sourceOf } from "./store/flights.ts";
import type { FlightRow } from "./store/schema.ts";
import { summaryOf } from "./store/summary.ts";

const analyst = newAnalyst();
/** What was said of the flight on the sheet, while others are read. */
let noticesBefore: readonly string[] = [];

const progressWords = (progress: Progress): { words: string; share: number | null } =>
  progress.kind === "reading"
    ? { words: `Reading ${shownName(progress.file)}`, share: progress.share }
    : { words: "Working out the wind and the courses", share: null };

/** Ends the work under way at the reader's wish; what stood on the page stays, and what was said of it. */
export function cancel(): void {
  analyst.end(true);
  work.value = null;
  notices.value = noticesBefore;
}

/** What was under way gives way; what it said goes. */
export function begin(words: string): void {
  analyst.end(false);
  if (!work.value) noticesBefore = notices.value;
  notices.value = [];
  question.value = null;
  work.value = { words, share: null };
}

export async function workedOut(request: OpenRequest): Promise<Outcome> {
  const outcome = await analyst.run(request, (progress) => {
    work.value = progressWords(progress);
  });
  if (outcome.kind === "columns") notices.value = noticesBefore;
  if (outcome.kind !== "cancelled") work.value = null;
  return outcome;
}

/** Notes go with their exercises; where these stand elsewhere after a new working out, the row follows. */
function withRowNotes(document: DebriefDocument, row: FlightRow): DebriefDocument {
  const noted = withNotes(document, notesOfRow(row, document));
  const notes = notesOf(noted);
  if (JSON.stringify(notes) !== JSON.stringify(row.notes)) carryMoved(row, notes);
  return noted;
}

const onSheet = (
  debriefed: Debriefed,
  request: OpenRequest,
  row: FlightRow | null,
  opened: number,
): Flight => ({
  ...debriefed,
  document: row ? withRowNotes(debriefed.document, row) : debriefed.document,
  id: row?.id ?? null,
  request,
  opened,
});

/** Puts a flight on the sheet, with the instructor's notes where it has a row. */
export function show(debriefed: Debriefed, request: OpenRequest, row: FlightRow | null): void {
  flight.value = onSheet(debriefed, request, row, (flight.value?.opened ?? 0) + 1);
  notices.value = sheetWords(debriefed);
}

/** The same flight worked out anew while its sheet is looked at: the sheet stays where it is. */
export function showAgain(debriefed: Debriefed, request: OpenRequest, row: FlightRow | null): void {
  if (flight.value) flight.value = onSheet(debriefed, request, row, flight.value.opened);
}

/** The sheet begins from its top; a screen reader goes on from its title. */
export function fromTheTop(): void {
  scrollTo(0, 0);
  requestAnimationFrame(() => document.querySelector("h1")?.focus({ preventScroll: true }));
}

/** Goes to the sheet that stands now. */
export function goToSheet(): void {
  goToFlight(flight.value?.id ?? null);
  fromTheTop();
}

/** Opens a flight of the logbook; true once it stands on the sheet. */
export async function showFlight(id: string): Promise<boolean> {
  begin("Opening");
  const [row, source] = (await orSay(Promise.all([flightRow(id), sourceOf(id)]))) ?? [null, null];
  if (!row || !source || row.deleted !== null) {
    work.value = null;
    alsoSay("That flight is not in the logbook of this browser.");
    return false;
  }
  const request = requestOf(source.files, source.choices);
  const outcome = await workedOut(request);
  if (outcome.kind === "unusable" || outcome.kind === "fault") notices.value = failureWords(outcome);
  if (outcome.kind !== "done") return false;
  // the usual standard may be another than when it was worked out last
  const sameSummary = JSON.stringify(row.summary) === JSON.stringify(summaryOf(outcome.flight.document));
  const stale = row.analysis !== ANALYSIS_VERSION || !sameSummary;
  if (stale) await orSay(keepDocument(id, outcome.flight.document, ANALYSIS_VERSION));
  await orSay(markOpened(id));
  // Its notes may have been carried into it meanwhile.
  show(outcome.flight, request, (await orSay(flightRow(id))) ?? row);
  return true;
}
