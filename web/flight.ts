/** What the page knows: the flight on the sheet, the work under way, and what there is to say about the files. */
import { signal } from "@preact/signals";
import type { ColumnQuestion, Debriefed, OpenRequest } from "./messages.ts";
import { storageTrouble } from "./store/trouble.ts";

export interface Flight extends Debriefed {
  /** Its place in the logbook; null where this browser keeps nothing. */
  readonly id: string | null;
  /** Tells one sheet from the next. */
  readonly opened: number;
  /** As it was opened, to open it again with its own route as the brief. */
  readonly request: OpenRequest;
}

export type Work = { readonly words: string; readonly share: number | null };

export const flight = signal<Flight | null>(null);
/** What is done for the sheet. */
export const work = signal<Work | null>(null);
/** Sentences, announced as they come. */
export const notices = signal<readonly string[]>([]);

/** Asked of the reader before files can be read. */
export const question = signal<ColumnQuestion | null>(null);

export const alsoSay = (...sentences: readonly string[]): void => {
  notices.value = [...notices.value.filter((said) => !sentences.includes(said)), ...sentences];
};

const passing = new Set<string>();
/** Good news, of interest until the reader goes elsewhere. */
export function sayInPassing(sentence: string): void {
  passing.add(sentence);
  alsoSay(sentence);
}
/** The reader went to another view. */
export function moveOn(): void {
  notices.value = notices.value.filter((sentence) => !passing.has(sentence));
}

/** Says what the browser did not keep or give, and goes on with null. */
export async function orSay<T>(work: Promise<T>): Promise<T | null> {
  try {
    return await work;
  } catch (error) {
    alsoSay(storageTrouble(error).message);
    return null;
  }
}
