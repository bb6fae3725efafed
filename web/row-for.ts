/** A flight just worked out from an arrival finds its row in the logbook. */
import { ANALYSIS_VERSION, type DebriefDocument } from "../src/index.ts";
import type { OpenRequest } from "./messages.ts";
import { choicesOf, keptFiles } from "./request.ts";
import { dismiss } from "./store/arrivals.ts";
import { addFlights, flightsOf, keepDocument, sourceOf } from "./store/flights.ts";
import { fingerprintOf } from "./store/identity.ts";
import type { Arrival, Choices, FlightRow } from "./store/schema.ts";

export interface RowFound {
  readonly row: FlightRow;
  /** The same files were in the logbook before. */
  readonly known: boolean;
  /** Whether the row was made by the same choices; where not, the document is not the row's, and was not kept. */
  readonly asChosen: boolean;
}

/** Which flight of the log it is, both documents say. */
const isSameChoice = (one: Choices, other: Choices): boolean =>
  one.route === other.route &&
  one.standard === other.standard &&
  JSON.stringify(one.columns) === JSON.stringify(other.columns);

/** The row that the same files already have, else a new one; the arrival is done with. @throws StorageTrouble */
export async function rowFor(
  document: DebriefDocument,
  request: OpenRequest,
  { id, labels }: Arrival,
): Promise<RowFound> {
  // a list calls a flight by its first file
  const files = keptFiles(request.files).sort(
    (a, b) => Number(b.name === document.log.file) - Number(a.name === document.log.file),
  );
  const choices = choicesOf(request);
  const fingerprint = await fingerprintOf(files);
  const same = fingerprint ? await flightsOf(fingerprint) : [];
  const known = same.find(({ summary }) => summary?.flight === document.log.flight);
  if (known) await dismiss(id);
  const [row] = known ? [known] : await addFlights([{ files, choices, labels, fingerprint }], id);
  const source = known ? await sourceOf(known.id) : null;
  const asChosen = source === null || isSameChoice(source.choices, choices);
  if (asChosen) await keepDocument(row!.id, document, ANALYSIS_VERSION);
  return { row: row!, known: known !== undefined, asChosen };
}
