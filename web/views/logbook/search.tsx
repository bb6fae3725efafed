/** What is looked for: words, people, aircraft, tags, days. */
import { EVERYTHING, type Search } from "../../listing.ts";
import { aircraft, found, pilots, search, standing, tags } from "../../logbook.ts";

const change = (to: Partial<Search>): void => {
  search.value = { ...search.value, ...to };
};

interface ChoiceProps {
  readonly label: string;
  readonly every: string;
  readonly values: readonly string[];
  readonly value: string;
  readonly choose: (value: string) => void;
}

/** Nothing to choose from is no choice. */
function Choice({ label, every, values, value, choose }: ChoiceProps) {
  if (values.length === 0) return null;
  return (
    <p class="field">
      <label>
        {label}
        <select value={value} onChange={(event) => choose(event.currentTarget.value)}>
          <option value="">{every}</option>
          {values.map((v) => (
            <option key={v} value={v}>
              {v}
            </option>
          ))}
        </select>
      </label>
    </p>
  );
}

function Day({ label, value, choose }: { label: string; value: string; choose: (value: string) => void }) {
  return (
    <p class="field">
      <label>
        {label}
        <input type="date" value={value} onInput={(event) => choose(event.currentTarget.value)} />
      </label>
    </p>
  );
}

export function SearchPanel() {
  const asked = search.value;
  const all = standing.value;
  const isNarrowed = found.value.length !== all.length;
  return (
    <search class="asks">
      <p class="field wide">
        <label>
          Search
          <input
            type="search"
            value={asked.words}
            placeholder="any words: 9 June, TARNO, not met"
            onInput={(event) => change({ words: event.currentTarget.value })}
          />
        </label>
      </p>
      <Choice
        label="Pilot"
        every="every pilot"
        values={pilots.value}
        value={asked.pilot}
        choose={(pilot) => change({ pilot })}
      />
      <Choice
        label="Aircraft"
        every="every aircraft"
        values={aircraft.value}
        value={asked.aircraft}
        choose={(aircraft) => change({ aircraft })}
      />
      <Choice
        label="Tag"
        every="every tag"
        values={tags.value}
        value={asked.tag}
        choose={(tag) => change({ tag })}
      />
      <Day label="From (UTC)" value={asked.from} choose={(from) => change({ from })} />
      <Day label="To (UTC)" value={asked.to} choose={(to) => change({ to })} />
      <p class="fine count" aria-live="polite">
        {isNarrowed
          ? `${found.value.length} of ${all.length} flights`
          : `${all.length} ${all.length === 1 ? "flight" : "flights"}`}
        {isNarrowed && (
          <>
            {" "}
            <button
              type="button"
              onClick={() => {
                search.value = { ...EVERYTHING, order: asked.order, backwards: asked.backwards };
              }}
            >
              Show all
            </button>
          </>
        )}
      </p>
    </search>
  );
}
