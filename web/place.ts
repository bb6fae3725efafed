/** Which view the page shows and of which flight, kept in the address so that the browser's back button and a reload work. */
import { signal } from "@preact/signals";

export type Place = "logbook" | "sheet" | "habits" | "hold";

const LOGBOOK = "#/logbook";
const SHEET = "#/sheet";
const HOLD = "#/next-hold";
const HABITS = "#/habits";
const FLIGHT = "#/flight/";

/** What of a flight is to be looked at: an exercise, and when in it. */
export interface Aim {
  /** Index in the document. */
  readonly exercise: number;
  /** Milliseconds UTC; null where no moment is meant. */
  readonly span: { readonly from: number; readonly to: number } | null;
}

interface Spot {
  readonly place: Place;
  /** The flight in the logbook that the sheet shows; null where it is in none. */
  readonly flight: string | null;
  readonly aim: Aim | null;
}

/** As `aimedAddress` writes it: `exercise-3`, perhaps with two times after it. */
function aimOf(exercise: string | undefined, times: string | undefined): Aim | null {
  const [, number] = /^exercise-(\d+)$/.exec(exercise ?? "") ?? [];
  if (number === undefined) return null;
  const [from = Number.NaN, to = Number.NaN] = (times ?? "").split("~").map((utc) => Date.parse(utc));
  return { exercise: Number(number) - 1, span: from <= to ? { from, to } : null };
}

/** A link inside the sheet (`#exercise-1`) says nothing of the flight: the entry of the history does. */
function spotOf(hash: string, state: unknown, flight: string | null): Spot {
  const aim = null;
  if (hash === "" || hash === LOGBOOK) return { place: "logbook", flight, aim };
  if (hash === HOLD) return { place: "hold", flight, aim };
  if (hash === HABITS) return { place: "habits", flight, aim };
  if (hash.startsWith(FLIGHT)) {
    const [id = "", exercise, times] = hash.slice(FLIGHT.length).split("/");
    return { place: "sheet", flight: id, aim: aimOf(exercise, times) };
  }
  const of = (state as { flight?: unknown } | null)?.flight;
  return { place: "sheet", flight: typeof of === "string" ? of : flight, aim };
}

const start = spotOf(location.hash, history.state, null);
export const place = signal<Place>(start.place);
/** The flight last shown stays when another view is looked at. */
export const shownFlight = signal<string | null>(start.flight);
/** What the address asks to look at on the sheet; null where it asks for the sheet as a whole. */
export const aim = signal<Aim | null>(start.aim);

function follow(): void {
  const spot = spotOf(location.hash, history.state, shownFlight.value);
  place.value = spot.place;
  shownFlight.value = spot.flight;
  aim.value = spot.aim;
  if (spot.place === "sheet" && spot.flight !== null && history.state?.flight !== spot.flight) {
    history.replaceState({ ...history.state, flight: spot.flight }, "");
  }
}
addEventListener("hashchange", follow);

export const flightAddress = (id: string): string => `${FLIGHT}${id}`;

/** To an exercise of a flight, and where it is known when to look at it. */
export const aimedAddress = (
  id: string,
  exercise: number,
  at: { readonly fromUtc: string; readonly toUtc: string } | undefined,
): string => `${flightAddress(id)}/exercise-${exercise + 1}${at ? `/${at.fromUtc}~${at.toUtc}` : ""}`;

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
