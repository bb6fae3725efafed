/** Files in hand: open them, go to the sheet, and let the reader's place follow. */
import { flight, openFiles } from "./flight.ts";
import type { OpenRequest } from "./messages.ts";
import { go } from "./place.ts";
import { addedTo, sortedFiles } from "./sorting.ts";

export const openOnSheet = (
  files: readonly File[],
  { route = null, flight = null, columns = null, standard = null }: Partial<Omit<OpenRequest, "files">> = {},
): void =>
  openFiles({ files, route, flight, columns, standard }, () => {
    go("sheet");
    scrollTo(0, 0);
    // Once the sheet stands, a screen reader goes on from its title.
    requestAnimationFrame(() => document.querySelector("h1")?.focus({ preventScroll: true }));
  });

/** Files as dropped: a brief or a standard alone goes to the flight that is on the sheet. */
export async function dropOnSheet(files: readonly File[]): Promise<void> {
  const standing = flight.value?.request;
  const given = await sortedFiles(files);
  if (!standing || given.logs.length > 0) return openOnSheet(files);
  const together = addedTo(await sortedFiles(standing.files), given);
  openOnSheet(together, { flight: standing.flight, columns: standing.columns });
}

/** The same flight against another standard; the reader stays where they are. */
export function holdAgainst(standard: OpenRequest["standard"]): void {
  const standing = flight.value?.request;
  if (standing) openFiles({ ...standing, standard }, () => {});
}
