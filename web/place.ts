/** Which view the page shows and of which flight, kept in the address so that the browser's back button and a reload work. */
import { signal } from "@preact/signals";

export type Place = "logbook" | "sheet" | "habits" | "hold";

const LOGBOOK = "#/logbook";
const SHEET = "#/sheet";
const HOLD = "#/next-hold";
const HABITS = "#/habits";
const FLIGHT = "#/flight/";

interface Spot {
  readonly place: Place;
  /** The flight in the logbook that the sheet shows; null where it is in none. */
  readonly flight: string | null;
}

/** A link inside the sheet (`#exercise-1`) says nothing of the flight: the entry of the history does. */
function spotOf(hash: string, state: unknown, flight: string | null): Spot {
  if (hash === "" || hash === LOGBOOK) return { place: "logbook", flight };
  if (hash === HOLD) return { place: "hold", flight };
  if (hash === HABITS) return { place: "habits", flight };
  if (hash.startsWith(FLIGHT)) return { place: "sheet", flight: hash.slice(FLIGHT.length) };
  const of = (state as { flight?: unknown } | null)?.flight;
  return { place: "sheet", flight: typeof of === "string" ? of : flight };
}

const start = spotOf(location.hash, history.state, null);
export const place = signal<Place>(start.place);
/** The flight last shown stays when another view is looked at. */
export const shownFlight = signal<string | null>(start.flight);

function follow(): void {
  const spot = spotOf(location.hash, history.state, shownFlight.value);
  place.value = spot.place;
  shownFlight.value = spot.flight;
  if (spot.place === "sheet" && spot.flight !== null && history.state?.flight !== spot.flight) {
    history.replaceState({ ...history.state, flight: spot.flight }, "");
  }
}
addEventListener("hashchange", follow);

export const flightAddress = (id: string): string => `${FLIGHT}${id}`;

export function address(to: Place): string {
  if (to === "hold") return HOLD;
  if (to === "habits") return HABITS;
  if (to === "logbook") return LOGBOOK;
  return shownFlight.value === null ? SHEET : flightAddress(shownFlight.value);
}

export function go(to: Place): void {
  location.hash = address(to);
  place.value = to;
}

/** To the sheet of a flight, or of one that no logbook keeps. */
export function goToFlight(id: string | null): void {
  shownFlight.value = id;
  go("sheet");
}
