/** What a brief is held against is the reader's choice: a new one begins with the published standard chosen last, else with none. */
import { TEST_STANDARDS } from "../../src/index.ts";
import { change } from "./making.ts";

const LAST = "hindtrack standard chosen last";

/** Null where none was chosen yet, or nothing, or this browser keeps nothing. */
export function standardChosenLast(): string | null {
  try {
    const last = localStorage.getItem(LAST);
    return TEST_STANDARDS.find(({ id }) => id === last)?.id ?? null;
  } catch {
    return null;
  }
}

/** `id` empty for nothing. */
export function chooseStandard(id: string): void {
  change(["standard"], id);
  try {
    if (id) localStorage.setItem(LAST, id);
    else localStorage.removeItem(LAST);
  } catch {
    // The choice holds for this brief.
  }
}
