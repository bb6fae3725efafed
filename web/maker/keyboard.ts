/** The maker by keyboard: on into the exercise that was added, and steps back and forth. */
import { chosen, redo, undo } from "./making.ts";

/** The first field of the exercise that is open now. */
export function goToChosen(): void {
  requestAnimationFrame(() =>
    document
      .querySelector<HTMLElement>(`#making-${chosen.value} input, #making-${chosen.value} select`)
      ?.focus(),
  );
}

function step(event: KeyboardEvent): void {
  if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
  const key = event.key.toLowerCase();
  if (key === "z" && !event.shiftKey) undo();
  else if ((key === "z" && event.shiftKey) || key === "y") redo();
  else return;
  event.preventDefault();
}

/**
 * Ctrl Z steps back as everywhere: from a field, where what was typed is a step of the brief, and after a drag on a
 * drawing, which leaves the focus nowhere. Returns what ends it.
 */
export function stepByKeys(within: HTMLElement): () => void {
  const heard = (event: KeyboardEvent) => {
    const at = event.target as Node;
    if (at.contains(within) || within.contains(at)) step(event);
  };
  document.addEventListener("keydown", heard);
  return () => document.removeEventListener("keydown", heard);
}
