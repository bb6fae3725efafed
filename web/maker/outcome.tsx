/** What came of an exercise of the brief, in a line: when it was flown, the finding, the verdict that decides. */
import { clock, type DocumentExercise, decidingVerdict, exerciseSentence } from "../../src/index.ts";
import { flight } from "../flight.ts";
import { reading } from "./making.ts";
import { draftAt } from "./reading.ts";
import { notWorkedOut } from "./rework.ts";

/** What the sheet says of the exercise at an index: the nth of its title, since titles may come twice. Null where the sheet is of another brief. */
export function resultOf(index: number): DocumentExercise | null {
  const now = reading.value;
  const title = draftAt(now, index)?.title;
  if (!title || !flight.value || notWorkedOut.value.length > 0) return null;
  let before = 0;
  for (let i = 0; i < index; i++) if (draftAt(now, i)?.title === title) before++;
  const { exercises } = flight.value.document;
  return exercises.filter((e) => e.source === "brief" && e.title === title)[before] ?? null;
}

export function Outcome({ index }: { index: number }) {
  const result = resultOf(index);
  if (!draftAt(reading.value, index)) return <span class="fine">waits for its fields</span>;
  if (notWorkedOut.value.length > 0) return <span class="wrong">could not be worked out</span>;
  if (!result) return <span class="fine">is being worked out</span>;
  const verdict = decidingVerdict(result.verdicts);
  return (
    <span class="fine">
      {result.startUtc && result.endUtc && `${clock(result.startUtc)} to ${clock(result.endUtc)}. `}
      {exerciseSentence(result)}
      {verdict && (
        <>
          {" "}
          <b>{verdict.verdict}</b>
        </>
      )}
    </span>
  );
}
