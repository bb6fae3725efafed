/** What can be done with the flights that are ticked: names, tags, the bin. */
import { useState } from "preact/hooks";
import { deleteFlights, labelAll } from "../../labelling.ts";
import { tagsOf, valuesOf } from "../../listing.ts";
import { standing, ticked } from "../../logbook.ts";
import { flightsWords } from "../../outcome-words.ts";
import { NameField } from "./name-field.tsx";

const NOTHING = { pilot: "", aircraft: "", add: "", drop: "" };

export function Ticked() {
  const [typed, setTyped] = useState(NOTHING);
  const all = standing.value;
  const ids = all.flatMap(({ id }) => (ticked.value.has(id) ? [id] : []));
  if (ids.length === 0) return null;
  const write = () => {
    void labelAll(ids, {
      pilot: typed.pilot,
      aircraft: typed.aircraft,
      addTags: tagsOf(typed.add),
      dropTags: tagsOf(typed.drop),
    });
    setTyped(NOTHING);
  };
  const tags = valuesOf(all, (row) => row.tags);
  return (
    <form
      class="asks ticked"
      aria-label="With the ticked flights"
      onSubmit={(event) => {
        event.preventDefault();
        write();
      }}
    >
      <p class="count">
        <b>{flightsWords(ids.length)} ticked</b>
      </p>
      <NameField
        id="ticked-pilot"
        label="Pilot"
        value={typed.pilot}
        placeholder="as it stands"
        known={valuesOf(all, (row) => [row.pilot])}
        change={(pilot) => setTyped({ ...typed, pilot })}
      />
      <NameField
        id="ticked-aircraft"
        label="Aircraft"
        value={typed.aircraft}
        placeholder="as it stands"
        known={valuesOf(all, (row) => [row.aircraft])}
        change={(aircraft) => setTyped({ ...typed, aircraft })}
      />
      <NameField
        id="ticked-add"
        label="Add tags"
        value={typed.add}
        placeholder="night, lesson 6"
        known={tags}
        change={(add) => setTyped({ ...typed, add })}
      />
      <NameField
        id="ticked-drop"
        label="Take off tags"
        value={typed.drop}
        known={tags}
        change={(drop) => setTyped({ ...typed, drop })}
      />
      <p class="does">
        <button class="btn" type="submit">
          Write on {ids.length === 1 ? "it" : "all"}
        </button>{" "}
        <button type="button" onClick={() => void deleteFlights(ids)}>
          Delete
        </button>{" "}
        <button
          type="button"
          onClick={() => {
            ticked.value = new Set();
          }}
        >
          Untick
        </button>
      </p>
    </form>
  );
}
