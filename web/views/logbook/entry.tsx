/** Who flew what, on the sheet: names and tags that the user gives, each may stay empty. */
import { labelOne } from "../../labelling.ts";
import { tagsOf, valuesOf } from "../../listing.ts";
import { rows, standing } from "../../logbook.ts";
import { NameField } from "./name-field.tsx";

export function Entry({ id }: { id: string }) {
  const row = rows.value?.find((r) => r.id === id);
  if (!row) return null;
  const all = standing.value;
  return (
    <section class="asks entry screen" aria-label="In the logbook">
      <NameField
        name="pilot"
        label="Pilot"
        value={row.pilot}
        known={valuesOf(all, (r) => [r.pilot])}
        change={(pilot) => void labelOne(id, { pilot: pilot.trim() })}
      />
      <NameField
        name="aircraft"
        label="Aircraft"
        value={row.aircraft}
        known={valuesOf(all, (r) => [r.aircraft])}
        change={(aircraft) => void labelOne(id, { aircraft: aircraft.trim() })}
      />
      <NameField
        name="tags"
        label="Tags"
        value={row.tags.join(", ")}
        placeholder="night, lesson 6"
        known={valuesOf(all, (r) => r.tags)}
        change={(tags) => void labelOne(id, { tags: tagsOf(tags) })}
      />
    </section>
  );
}
