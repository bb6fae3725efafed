/** Who flew what, on the sheet: names and tags that the user gives, each may stay empty. */
import { flownByWords } from "../../head-words.ts";
import { labelOne } from "../../labelling.ts";
import { tagChange } from "../../labels-on-the-way.ts";
import { tagsOf } from "../../listing.ts";
import { aircraft, pilots, rows, tags } from "../../logbook.ts";
import { NameField } from "./name-field.tsx";

export function Entry({ id }: { id: string }) {
  const row = rows.value?.find((r) => r.id === id);
  if (!row) return null;
  return (
    <>
      <p class="entry-paper">{flownByWords(row)}</p>
      <section key={id} class="asks entry screen" aria-label="In the logbook">
        <NameField
          name="pilot"
          label="Pilot"
          value={row.pilot}
          known={pilots.value}
          change={(pilot) => void labelOne(id, { pilot: pilot.trim() })}
        />
        <NameField
          name="aircraft"
          label="Aircraft"
          value={row.aircraft}
          known={aircraft.value}
          change={(name) => void labelOne(id, { aircraft: name.trim() })}
        />
        <NameField
          name="tags"
          label="Tags"
          value={row.tags.join(", ")}
          placeholder="night, lesson 6"
          known={tags.value}
          change={(typed, began) => void labelOne(id, { tags: tagChange(tagsOf(began), tagsOf(typed)) })}
        />
      </section>
    </>
  );
}
