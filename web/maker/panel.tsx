/** The maker of a brief on the sheet: what was meant, exercise by exercise; the debrief beneath follows at once. */
import { useEffect, useRef } from "preact/hooks";
import { TEST_STANDARDS } from "../../src/index.ts";
import type { Flight } from "../flight.ts";
import { ExerciseForm } from "./exercise-form.tsx";
import { FieldLine } from "./field.tsx";
import { NEW_EXERCISE } from "./field-values.ts";
import { EXERCISE_KINDS, type ExerciseKind } from "./fields.ts";
import { Flown } from "./flown.tsx";
import { Keep } from "./keep.tsx";
import { goToChosen, stepByKeys } from "./keyboard.ts";
import { addExercise, change, reading, said, values } from "./making.ts";
import { closeMaker } from "./opened.ts";
import { Plan } from "./plan.tsx";
import { known } from "./points.ts";
import { Points } from "./points-table.tsx";
import { honourPresses } from "./presses.ts";
import { complaintsAt, exercisesOf } from "./reading.ts";
import { isReworking, notWorkedOut } from "./rework.ts";
import { chooseStandard } from "./standard.ts";
import { Times } from "./times.tsx";
import { at, mapOf, type Path, textOf } from "./values.ts";
import { typedWinds, windsText, windsTyped } from "./winds.ts";

const ADD_WORDS: Readonly<Record<ExerciseKind, string>> = {
  course: "a course",
  leg: "a leg between two fixes",
  arc: "an arc",
  hold: "a hold",
  descent: "a descent",
  approach: "an approach",
};

function General({ flight }: { flight: Flight }) {
  const field = (path: Path) => ({
    value: textOf(at(values.value, path)),
    put: (text: string) => change(path, text),
    wrong: complaintsAt(reading.value, path),
  });
  const winds = windsText(values.value.wind);
  const named = textOf(values.value.standard);
  const here = [...TEST_STANDARDS, ...flight.standards].map(({ id, title }) => [id, title] as const);
  const own = named !== "" && !here.some(([id]) => id === named) ? [[named, named] as const] : [];
  const usual = flight.standards.find((one) => one.usual);
  const unnamed =
    flight.school ?? (usual ? `${usual.title} (the usual one)` : "choose: no verdicts until then");
  return (
    <div class="asks general">
      <FieldLine id="brief-title" label="Title" hint="Lesson 6, radials and holds" {...field(["title"])} />
      <FieldLine
        id="brief-standard"
        label="Held against"
        choices={[["", unnamed], ...here, ...own]}
        {...field(["standard"])}
        put={chooseStandard}
      />
      <FieldLine
        id="brief-wind"
        label="Forecast wind, from true / kt"
        hint="195/20 at 3000, if known"
        value={winds}
        put={(text) => change(["wind"], windsTyped(text, values.value.wind))}
        wrong={
          winds.trim() === "" || typedWinds(winds)
            ? []
            : ["Write from / knots and the height, as in 195/20 at 3000."]
        }
      />
      <FieldLine
        id="brief-tas"
        label="True airspeed, kt"
        hint="may be left out; helps the wind"
        {...field(["aircraft", "tas_kt"])}
      />
    </div>
  );
}

/** What ident fields offer: the points of the brief first, then those of the log and the lists. */
const MOST_OFFERED = 300;
function Offers() {
  const own = Object.keys(mapOf(values.value.fixes));
  const idents = [
    ...new Set([...own, ...known.value.points.slice(0, MOST_OFFERED).map(({ ident }) => ident)]),
  ];
  return (
    <>
      <datalist id="brief-idents">
        {idents.map((ident) => (
          <option key={ident} value={ident} />
        ))}
      </datalist>
      <datalist id="brief-runways">
        {known.value.runways.slice(0, MOST_OFFERED).map(({ ident }) => (
          <option key={ident} value={ident} />
        ))}
      </datalist>
    </>
  );
}

function Add() {
  const add = (kind: ExerciseKind) => {
    addExercise(NEW_EXERCISE[kind], `Added ${ADD_WORDS[kind]}.`);
    goToChosen();
  };
  return (
    <p class="fine save adds">
      Add{" "}
      {EXERCISE_KINDS.map((kind) => (
        <button key={kind} type="button" onClick={() => add(kind)}>
          {ADD_WORDS[kind]}
        </button>
      ))}
    </p>
  );
}

export function Panel({ flight }: { flight: Flight }) {
  const title = useRef<HTMLHeadingElement>(null);
  const section = useRef<HTMLElement>(null);
  useEffect(() => {
    title.current?.focus();
    section.current?.scrollIntoView(); // what is asked stands below it
  }, []);
  useEffect(() => (section.current ? honourPresses(section.current) : undefined), []);
  useEffect(() => (section.current ? stepByKeys(section.current) : undefined), []);
  const exercises = exercisesOf(values.value);
  const close = () => {
    void closeMaker();
    requestAnimationFrame(() => document.getElementById("brief-open")?.focus());
  };
  return (
    <section ref={section} class="maker screen" aria-labelledby="brief-making">
      <h2 id="brief-making" ref={title} tabIndex={-1}>
        The brief: what was meant
      </h2>
      <Keep flight={flight} close={close} />
      <p class="fine state" role="status">
        {isReworking.value ? "The debrief is being worked out." : said.value}
      </p>
      {notWorkedOut.value.length > 0 && (
        <p class="wrong" role="alert">
          This brief could not be worked out. {notWorkedOut.value.join(" ")} The sheet beneath is still that
          of the brief before.
        </p>
      )}
      <General flight={flight} />
      <div class="two">
        <div>
          <ol class="makings">
            {exercises.map((exercise, i) => (
              <ExerciseForm key={i} index={i} value={exercise} />
            ))}
          </ol>
          {exercises.length === 0 && (
            <p>
              No exercise yet. Add what the lesson asked for: the debrief beneath is worked out against it as
              you type.
            </p>
          )}
          <Add />
          <Flown flight={flight} />
        </div>
        <div class="grounds">
          <Plan flight={flight} />
          <Times flight={flight} />
        </div>
      </div>
      <Points />
      <Offers />
    </section>
  );
}
