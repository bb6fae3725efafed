/** The schools' standards that this browser keeps, inside the worker, and which of them a flight is held against. */
import {
  type BriefDraft,
  readStandard,
  TEST_STANDARDS,
  type TestStandard,
  UnusableInput,
} from "../src/index.ts";
import type { SchoolStandard } from "./messages.ts";
import type { Template } from "./store/schema.ts";
import { keptStandards } from "./store/standards.ts";
import { StorageTrouble } from "./store/trouble.ts";

export interface KeptStandard {
  readonly standard: TestStandard;
  readonly usual: boolean;
}

/** One that can no longer be read is passed over: it is said where it is given again. */
function readKept({ name, yaml, usual = false }: Template): KeptStandard[] {
  try {
    return [{ standard: readStandard(yaml, name), usual }];
  } catch (error) {
    if (error instanceof UnusableInput) return [];
    throw error;
  }
}

/** None where the browser keeps nothing: the logbook says why. */
export async function schoolStandards(): Promise<readonly KeptStandard[]> {
  try {
    return (await keptStandards()).flatMap(readKept);
  } catch (error) {
    if (error instanceof StorageTrouble) return [];
    throw error;
  }
}

export const asListed = ({ standard: { id, title }, usual }: KeptStandard): SchoolStandard => ({
  ...{ id, title, usual },
});

interface Wish {
  /** What the reader chose on the sheet: an id, "none", or null for no choice. */
  readonly chosen: string | null;
  /** From the file that was given with the flight. */
  readonly given: TestStandard | null;
  readonly brief: BriefDraft | null;
}

/**
 * What was chosen, else what was given with the flight, else what the brief names, else the usual one. Null leaves it to
 * the published standard that the brief names, if any.
 */
export function standardFor(
  { chosen, given, brief }: Wish,
  kept: readonly KeptStandard[],
): TestStandard | "none" | null {
  if (chosen === "none") return chosen;
  const named = (id: string | null): TestStandard | null =>
    TEST_STANDARDS.find((one) => one.id === id) ??
    kept.find((one) => one.standard.id === id)?.standard ??
    null;
  const first = named(chosen) ?? given;
  if (first || !brief) return first;
  if (brief.standard) return named(brief.standard);
  return kept.find(({ usual }) => usual)?.standard ?? null;
}
