/** Room for the instructor's words on the flight, ruled, what was written of exercises that are no more, and the signature rules. */
import { withRemark } from "../../src/index.ts";
import { useNotes, write } from "../notes.ts";

/** Written to exercises that this working-out of the flight does not have, as after another brief. */
function Stranded() {
  const { remarks, overrules } = useNotes().written.value;
  const words = [
    ...remarks.filter((r) => r.exercise === null && r.title).map((r) => [r.title, r.text] as const),
    ...overrules
      .filter((o) => o.exercise === null)
      .map((o) => [o.title, `${o.verdict}${o.by && `, ${o.by}`}${o.why && `: ${o.why}`}`] as const),
  ];
  return words.map(([title, text]) => (
    <p key={`${title} ${text}`} class="fine">
      Written earlier on “{title}”, which is not an exercise here: {text}
    </p>
  ));
}

export function Remarks() {
  const notes = useNotes();
  const text = notes.written.value.remarks.find((r) => r.exercise === null && !r.title)?.text ?? "";
  const store = (now: string) => write(notes, withRemark(notes.written.value, { exercise: null, text: now }));
  return (
    <section class="remarks" aria-labelledby="remarks-title">
      <div />
      <div>
        <h2 id="remarks-title">
          <label for="remark">Remarks</label>
        </h2>
        <textarea
          id="remark"
          // Another flight is another sheet of paper.
          key={`${notes.document.log.file} ${notes.document.log.startUtc}`}
          value={text}
          onInput={(event) => store(event.currentTarget.value)}
        />
        <Stranded />
        {!notes.kept.value && (
          <p class="fine screen">This browser keeps nothing: print or save before leaving the page.</p>
        )}
        <div class="sign">
          <span>instructor</span>
          <span>pilot</span>
          <span>date</span>
        </div>
      </div>
    </section>
  );
}
