/** Flights that were deleted: put back at once, or later from the bin, until they are cleared away. */
import { day, shownName } from "../../../src/index.ts";
import { emptyBin, justDeleted, putBack } from "../../labelling.ts";
import { titleOf } from "../../listing.ts";
import { inBin } from "../../logbook.ts";
import { flightsWords } from "../../outcome-words.ts";

/** Right after deleting. */
export function PutBack() {
  const ids = justDeleted.value;
  return (
    <div aria-live="polite">
      {ids.length > 0 && (
        <p class="putback">
          {flightsWords(ids.length)} deleted.{" "}
          <button type="button" onClick={() => void putBack(ids)}>
            Put back
          </button>
        </p>
      )}
    </div>
  );
}

export function Bin() {
  const rows = inBin.value;
  if (rows.length === 0) return null;
  const ids = rows.map(({ id }) => id);
  return (
    <details class="more-of">
      <summary>{flightsWords(rows.length)} deleted</summary>
      <p class="fine">
        They take space until they are cleared away; then nothing is left of them in this browser.
      </p>
      <ul>
        {rows.map((row) => (
          <li key={row.id}>
            {shownName(titleOf(row))}
            {row.summary?.startUtc && `, ${day(row.summary.startUtc)}`}{" "}
            <button type="button" onClick={() => void putBack([row.id])}>
              Put back
            </button>
          </li>
        ))}
      </ul>
      <p>
        <button type="button" onClick={() => void putBack(ids)}>
          Put all back
        </button>{" "}
        <button type="button" onClick={() => void emptyBin(ids)}>
          Clear all away, for good
        </button>
      </p>
    </details>
  );
}
