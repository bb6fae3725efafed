/** Names the pilot of flights that nobody is named for, where habits take them as one pilot's. */
import { labelAll } from "../../labelling.ts";
import { pilots } from "../../logbook.ts";
import { flightsWords } from "../../outcome-words.ts";
import { address } from "../../place.ts";
import { NameField } from "./name-field.tsx";

export function Naming({ ids }: { readonly ids: readonly string[] }) {
  if (ids.length === 0) return null;
  return (
    <>
      <form
        class="asks naming"
        aria-label="Flights without a pilot’s name"
        onSubmit={(event) => {
          event.preventDefault();
          const pilot = String(new FormData(event.currentTarget).get("pilot") ?? "");
          if (pilot.trim() !== "") void labelAll(ids, { pilot, aircraft: "", addTags: [], dropTags: [] });
        }}
      >
        <NameField
          name="pilot"
          label={`Pilot of ${flightsWords(ids.length)} without a name`}
          known={pilots.value}
        />
        <p class="does">
          <button class="btn" type="submit">
            Write on {ids.length === 1 ? "it" : "all"}
          </button>
        </p>
      </form>
      <p class="fine">
        Of several pilots? Tick each one’s flights in the <a href={address("logbook")}>logbook</a> and name
        them there.
      </p>
    </>
  );
}
