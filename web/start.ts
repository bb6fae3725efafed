/** What the page does as it opens: the logbook is read, and what was under way goes on. */
import { effect, untracked } from "@preact/signals";
import { resumeAdding } from "./adding.ts";
import { alsoSay, flight, orSay } from "./flight.ts";
import { carryAllLabels } from "./labels-on-the-way.ts";
import { followRows } from "./logbook.ts";
import { keepOffline } from "./offline/renewal.ts";
import { resumeArrivals } from "./opening.ts";
import { aim, go, place, shownFlight } from "./place.ts";
import { carryAll } from "./row-notes.ts";
import { fromTheTop, showFlight } from "./show.ts";
import { listenToTabs } from "./store/database.ts";
import { StorageTrouble } from "./store/trouble.ts";

async function openAtAddress(id: string): Promise<void> {
  const stands = await showFlight(id);
  if (place.value !== "sheet" || shownFlight.value !== id) return;
  // what is aimed at comes into view by itself
  if (stands && aim.value === null) fromTheTop();
  else if (stands) return;
  else go("logbook");
}

/** The sheet follows the address: another flight in it is opened. */
function followAddress(): void {
  effect(() => {
    const id = shownFlight.value;
    if (place.value !== "sheet" || id === null || flight.peek()?.id === id) return;
    untracked(() => void openAtAddress(id));
  });
}

export async function start(): Promise<void> {
  void keepOffline();
  listenToTabs({
    onWaiting: () =>
      alsoSay(
        "Another tab has an older Hindtrack open. Close or reload it: this page waits for the logbook.",
      ),
    onGaveWay: () => alsoSay(new StorageTrouble("other-tab").message),
  });
  await carryAll();
  await orSay(carryAllLabels());
  followAddress();
  await followRows();
  await resumeArrivals();
  await resumeAdding();
}
