/** One flight, read from top to bottom like a report. */

import type { ComponentChildren } from "preact";
import { useEffect, useMemo } from "preact/hooks";
import type { Carried, DocumentExercise } from "../../src/index.ts";
import { CursorOfSheet, createCursor, FlightPlan, InTurn } from "../drawings/index.ts";
import type { NotesKeeper } from "../kept-notes.ts";
import { followNotes, NotesOfSheet, notesOn } from "../notes.ts";
import type { Aim } from "../place.ts";
import { Aimed } from "./aimed.tsx";
import { Beware } from "./beware.tsx";
import { Exercise } from "./exercise.tsx";
import { ExerciseBody } from "./exercise-body.tsx";
import { Foot } from "./foot.tsx";
import { Head } from "./head.tsx";
import type { NextHoldOf } from "./hold-body.tsx";
import { LineUp } from "./line-up.tsx";
import { NotCompared } from "./not-compared.tsx";
import { Remarks } from "./remarks.tsx";
import { WindOfTheFlight } from "./wind.tsx";

interface Props {
  readonly flight: Carried;
  /** What can be done with the files that it came from. */
  readonly offers?: ComponentChildren;
  /** Ways to save that only the running page has. */
  readonly saves?: ComponentChildren;
  /** Where the instructor's notes go. */
  readonly keeper?: NotesKeeper;
  /** What can be done with one exercise. */
  readonly offerOn?: (exercise: DocumentExercise) => ComponentChildren;
  /** The exercise, and the moment, that a link led to. */
  readonly aim?: Aim | null;
  /** Takes a hold to the panel for the next one. */
  readonly nextHold?: NextHoldOf;
}

export function Sheet({ flight, offers, saves, keeper, nextHold, offerOn, aim = null }: Props) {
  const { document, series } = flight;
  const cursor = useMemo(createCursor, [flight]);
  const notes = useMemo(() => notesOn(document, keeper), [document]);
  useEffect(() => followNotes(notes), [notes]);
  return (
    <NotesOfSheet.Provider value={notes}>
      <CursorOfSheet.Provider value={cursor}>
        <InTurn>
          <Head flight={flight} saves={saves} />
          <Beware document={document} />
          <p class="caution">{document.caution}</p>
          {offers}
          <LineUp exercises={document.exercises} series={series} />
          <figure class="above" aria-label="The flight from above">
            <FlightPlan document={document} series={series} cursor={cursor} />
            <figcaption>
              The whole flight from above, north-up. Numbers are those of the exercises.
              {document.exercises.some(({ kind, facts }) => kind === "hold" && facts) &&
                " Dotted: each hold in still air."}
            </figcaption>
          </figure>
          {document.exercises.map((exercise, i) => {
            const columns = series.exercises[i];
            return exercise.facts && columns ? (
              <Exercise
                key={`${exercise.title} ${exercise.startUtc}`}
                number={i + 1}
                exercise={exercise}
                log={document.log}
                offer={offerOn?.(exercise)}
              >
                <ExerciseBody
                  exercise={exercise}
                  columns={columns}
                  flight={flight}
                  cursor={cursor}
                  nextHold={nextHold}
                />
              </Exercise>
            ) : null;
          })}
          <NotCompared exercises={document.exercises} />
          <WindOfTheFlight document={document} series={series} />
          <Remarks />
          <Foot document={document} />
          <Aimed aim={aim} />
        </InTurn>
      </CursorOfSheet.Provider>
    </NotesOfSheet.Provider>
  );
}
