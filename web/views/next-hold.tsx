/** The panel for the next hold: typed in trade units, answered with every letter. */
import { useState } from "preact/hooks";
import {
  CAUTION,
  type HoldField,
  issueSentence,
  racetrackFor,
  readHold,
  type TypedHold,
} from "../../src/index.ts";
import { flight } from "../flight.ts";
import { filledFrom, typedHold } from "../next-hold.ts";
import { address } from "../place.ts";
import { Answer } from "./racetrack-answer.tsx";

interface FieldWords {
  readonly field: HoldField;
  readonly label: string;
  readonly hint: string;
  readonly choices?: readonly (readonly [value: string, words: string])[];
}

const FIELDS: readonly FieldWords[] = [
  { field: "inbound", label: "Inbound course", hint: "247, or 247T for true" },
  {
    field: "turns",
    label: "Turns",
    hint: "",
    choices: [
      ["right", "right"],
      ["left", "left"],
    ],
  },
  { field: "tas", label: "True airspeed, kt", hint: "100" },
  { field: "wind", label: "Wind, from / kt", hint: "192/20, or 192T/20 for true" },
  { field: "windDoubt", label: "Doubt of the wind, kt", hint: "may be left out" },
  { field: "leg", label: "Leg", hint: "1 min, 90 s or 4 NM" },
  {
    field: "timing",
    label: "Timing",
    hint: "",
    choices: [
      ["us", "US, of the inbound leg"],
      ["icao", "ICAO, of the outbound leg"],
    ],
  },
  { field: "altitude", label: "Altitude, ft", hint: "may be left out" },
  { field: "bank", label: "Most bank, °", hint: "else the standard’s" },
  { field: "rate", label: "Turn rate, °/s", hint: "3" },
  { field: "variation", label: "Variation", hint: "3E; where one is true, one magnetic" },
  { field: "declination", label: "Station’s declination", hint: "3E; where it is not the variation" },
];

function Field(props: {
  words: FieldWords;
  value: string;
  wrong: string | null;
  put: (value: string) => void;
}) {
  const { words, value, wrong, put } = props;
  const { field, label, hint, choices } = words;
  const [left, setLeft] = useState(false);
  const shown = left && wrong !== null;
  const id = `hold-${field}`;
  const common = {
    id,
    value,
    onBlur: () => setLeft(true),
    ...(shown ? { "aria-invalid": true, "aria-describedby": `${id}-wrong` } : {}),
  };
  return (
    <p class="field">
      <label for={id}>{label}</label>
      {choices ? (
        <select {...common} onChange={(event) => put(event.currentTarget.value)}>
          {choices.map(([choice, said]) => (
            <option key={choice} value={choice}>
              {said}
            </option>
          ))}
        </select>
      ) : (
        <input
          {...common}
          type="text"
          autocomplete="off"
          spellcheck={false}
          placeholder={hint}
          onInput={(event) => put(event.currentTarget.value)}
        />
      )}
      {shown && (
        <span class="wrong" id={`${id}-wrong`}>
          {wrong}
        </span>
      )}
    </p>
  );
}

export function NextHold() {
  const typed = typedHold.value;
  const { asked, issues } = readHold(typed);
  const put = (field: HoldField, value: string) => {
    typedHold.value = { ...typed, [field]: value } as TypedHold;
  };
  const wrong = (field: HoldField): string | null => {
    const issue = issues.find(({ where }) => where.path === field);
    return issue ? issueSentence({ ...issue, where: {} }) : null;
  };
  const onSheet = flight.value?.document;
  return (
    <>
      <div class="rule" />
      <h1 class="one" tabIndex={-1}>
        The next hold
      </h1>
      <p class="lead">
        What heading and time outbound bring a hold back onto its course in a given wind. Directions are
        magnetic unless marked T; the wind is in the reference of the course unless marked.
      </p>
      {onSheet?.wind && (
        <p class="fine save screen">
          <button
            type="button"
            onClick={() => (typedHold.value = { ...typed, ...filledFrom(onSheet, null) })}
          >
            Take the wind of the day from the sheet
          </button>
        </p>
      )}
      <form class="asks" onSubmit={(event) => event.preventDefault()}>
        {FIELDS.map((words) => (
          <Field
            key={words.field}
            words={words}
            value={typed[words.field] ?? ""}
            wrong={wrong(words.field)}
            put={(value) => put(words.field, value)}
          />
        ))}
      </form>
      {asked ? (
        <Answer answer={racetrackFor(asked)} />
      ) : (
        <p class="finding" role="status">
          {issues.some(({ code }) => code === "hold-field-missing")
            ? "Inbound course, airspeed and wind make the answer; it stands here as soon as they can be read."
            : "The answer waits for the field that cannot be read."}
        </p>
      )}
      <p class="caution">{CAUTION}</p>
      {onSheet && (
        <p class="fine screen">
          <a href={address("sheet")}>Back to the sheet</a>
        </p>
      )}
    </>
  );
}
