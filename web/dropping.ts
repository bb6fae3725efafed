/** Files as they are dropped, each kind on its way: logbooks, lists of points, tables of who flew what, flights. */
import { alone } from "./alone.ts";
import { isArchive } from "./archive/look.ts";
import { takeIn } from "./archiving.ts";
import { alsoSay, flight, orSay } from "./flight.ts";
import { writeNames } from "./labelling.ts";
import { isNamingTable } from "./named-flights.ts";
import { openAnew, openOnSheet } from "./opening.ts";
import { go, place } from "./place.ts";
import { isPointFile } from "./places-file.ts";
import { keptFiles } from "./request.ts";
import { addedTo, isStandardFile, sortedFiles } from "./sorting.ts";
import { arrive } from "./store/arrivals.ts";

/** A logbook saved as a file goes into this one. */
async function openLogbook(file: File): Promise<void> {
  const choices = { route: null, flight: null, columns: null, standard: null };
  const arrival = await orSay(arrive(keptFiles([file]), choices));
  if (!arrival) return;
  go("logbook");
  await alone(`arrival ${arrival.id}`, () => takeIn(file, file.name, arrival));
}

/** Files as dropped: a brief or a standard alone goes to the flight that is on the sheet; lists of points and standards stay for all. */
export async function dropOnSheet(dropped: readonly File[]): Promise<void> {
  const files: File[] = [];
  const lists: File[] = [];
  const tables: File[] = [];
  const standards: File[] = [];
  const words: string[] = [];
  for (const file of dropped) {
    if (await isArchive(file)) void openLogbook(file);
    else if (await isPointFile(file)) lists.push(file);
    else if (await isNamingTable(file)) tables.push(file);
    else if (await isStandardFile(file)) {
      const { usable, said } = await (await import("./standards-file.ts")).takeStandard(file);
      words.push(...said);
      if (usable) standards.push(file);
    } else files.push(file);
  }
  if (lists.length > 0) words.push(...(await (await import("./maker/points.ts")).addLists(lists)));
  const onSheet = place.value === "sheet" && flight.value !== null;
  // A standard alone is of no flight, unless one is looked at.
  const opens = files.length > 0 || (onSheet && standards.length > 0);
  if (opens) await openDropped([...files, ...standards], tables);
  // Finals to their runways are found when the flight is worked out anew.
  else if (lists.length > 0 && place.value === "sheet") await openAnew({}, false);
  if (!opens) alsoSay(...(await writeNames(tables)));
  alsoSay(...words);
}

/** A log begins a new sheet at once; what belongs to the flight on the sheet is awaited. */
async function openDropped(files: readonly File[], tables: readonly File[]): Promise<void> {
  const standing = place.value === "sheet" ? flight.value?.request : null;
  const given = await sortedFiles(files);
  if (!standing || given.logs.length > 0) return openOnSheet([...files, ...tables]);
  const together = addedTo(await sortedFiles(standing.files), given);
  await openAnew({ files: together, route: null, standard: null });
  alsoSay(...(await writeNames(tables)));
}
