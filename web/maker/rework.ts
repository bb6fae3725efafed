/** The debrief follows the brief: a moment after the last change the flight is worked out anew, and the sheet stays where it is. */
import { effect, signal } from "@preact/signals";
import { newAnalyst } from "../analyst.ts";
import { flight, notices, orSay } from "../flight.ts";
import { keepAnew } from "../opening.ts";
import { failureWords } from "../outcome-words.ts";
import { showAgain } from "../show.ts";
import { addedTo, sortedFiles } from "../sorting.ts";
import { history, reading } from "./making.ts";
import { BRIEF_FILE } from "./reading.ts";

/** Quiet after the last change before the work begins, ms. Chosen: longer than between two keys, shorter than a pause. */
const QUIET_MS = 500;

const analyst = newAnalyst();
export const isReworking = signal(false);

/** The text that the sheet stands on; null for no brief. */
let worked: string | null = null;
let waiting: ReturnType<typeof setTimeout> | null = null;

/** From now on the sheet follows; `text` is what it stands on. Returns what ends that. */
export function follow(text: string | null): () => void {
  worked = text;
  const stop = effect(() => {
    if (!history.value) return;
    const { usable } = reading.value;
    if (waiting) clearTimeout(waiting);
    if (usable !== worked) waiting = setTimeout(() => void catchUp(), QUIET_MS);
  });
  return () => {
    stop();
    if (waiting) clearTimeout(waiting);
    void catchUp();
  };
}

/** One after the other: what was changed in the meantime is worked out next. */
async function catchUp(): Promise<void> {
  if (isReworking.peek()) return;
  const { usable } = reading.peek();
  if (!history.peek() || usable === worked) return;
  isReworking.value = true;
  try {
    worked = usable;
    await rework(usable);
  } finally {
    isReworking.value = false;
  }
  if (history.peek() && reading.peek().usable !== worked) void catchUp();
}

async function rework(text: string | null): Promise<void> {
  const before = flight.peek();
  if (!before) return;
  const standing = await sortedFiles(before.request.files);
  const brief = text === null ? null : new File([text], BRIEF_FILE, { type: "application/yaml" });
  const files = addedTo(null, { ...standing, brief, leftOut: [] });
  // The brief's standard holds again where it was changed here.
  const isSame = reading.peek().draft?.standard === before.document.brief?.standard;
  const request = {
    ...before.request,
    files,
    route: null,
    standard: isSame ? before.request.standard : null,
  };
  const outcome = await analyst.run(request, () => {});
  if (flight.peek()?.opened !== before.opened) return; // another flight is on the sheet
  if (outcome.kind === "unusable" || outcome.kind === "fault") {
    notices.value = failureWords(outcome);
    return;
  }
  if (outcome.kind !== "done") return;
  const row = before.id === null ? null : await orSay(keepAnew(before.id, request, outcome.flight));
  showAgain(outcome.flight, request, row);
}
