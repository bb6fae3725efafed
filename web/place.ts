/** Which view the page shows, kept in the address so that the browser's back button and a reload work. */
import { signal } from "@preact/signals";

export type Place = "open" | "sheet";

const OPEN = "#/open";
const SHEET = "#/sheet";

/** Links inside the sheet (`#exercise-1`) are places on the sheet. */
const placeOf = (hash: string): Place => (hash === "" || hash === OPEN ? "open" : "sheet");

export const place = signal<Place>(placeOf(location.hash));
addEventListener("hashchange", () => {
  place.value = placeOf(location.hash);
});

export const address = (to: Place): string => (to === "open" ? OPEN : SHEET);

export function go(to: Place): void {
  location.hash = address(to);
  place.value = to;
}
