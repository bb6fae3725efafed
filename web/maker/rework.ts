/** The debrief follows the brief: a moment after the last change the flight is worked out anew, and the sheet stays where it is. */
import { effect } from "@preact/signals";
import { flight } from "../flight.ts";
import { reworkWith } from "../opening.ts";
import { history, reading } from "./making.ts";
import { BRIEF_FILE } from "./reading.ts";

/** Quiet after the last change before the work begins, ms. Chosen: longer than between two keys, shorter than a pause. */
const QUIET_MS = 500;

/** The text that the sheet was last worked out with; null for no brief. */
let worked: string | null = null;
let waiting: ReturnType<typeof setTimeout> | null = null;

/** From now on the sheet follows; `text` is what it stands on. Returns what ends that. */
export function follow(text: string | null): () => void {
  worked = text;
  return effect(() => {
    if (!history.value) return;
    const { usable } = reading.value;
    if (waiting) clearTimeout(waiting);
    if (usable === worked) return;
    waiting = setTimeout(() => void rework(usable), QUIET_MS);
  });
}

async function rework(text: string | null): Promise<void> {
  if (!flight.peek()) return;
  worked = text;
  const done = await reworkWith(
    text === null ? null : new File([text], BRIEF_FILE, { type: "application/yaml" }),
  );
  // What came in between is worked out next; what failed is tried again with the next change.
  if (!done) worked = null;
}
