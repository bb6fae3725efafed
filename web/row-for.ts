/** A flight just worked out from an arrival finds its row in the logbook. */
import { ANALYSIS_VERSION, type DebriefDocument } from "../src/index.ts";
import type { OpenRequest } from "./messages.ts";
import { choicesOf, keptFiles } from "./request.ts";
import { dismiss } from "./store/arrivals.ts";
import { addFlights, flightsOf, keepDocument } from "./store/flights.ts";
import { fingerprintOf } from "./store/identity.ts";
import type { Arrival, FlightRow } from "./store/schema.ts";

/** The row that the same files already have, else a new one; the arrival is done with. @throws StorageTrouble */
export async function rowFor(
  document: DebriefDocument,
  request: OpenRequest,
  { id, labels }: Arrival,
): Promise<{ readonly row: FlightRow; readonly known: boolean }> {
  const files = keptFiles(request.files);
  const fingerprint = await fingerprintOf(files);
  const same = fingerprint ? await flightsOf(fingerprint) : [];
  const known = same.find(({ summary }) => summary?.flight === document.log.flight);
  if (known) await dismiss(id);
  const [row] = known
    ? [known]
    : await addFlights([{ files, choices: choicesOf(request), labels, fingerprint }], id);
  await keepDocument(row!.id, document, ANALYSIS_VERSION);
  return { row: row!, known: known !== undefined };
}
