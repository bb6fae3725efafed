/** The debrief follows the brief: a moment after the last change the flight is worked out anew, and the sheet stays where it is. */
import { effect, signal } from "@preact/signals";
import { newAnalyst } from "../analyst.ts";
import { alsoSay, type Flight, flight, notices, orSay } from "../flight.ts";
import { keepAnew } from "../opening.ts";
import { failureWords } from "../outcome-words.ts";
import { showAgain } from "../show.ts";
import { addedTo, sortedFiles } from "../sorting.ts";
import { flightRow } from "../store/flights.ts";
import { madeInto } from "./kept-making.ts";
import { history, reading } from "./making.ts";
import { BRIEF_FILE } from "./reading.ts";

/** Quiet after the last change before the work begins, ms. Chosen: longer than between two keys, shorter than a pause. */
const QUIET_MS = 500;

const analyst = newAnalyst();
export const isReworking = signal(false);
/** Why the brief as it is now could not be worked out: what stands on the sheet is of the brief before. Empty where it was. */
export const notWorkedOut = signal<readonly string[]>([]);

const STILL_BEFORE = "This brief could not be worked out: the sheet is still that of the brief before.";

/** A brief as it is to stand on the sheet; `text` null for no brief. */
interface Wanted {
  readonly text: string | null;
  readonly standard: string | null;
}

/** What is typed belongs to the flight that the maker was opened on, whatever comes onto the sheet meanwhile. */
interface Desk {
  /** That flight, as it was worked out last. */
  on: Flight;
  wanted: Wanted;
  /** The text that was worked out last, with or without success. */
  worked: string | null;
  /** Whether that text stands on the sheet or in the logbook. */
  stands: boolean;
}

/**
 * From now on the sheet follows; `text` is what it stands on. Returns what ends that: the last change is worked out
 * too, and the promise tells whether it stands.
 */
export function follow(on: Flight, text: string | null): () => Promise<boolean> {
  const standard = on.document.brief?.standard ?? null;
  const desk: Desk = { on, wanted: { text, standard }, worked: text, stands: true };
  let waiting: ReturnType<typeof setTimeout> | undefined;
  notWorkedOut.value = [];
  const stop = effect(() => {
    // Of another flight the same words would be another brief: its points and its day are others.
    if (!history.value || flight.value?.opened !== desk.on.opened) return;
    const { usable, draft } = reading.value;
    desk.wanted = { text: usable, standard: draft?.standard ?? null };
    clearTimeout(waiting);
    if (usable !== desk.worked) waiting = setTimeout(() => void catchUp(desk), QUIET_MS);
  });
  return () => {
    stop();
    clearTimeout(waiting);
    return catchUp(desk);
  };
}

/** The sheet, which stands on `text`, gets the brief that is wanted, without a maker. */
export const workOut = (on: Flight, text: string | null, wanted: Wanted): Promise<boolean> =>
  catchUp({ on, wanted, worked: text, stands: true });

let turn: Promise<unknown> = Promise.resolve();

/** One after the other: what was changed in the meantime is worked out next. */
function catchUp(desk: Desk): Promise<boolean> {
  const caught = turn.then(async () => {
    while (desk.wanted.text !== desk.worked) {
      const { wanted } = desk;
      desk.worked = wanted.text;
      isReworking.value = true;
      try {
        desk.stands = await rework(desk, wanted);
      } finally {
        isReworking.value = false;
      }
    }
    return desk.stands;
  });
  turn = caught.catch(() => {});
  return caught;
}

/** The same row of the logbook on another sheet than the one that the maker was opened on. */
const openedAgain = (on: Flight): Flight | null => {
  const now = flight.peek();
  return now && now.id !== null && now.id === on.id && now.opened !== on.opened ? now : null;
};

/** Works the flight of the desk out with a brief, keeps it in its row, and shows it where it is on the sheet still. */
async function rework(desk: Desk, { text, standard }: Wanted): Promise<boolean> {
  const again = openedAgain(desk.on);
  // Held against another standard it is the same flight; with other files what was given there counts.
  if (again && again.request.files !== desk.on.request.files) return false;
  const on = again ?? desk.on;
  const standing = await sortedFiles(on.request.files);
  const brief = text === null ? null : new File([text], BRIEF_FILE, { type: "application/yaml" });
  const files = addedTo(null, { ...standing, brief, leftOut: [] });
  // The brief's standard holds again where it was changed here.
  const isSame = standard === (on.document.brief?.standard ?? null);
  const request = { ...on.request, files, route: null, standard: isSame ? on.request.standard : null };
  madeInto(on, text);
  const outcome = await analyst.run(request, () => {});
  const isOnSheet = () => flight.peek()?.opened === on.opened;
  if (outcome.kind === "unusable" || outcome.kind === "fault") {
    const words = failureWords(outcome);
    if (isOnSheet()) {
      notWorkedOut.value = words;
      notices.value = [...words, STILL_BEFORE];
    } else alsoSay(...words);
    return false;
  }
  if (outcome.kind !== "done" || openedAgain(on)) return false;
  const row = on.id === null ? null : await orSay(keepAnew(on.id, request, outcome.flight));
  // Where it could not be kept, which is said, the flight and its notes stay those of the row.
  const its = row ?? (on.id === null ? null : await orSay(flightRow(on.id)));
  if (isOnSheet()) {
    const over = [...notWorkedOut.peek(), STILL_BEFORE];
    notices.value = notices.peek().filter((sentence) => !over.includes(sentence));
    notWorkedOut.value = [];
    showAgain(outcome.flight, request, its);
  }
  desk.on = { ...on, ...outcome.flight, request };
  return on.id === null || row !== null;
}
