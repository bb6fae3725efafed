/** One exercise of whatever kind: its number and title, what happened in a sentence, why, and under it its drawings and figures. */
import type { ComponentChildren } from "preact";
import {
  asFineAs,
  clock,
  type DebriefDocument,
  type DocumentExercise,
  decidingVerdict,
  exerciseSentence,
  sideNotes,
  standing,
} from "../../src/index.ts";
import { bound } from "../bound.ts";
import { VerdictMark } from "../drawings/index.ts";
import { useOverrules } from "../notes.ts";
import { Evidence } from "./evidence.tsx";
import { Remark } from "./remark.tsx";
import { VerdictWord } from "./verdicts.tsx";

interface Props {
  readonly number: number;
  readonly exercise: DocumentExercise;
  readonly log: DebriefDocument["log"];
  /** What can be done with it. */
  readonly offer?: ComponentChildren;
  /** The drawings and figures of its kind. */
  readonly children: ComponentChildren;
}

export function Exercise({ number, exercise, log, offer, children }: Props) {
  const { startUtc, endUtc, title, source, verdicts } = exercise;
  const decides = decidingVerdict(standing(verdicts, useOverrules(exercise)));
  const told = asFineAs(log, exercise);
  const id = `exercise-${number}`;
  return (
    <section class="ex" id={id} aria-labelledby={`${id}-title`}>
      <div class="no">
        <b>{number}</b>
        {decides && (
          <>
            <VerdictMark verdict={decides} />
            <VerdictWord {...decides} />
          </>
        )}
        {startUtc && endUtc && (
          <span>
            {clock(startUtc)} to {clock(endUtc)}
          </span>
        )}
      </div>
      <div class="hd">
        <h2 id={`${id}-title`}>{bound(title)}</h2>
        <p class="finding">{bound(exerciseSentence(told))}</p>
        {source === "fitted" && (
          <p class="fine">A line fitted to what was flown: straightness, not deviation.</p>
        )}
        {offer}
      </div>
      <aside class="side" aria-label={`Notes, ${title}`}>
        {sideNotes(told).map((note) => (
          <p key={note.lead}>
            <b>{note.lead}</b> {bound(note.text)}
          </p>
        ))}
        <Evidence exercise={told} id={id} />
      </aside>
      <div class="body">
        {children}
        <Remark number={number} exercise={exercise} />
      </div>
    </section>
  );
}
