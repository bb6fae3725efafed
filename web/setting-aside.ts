/** Files that ended the page each time while they were read: they stay in the logbook, with the reason, and are not tried again. */
import { ANALYSIS_VERSION, shownName } from "../src/index.ts";
import { isArchive } from "./archive/look.ts";
import { alsoSay, orSay } from "./flight.ts";
import { dismiss } from "./store/arrivals.ts";
import { addFlights, keepTrouble } from "./store/flights.ts";
import { fingerprintOf } from "./store/identity.ts";
import type { Arrival } from "./store/schema.ts";

/** What ended the page so often is left as it is. Chosen: once may be chance, twice the user's own doing. */
export const MOST_TRIES = 3;

export const CLOSED_EACH_TIME = "The page closed each time while this was read, and it is left aside.";

/** A row of the logbook, which a later analysis tries again, keeps the files. @throws StorageTrouble */
async function setAside({ id, files, choices, labels }: Arrival): Promise<void> {
  const fingerprint = await fingerprintOf(files);
  const [row] = await addFlights([{ files, choices, labels, fingerprint }], id);
  await keepTrouble(row!.id, CLOSED_EACH_TIME, ANALYSIS_VERSION);
}

/** A logbook saved as a file is no flight, and stands where it was saved; all other files stay in the logbook. */
export async function leaveAside(arrival: Arrival): Promise<void> {
  const [first] = arrival.files;
  const isLogbook = first !== undefined && (await isArchive(first.bytes));
  await orSay(isLogbook ? dismiss(arrival.id) : setAside(arrival));
  const names = arrival.files.map(({ name }) => shownName(name)).join(", ");
  const where = isLogbook ? "nothing of it was taken in" : "it stays in the logbook, not worked out";
  alsoSay(`${names}: the page closed each time while this was read; ${where}.`);
}
