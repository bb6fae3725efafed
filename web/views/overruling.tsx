/** The instructor's own verdict in place of a computed one: which, what, by whom and why. */
import { useState } from "preact/hooks";
import {
  type DocumentExercise,
  type Overrule,
  type Verdict,
  withOverrule,
  withoutOverrule,
} from "../../src/index.ts";
import { useNotes, useOverrules, write } from "../notes.ts";

const CHOICES: readonly Verdict["verdict"][] = ["met", "not met", "cannot tell", "not flown"];

interface Props {
  readonly exercise: DocumentExercise;
}

export function Overruling({ exercise }: Props) {
  const notes = useNotes();
  const { title, verdicts } = exercise;
  const index = notes.document.exercises.indexOf(exercise);
  const mine = useOverrules(exercise);
  const [criterion, choose] = useState(verdicts[0]!.criterion);
  const [changed, change] = useState<Partial<Overrule>>({});
  const computed = verdicts.find((v) => v.criterion === criterion)!;
  const standing = mine.find((o) => o.criterion === criterion);
  const lastBy = notes.written.value.overrules.at(-1)?.by ?? "";
  const proposed: Overrule = {
    ...{ exercise: index, title, criterion },
    verdict: changed.verdict ?? standing?.verdict ?? (computed.verdict === "met" ? "not met" : "met"),
    by: changed.by ?? standing?.by ?? lastBy,
    why: changed.why ?? standing?.why ?? "",
  };
  const settle = (next: typeof notes.written.value) => {
    write(notes, next);
    change({});
  };
  return (
    <details class="screen overruling">
      <summary>Overrule a verdict</summary>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          settle(withOverrule(notes.written.value, proposed));
        }}
      >
        <label>
          Criterion
          <select
            value={criterion}
            onChange={(event) => {
              choose(event.currentTarget.value);
              change({ by: proposed.by });
            }}
          >
            {verdicts.map((v) => (
              <option key={v.criterion} value={v.criterion}>
                {v.title}: {v.verdict}
              </option>
            ))}
          </select>
        </label>
        <label>
          Your verdict
          <select
            value={proposed.verdict}
            onChange={(event) =>
              change({ ...changed, verdict: event.currentTarget.value as Verdict["verdict"] })
            }
          >
            {CHOICES.map((choice) => (
              <option key={choice}>{choice}</option>
            ))}
          </select>
        </label>
        <label>
          Who (may be left empty)
          <input
            value={proposed.by}
            onInput={(event) => change({ ...changed, by: event.currentTarget.value })}
          />
        </label>
        <label class="why">
          Why (may be left empty)
          <input
            value={proposed.why}
            onInput={(event) => change({ ...changed, why: event.currentTarget.value })}
          />
        </label>
        <p>
          <button type="submit">{standing ? "Change my verdict" : "Overrule"}</button>{" "}
          {standing && (
            <button type="button" onClick={() => settle(withoutOverrule(notes.written.value, standing))}>
              Withdraw it
            </button>
          )}
        </p>
      </form>
      <p>The computed verdict stays beside yours, here, on paper and in what is saved.</p>
    </details>
  );
}
