/** A table whose headings do not tell which column is which: its first rows, and a choice above each column. */
import { useState } from "preact/hooks";
import { shownName } from "../../src/index.ts";
import { COLUMN_CHOICES, chosenColumns, stillNeeded } from "../column-choices.ts";
import type { ColumnQuestion } from "../messages.ts";
import { answer, leaveQuestion } from "../opening.ts";

const firstChoice = (column: string | null): string =>
  COLUMN_CHOICES.find((choice) => choice.column === column)?.id ?? "";

export function Columns({ asked }: { asked: ColumnQuestion }) {
  const { file, rows, meanings } = asked;
  const [ids, setIds] = useState(() => meanings.map(firstChoice));
  const missing = stillNeeded(ids);
  const choose = (at: number, id: string) => setIds(ids.map((old, i) => (i === at ? id : old)));
  return (
    <section class="columns screen" aria-labelledby="columns-title">
      <h2 id="columns-title">Which column is which?</h2>
      <p>
        {shownName(file)} is a table, but its headings do not say where latitude and longitude stand. These
        are its first rows.
      </p>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by the keyboard */}
      <section class="scroll" tabIndex={0} aria-label="First rows of the table">
        <table class="data">
          <thead>
            <tr>
              {ids.map((id, i) => (
                <th key={i}>
                  <select
                    aria-label={`Column ${i + 1}`}
                    value={id}
                    onChange={(event) => choose(i, event.currentTarget.value)}
                  >
                    <option value="">not used</option>
                    {COLUMN_CHOICES.map((choice) => (
                      <option key={choice.id} value={choice.id}>
                        {choice.words}
                      </option>
                    ))}
                  </select>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {rows.map((row, r) => (
              <tr key={r}>
                {row.map((field, i) => (
                  <td key={i}>{field.slice(0, 40)}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <p>
        <button
          class="btn"
          type="button"
          disabled={missing !== ""}
          onClick={() => void answer(chosenColumns(ids))}
        >
          Read the table
        </button>{" "}
        <button type="button" class="leave" onClick={() => void leaveQuestion()}>
          Leave it
        </button>{" "}
        <span class="fine" role="status">
          {missing}
        </span>
      </p>
    </section>
  );
}
