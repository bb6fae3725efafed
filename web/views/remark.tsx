/** The instructor's remark on one exercise: a ruled line that grows as it is written; on paper only what was written. */
import { type DocumentExercise, withRemark } from "../../src/index.ts";
import { useNotes, write } from "../notes.ts";

export function Remark({ number, exercise }: { number: number; exercise: DocumentExercise }) {
  const notes = useNotes();
  const index = number - 1;
  const { title } = exercise;
  const text = notes.written.value.remarks.find((r) => r.exercise === index)?.text ?? "";
  const id = `remark-${number}`;
  const store = (now: string) =>
    write(notes, withRemark(notes.written.value, { exercise: index, title, text: now }));
  return (
    <div class={text.trim() ? "remark" : "remark screen"}>
      <label for={id}>
        Remark<span class="vh"> on {title}</span>
      </label>
      <textarea
        id={id}
        class="screen"
        rows={1}
        value={text}
        onInput={(event) => store(event.currentTarget.value)}
      />
      <p class="paper">{text}</p>
    </div>
  );
}
