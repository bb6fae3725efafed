/** Files in hand: open them, go to the sheet, and let the reader's place follow. */
import { openFiles } from "./flight.ts";
import type { OpenRequest } from "./messages.ts";
import { go } from "./place.ts";

export const openOnSheet = (
  files: readonly File[],
  { route = null, flight = null, columns = null }: Partial<Omit<OpenRequest, "files">> = {},
): void =>
  openFiles({ files, route, flight, columns }, () => {
    go("sheet");
    scrollTo(0, 0);
    // Once the sheet stands, a screen reader goes on from its title.
    requestAnimationFrame(() => document.querySelector("h1")?.focus({ preventScroll: true }));
  });
