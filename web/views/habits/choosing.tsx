/** Whose flights, in what, and when: chosen where there is something to choose. */
import type { FlightChoice, ObservedFlight } from "../../../src/index.ts";

interface Props {
  readonly flights: readonly ObservedFlight[];
  readonly choice: FlightChoice;
  readonly choose: (choice: FlightChoice) => void;
}

const named = (flights: readonly ObservedFlight[], of: (flight: ObservedFlight) => string | null): string[] =>
  [...new Set(flights.map(of).filter((name) => name !== null))].sort();

interface NamesProps {
  readonly label: string;
  readonly every: string;
  readonly names: readonly string[];
  readonly value: string;
  readonly set: (value: string | null) => void;
}

function Names({ label, every, names, value, set }: NamesProps) {
  if (names.length === 0) return null;
  return (
    <p class="field">
      <label>
        {label}
        <select value={value} onChange={(event) => set(event.currentTarget.value || null)}>
          <option value="">{every}</option>
          {names.map((name) => (
            <option key={name} value={name}>
              {name}
            </option>
          ))}
        </select>
      </label>
    </p>
  );
}

/** A day as the time when it begins; `after`: when it is over. */
const moment = (day: string, after = 0): string | null => {
  const time = day === "" ? Number.NaN : Date.parse(`${day}T00:00:00Z`) + after * 86_400_000;
  return Number.isNaN(time) ? null : new Date(time).toISOString();
};

/** The day of such a moment again, for its field. */
const dayOf = (utc: string | null | undefined, after = 0): string =>
  utc ? new Date(Date.parse(utc) - after * 86_400_000).toISOString().slice(0, 10) : "";

export function Choosing({ flights, choice, choose }: Props) {
  return (
    <search class="asks" aria-label="Which flights">
      <Names
        label="Pilot"
        every="every pilot"
        names={named(flights, ({ pilot }) => pilot)}
        value={choice.pilot ?? ""}
        set={(pilot) => choose({ ...choice, pilot })}
      />
      <Names
        label="Aircraft"
        every="every aircraft"
        names={named(flights, ({ aircraft }) => aircraft)}
        value={choice.aircraft ?? ""}
        set={(aircraft) => choose({ ...choice, aircraft })}
      />
      <p class="field">
        <label>
          From (UTC)
          <input
            type="date"
            value={dayOf(choice.from)}
            onInput={(event) => choose({ ...choice, from: moment(event.currentTarget.value) })}
          />
        </label>
      </p>
      <p class="field">
        <label>
          To (UTC)
          <input
            type="date"
            value={dayOf(choice.to, 1)}
            onInput={(event) => choose({ ...choice, to: moment(event.currentTarget.value, 1) })}
          />
        </label>
      </p>
    </search>
  );
}
