/** One exercise of the brief: folded to a line with what came of it, or open with all its fields. */
import { type DraftExercise, pointsNamed, runwaysNamed } from "../../src/index.ts";
import { directionNote, runwayNote } from "./direction-note.ts";
import { feetNote } from "./feet.ts";
import { FieldLine } from "./field.tsx";
import { fieldText, kindOf, pathIn, withField } from "./field-values.ts";
import { type Field, fieldsOf } from "./fields.ts";
import { change, chosen, flightTime, moveExercise, reading, removeExercise, values } from "./making.ts";
import { Outcome } from "./outcome.tsx";
import { fieldId, picking } from "./picking.ts";
import { known, meantBy } from "./points.ts";
import { readOffNote } from "./read-off.ts";
import { complaintsAt, draftAt, resolvedAt } from "./reading.ts";
import { mapOf, type Path, placeNote, put, type Values } from "./values.ts";

/** Which needle is meant where none is chosen: a fix taken from the plan is no VOR until somebody says so. */
function needleNote(draft: DraftExercise | null, { at: [key] }: Field): string | null {
  if (key !== "scale" || draft?.kind !== "course") return null;
  const { fix, scale } = draft;
  return `${scale.label}: ${fix.ident} ${fix.kind === "vor" ? "is a VOR" : "is not said to be a VOR"}`;
}

/** A runway of a list, by its ident, fills in where it lies. */
function withListedRunway(exercise: Values, text: string): Values {
  const runway = runwaysNamed(known.peek(), text)[0];
  if (!runway) return exercise;
  const { threshold, end, elevation } = runway;
  const place = (p: { latitude: number; longitude: number }) => [p.latitude, p.longitude];
  const written = {
    ident: text,
    threshold: place(threshold),
    end: place(end),
    elevation_ft: elevation === null ? "" : Math.round(elevation),
  };
  return put(exercise, ["approach", "runway"], written) as Values;
}

/** An ident as it is known: capitals or not are not what is meant. */
function knownIdent(typed: string): string {
  const sought = typed.trim().toUpperCase();
  const own = Object.keys(mapOf(values.peek().fixes)).find((ident) => ident.toUpperCase() === sought);
  return own ?? pointsNamed(known.peek(), typed)[0]?.ident ?? typed;
}

/** What the text of a field comes to, in words; null where there is nothing to say. */
function noteUnder(index: number, exercise: Values, field: Field, text: string): string | null {
  if (text.trim() === "") return needleNote(draftAt(reading.value, index), field);
  if (field.takes === "direction") {
    const comesTo = directionNote(resolvedAt(reading.value, index, flightTime.value), field);
    const unsure = field.at[0] === "inbound" ? readOffNote(exercise) : null;
    return [comesTo, unsure].filter(Boolean).join("; ") || null;
  }
  if (field.takes === "ident") return Object.hasOwn(mapOf(values.value.fixes), text) ? null : meantBy(text);
  const key = field.at.at(-1);
  if (field.takes === "number" && String(key).endsWith("_ft")) return feetNote(text);
  if (key === "threshold") return placeNote(text);
  return key === "end" ? runwayNote(exercise, flightTime.value) : null;
}

function ExerciseField({ index, exercise, field }: { index: number; exercise: Values; field: Field }) {
  const path: Path = ["exercises", index, ...pathIn(exercise, field)];
  const idPath: Path = field.at[0] === "form" ? ["exercises", index, "form"] : path;
  const text = fieldText(exercise, field);
  const own = text.trim() !== "" ? field.complaint?.(text) : null;
  const wrong = own ? [own] : field.at[0] === "form" ? [] : complaintsAt(reading.value, path, true);
  const write = (typed: string) => {
    const changed = withField(exercise, field, field.takes === "ident" ? knownIdent(typed) : typed);
    const filled = field.takes === "runway" ? withListedRunway(changed, typed) : changed;
    change(["exercises", index], filled);
  };
  const note = noteUnder(index, exercise, field, text);
  const words = `${field.label} of exercise ${index + 1}`;
  const isPicked = picking.value?.path?.join() === path.join();
  return (
    <div class="with-pick">
      <FieldLine
        id={fieldId(idPath)}
        label={field.label}
        value={text}
        put={write}
        hint={field.hint}
        choices={field.choices}
        wrong={wrong}
        needed={field.needed ?? false}
        note={note}
        list={
          field.takes === "ident" ? "brief-idents" : field.takes === "runway" ? "brief-runways" : undefined
        }
      />
      {field.takes === "ident" && (
        <button
          type="button"
          class="pick"
          aria-pressed={isPicked}
          aria-label={`Pick on the plan: ${words}`}
          onClick={() => {
            picking.value = isPicked ? null : { path, words };
            if (!isPicked) document.getElementById("brief-plan")?.scrollIntoView({ block: "nearest" });
          }}
        >
          on the plan
        </button>
      )}
    </div>
  );
}

const KIND_WORDS = {
  course: "Course",
  leg: "Leg",
  arc: "Arc",
  hold: "Hold",
  descent: "Descent",
  approach: "Approach",
};

export function ExerciseForm({ index, value }: { index: number; value: unknown }) {
  const kind = kindOf(value);
  const exercise = mapOf(value);
  const isOpen = chosen.value === index;
  const title = draftAt(reading.value, index)?.title ?? (kind ? KIND_WORDS[kind] : "Not known here");
  const whole = complaintsAt(reading.value, ["exercises", index]);
  return (
    <li class="making">
      <h3>
        <button
          type="button"
          class="fold"
          aria-expanded={isOpen}
          aria-controls={`making-${index}`}
          onClick={() => {
            chosen.value = isOpen ? null : index;
          }}
        >
          <b>{index + 1}</b> {title}
        </button>
      </h3>
      <p class="outcome">
        <Outcome index={index} />
      </p>
      {isOpen && (
        <fieldset id={`making-${index}`}>
          <legend class="vh">Exercise {index + 1}</legend>
          {kind ? (
            <div class="asks">
              {fieldsOf(kind).map((field) => (
                <ExerciseField key={field.at.join()} index={index} exercise={exercise} field={field} />
              ))}
            </div>
          ) : (
            <p class="fine">It is kept as it stands in the file, and cannot be changed here.</p>
          )}
          {whole.length > 0 && <p class="wrong">{whole.join(" ")}</p>}
          <p class="fine save">
            <button type="button" onClick={() => moveExercise(index, -1)} disabled={index === 0}>
              Earlier
            </button>
            <button type="button" onClick={() => moveExercise(index, 1)}>
              Later
            </button>
            <button type="button" onClick={() => removeExercise(index)}>
              Take out
            </button>
          </p>
        </fieldset>
      )}
    </li>
  );
}
