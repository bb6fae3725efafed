/** Whose flights the habits are of, and of which days: it stays for as long as the tab does. */
import { effect, signal } from "@preact/signals";
import type { FlightChoice } from "../src/index.ts";

const KEY = "hindtrack habits of";

function before(): FlightChoice {
  try {
    return JSON.parse(sessionStorage.getItem(KEY) ?? "{}") as FlightChoice;
  } catch {
    return {};
  }
}

export const habitsChoice = signal<FlightChoice>(before());

effect(() => {
  try {
    sessionStorage.setItem(KEY, JSON.stringify(habitsChoice.value));
  } catch {
    // without storage it stays until the page is left
  }
});
