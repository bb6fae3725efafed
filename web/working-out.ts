/** One flight of the logbook is worked out from its files, and what came of it is kept. */
import { ANALYSIS_VERSION, type DebriefDocument, shownName } from "../src/index.ts";
import type { Analyst, Outcome } from "./analyst.ts";
import { failureWords } from "./outcome-words.ts";
import { requestOf } from "./request.ts";
import { CLOSED_EACH_TIME, MOST_TRIES } from "./setting-aside.ts";
import {
  addFlights,
  beginFlight,
  changeRows,
  flightRow,
  flightsOf,
  keepDocument,
  keepTrouble,
  type NewFlight,
  sourceOf,
} from "./store/flights.ts";
import type { FlightRow, Source } from "./store/schema.ts";

export const columnsWords = (file: string): string =>
  `${shownName(file)}: open it alone to say which column is which.`;

/** A stay that never comes this far from where it began is no flight to debrief. As in the analysis' own choice. */
const WENT_SOMEWHERE_NM = 2;

/** The other flights of a log that holds several, each a row of its own; none where one was asked for. */
async function othersOf(row: FlightRow, source: Source, { log }: DebriefDocument): Promise<FlightRow[]> {
  if (source.choices.flight !== null) return [];
  const { files } = source;
  const { pilot, aircraft, tags, fingerprint } = row;
  // They came to light before, and the page was closed then.
  if (fingerprint && (await flightsOf(fingerprint)).length > 1) return [];
  const others = log.flights.flatMap(({ farthestNm }, flight): NewFlight[] =>
    flight === log.flight || farthestNm < WENT_SOMEWHERE_NM
      ? []
      : [{ files, choices: { ...source.choices, flight }, labels: { pilot, aircraft, tags }, fingerprint }],
  );
  return others.length > 0 ? addFlights(others, null) : [];
}

/** Keeps what came of a flight; gives the rows of others that its log holds and that nobody has seen yet. */
async function keepOutcome(row: FlightRow, source: Source, outcome: Outcome): Promise<FlightRow[]> {
  const { id } = row;
  if (outcome.kind === "done") {
    // First the others: should the page end between the two steps, this one is worked out again.
    const isNew = row.summary === null;
    const others = isNew ? await othersOf(row, source, outcome.flight.document) : [];
    await keepDocument(id, outcome.flight.document, ANALYSIS_VERSION);
    return others;
  }
  if (outcome.kind === "unusable" || outcome.kind === "fault")
    await keepTrouble(id, failureWords(outcome).join(" "), ANALYSIS_VERSION);
  else if (outcome.kind === "columns") await keepTrouble(id, columnsWords(outcome.file), ANALYSIS_VERSION);
  else await changeRows([id], ({ changed }) => ({ tries: 0, changed }));
  return [];
}

/**
 * Works out a flight that waits, or that another analysis made; gives new rows for other flights of its log.
 * Stopped while it is fetched, it is not begun. @throws StorageTrouble
 */
export async function workOutOne(
  analyst: Analyst,
  id: string,
  isStopped: () => boolean,
): Promise<FlightRow[]> {
  const [row, source] = await Promise.all([flightRow(id), sourceOf(id)]);
  if (!row || !source || row.analysis === ANALYSIS_VERSION) return [];
  if ((await beginFlight(id)) > MOST_TRIES) {
    await keepTrouble(id, CLOSED_EACH_TIME, ANALYSIS_VERSION);
    return [];
  }
  const outcome: Outcome = isStopped()
    ? { kind: "cancelled", wanted: true }
    : await analyst.run(requestOf(source.files, source.choices), () => {});
  return keepOutcome(row, source, outcome);
}
