/** What each finding of an exercise rests on: the stretch of time, which a click shows in the drawings, and what was not told above. */
import { useContext } from "preact/hooks";
import {
  clockSeconds,
  type DocumentExercise,
  type Finding,
  findingSentence,
  otherFindings,
} from "../../src/index.ts";
import { CursorOfSheet, markedSpan } from "../drawings/index.ts";
import { findingName } from "../finding-name.ts";

/** Takes every drawing to a stretch, and the reader to the drawings of its exercise; once more lets it go. */
function show(cursor: NonNullable<ReturnType<typeof useCursor>>, from: number, to: number, id: string): void {
  const span = markedSpan(cursor);
  if (span.peek()?.from === from && span.peek()?.to === to) {
    span.value = null;
    cursor.value = null;
    return;
  }
  span.value = { from, to };
  cursor.value = from;
  const still = matchMedia("(prefers-reduced-motion: reduce)").matches;
  document
    .querySelector(`#${id} figure`)
    ?.scrollIntoView({ block: "nearest", behavior: still ? "instant" : "smooth" });
}

const useCursor = () => useContext(CursorOfSheet);

function Stretch({ finding, id }: { finding: Finding; id: string }) {
  const cursor = useCursor();
  const { fromUtc, toUtc } = finding.evidence;
  if (!cursor || !fromUtc) return null;
  const [from, to] = [Date.parse(fromUtc), Date.parse(toUtc ?? fromUtc)];
  const now = markedSpan(cursor).value;
  const words = to > from ? `${clockSeconds(fromUtc)} to ${clockSeconds(toUtc!)}` : clockSeconds(fromUtc);
  return (
    <button
      type="button"
      aria-pressed={now?.from === from && now.to === to}
      onClick={() => show(cursor, from, to, id)}
    >
      {words}
    </button>
  );
}

export function Evidence({ exercise, id }: { exercise: DocumentExercise; id: string }) {
  const untold = new Set(otherFindings(exercise));
  const timed = exercise.findings.filter((f) => f.evidence.fromUtc !== null || untold.has(f));
  if (timed.length === 0) return null;
  return (
    <div class="evidence">
      <p>
        <b>Where it shows.</b>
      </p>
      <ul>
        {timed.map((finding) => (
          <li key={`${finding.code} ${finding.evidence.fromUtc}`} class={untold.has(finding) ? "" : "screen"}>
            {untold.has(finding) ? findingSentence(finding, exercise) : findingName(finding.code)}{" "}
            <Stretch finding={finding} id={id} />
          </li>
        ))}
      </ul>
    </div>
  );
}
