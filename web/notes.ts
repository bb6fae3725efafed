/** What the instructor writes on the sheet, within reach of every part of it, and kept letter by letter. */
import { type Signal, signal } from "@preact/signals";
import { createContext } from "preact";
import { useContext } from "preact/hooks";
import {
  type Carried,
  type DebriefDocument,
  type DocumentExercise,
  type InstructorNotes,
  notesOf,
  type Overrule,
  withNotes,
} from "../src/index.ts";
import { type NotesKeeper, notesByFile } from "./kept-notes.ts";

export interface Notes {
  readonly document: DebriefDocument;
  readonly keeper: NotesKeeper;
  readonly written: Signal<InstructorNotes>;
  /** Whether this browser keeps them. */
  readonly kept: Signal<boolean>;
}

/** What was written here, else what the document carries, each with the exercise that it is of. */
export function notesOn(document: DebriefDocument, keeper: NotesKeeper = notesByFile): Notes {
  const found = withNotes(document, keeper.kept(document) ?? notesOf(document));
  return { document, keeper, written: signal(notesOf(found)), kept: signal(true) };
}

export const NotesOfSheet = createContext<Notes | null>(null);

export function useNotes(): Notes {
  const notes = useContext(NotesOfSheet);
  if (!notes) throw new Error("a part of the sheet stands outside of it");
  return notes;
}

export function write({ document, keeper, written, kept }: Notes, notes: InstructorNotes): void {
  written.value = notes;
  kept.value = keeper.keep(document, notes);
}

/** What another tab writes on the same flight shows here too; gives what ends it. */
export function followNotes({ document, keeper, written }: Notes): () => void {
  const end = keeper.follow?.((notes) => {
    const here = notesOf(withNotes(document, notes));
    if (JSON.stringify(here) !== JSON.stringify(written.peek())) written.value = here;
  });
  return () => end?.();
}

/** The instructor's verdicts on an exercise. */
export function useOverrules(exercise: DocumentExercise): readonly Overrule[] {
  const { document, written } = useNotes();
  const index = document.exercises.indexOf(exercise);
  return written.value.overrules.filter((o) => o.exercise === index);
}

/** The flight with all that was written on its sheet, to be saved. */
export function noted<F extends Carried>(flight: F, { written, keeper }: Notes): F {
  const document = withNotes(flight.document, written.peek());
  const flownBy = keeper.flownBy?.();
  return { ...flight, document: flownBy ? { ...document, flownBy } : document };
}
