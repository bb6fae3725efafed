/** What can be done with the flights that are ticked: names, tags, the bin. */
import { deleteFlights, labelAll } from "../../labelling.ts";
import { tagsOf } from "../../listing.ts";
import { aircraft, pilots, standing, tags, ticked } from "../../logbook.ts";
import { flightsWords } from "../../outcome-words.ts";
import { NameField } from "./name-field.tsx";

/** What stands in the fields of the form. */
function labellingIn(form: HTMLFormElement) {
  const typed = new FormData(form);
  const text = (name: string) => String(typed.get(name) ?? "");
  return {
    pilot: text("pilot"),
    aircraft: text("aircraft"),
    addTags: tagsOf(text("add")),
    dropTags: tagsOf(text("drop")),
  };
}

export function Ticked() {
  const all = standing.value;
  const ids = all.flatMap(({ id }) => (ticked.value.has(id) ? [id] : []));
  if (ids.length === 0) return null;
  return (
    <form
      class="asks ticked"
      aria-label="With the ticked flights"
      onSubmit={(event) => {
        event.preventDefault();
        void labelAll(ids, labellingIn(event.currentTarget));
        event.currentTarget.reset();
      }}
    >
      <p class="count">
        <b>{flightsWords(ids.length)} ticked</b>
      </p>
      <NameField name="pilot" label="Pilot" placeholder="as it stands" known={pilots.value} />
      <NameField name="aircraft" label="Aircraft" placeholder="as it stands" known={aircraft.value} />
      <NameField name="add" label="Add tags" placeholder="night, lesson 6" known={tags.value} />
      <NameField name="drop" label="Take off tags" known={tags.value} />
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
