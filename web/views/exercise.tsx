/** One exercise: its number and title, what happened in a sentence, why, the drawings, and the figures. */
import {
  type CourseFacts,
  type CourseSeries,
  clock,
  type DocumentExercise,
  exerciseSentence,
  sideNotes,
} from "../../src/index.ts";
import type { Cursor } from "../drawings/index.ts";
import { factRows } from "../fact-rows.ts";
import type { Flight } from "../flight.ts";
import { CourseDrawings } from "./course-drawings.tsx";
import { HalfMinutes } from "./half-minutes.tsx";

interface Props {
  readonly number: number;
  readonly exercise: DocumentExercise;
  readonly facts: CourseFacts;
  readonly columns: CourseSeries;
  readonly flight: Flight;
  readonly cursor: Cursor;
}

function Facts({ title, facts }: { title: string; facts: CourseFacts }) {
  return (
    <div class="scroll">
      <table class="data facts">
        <caption>In figures, {title}</caption>
        <thead>
          <tr>
            <th>Fact</th>
            <th class="r">Value</th>
            <th>When, or of what</th>
          </tr>
        </thead>
        <tbody>
          {factRows(facts).map((row) => (
            <tr key={row.fact}>
              <th scope="row">{row.fact}</th>
              <td class="r">{row.value}</td>
              <td class="cite">{row.note}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

export function Exercise({ number, exercise, facts, columns, flight, cursor }: Props) {
  const { startUtc, endUtc, title, source } = exercise;
  const id = `exercise-${number}`;
  return (
    <section class="ex" id={id} aria-labelledby={`${id}-title`}>
      <div class="no">
        <b>{number}</b>
        {startUtc && endUtc && (
          <span>
            {clock(startUtc)} to {clock(endUtc)}
          </span>
        )}
      </div>
      <div class="hd">
        <h2 id={`${id}-title`}>{title}</h2>
        <p class="finding">{exerciseSentence(exercise)}</p>
        {source === "fitted" && (
          <p class="fine">A line fitted to what was flown: straightness, not deviation.</p>
        )}
      </div>
      <aside class="side" aria-label={`Notes, ${title}`}>
        {sideNotes(exercise).map((note) => (
          <p key={note.lead}>
            <b>{note.lead}</b> {note.text}
          </p>
        ))}
      </aside>
      <div class="body">
        <CourseDrawings exercise={exercise} series={columns} legs={flight.document.legs} cursor={cursor} />
        <HalfMinutes title={title} facts={facts} columns={columns} />
        <Facts title={title} facts={facts} />
      </div>
    </section>
  );
}
