/** Which view the page shows, kept in the address so that the browser's back button and a reload work. */
import { signal } from "@preact/signals";

export type Place = "open" | "sheet" | "hold";

const OPEN = "#/open";
const SHEET = "#/sheet";
const HOLD = "#/next-hold";

/** Links inside the sheet (`#exercise-1`) are places on the sheet. */
const placeOf = (hash: string): Place =>
  hash === "" || hash === OPEN ? "open" : hash === HOLD ? "hold" : "sheet";

export const place = signal<Place>(placeOf(location.hash));
addEventListener("hashchange", () => {
  place.value = placeOf(location.hash);
});

const ADDRESSES: Readonly<Record<Place, string>> = { open: OPEN, sheet: SHEET, hold: HOLD };
export const address = (to: Place): string => ADDRESSES[to];

export function go(to: Place): void {
  location.hash = address(to);
  place.value = to;
}
