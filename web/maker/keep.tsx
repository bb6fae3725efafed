/** The brief as a file and as a template, and the steps back and forth. */
import { useEffect, useRef, useState } from "preact/hooks";
import { briefText, briefValues, fileStem, issueSentence, UnusableInput } from "../../src/index.ts";
import type { Flight } from "../flight.ts";
import { onChange } from "../store/news.ts";
import type { Template } from "../store/schema.ts";
import { dropTemplate, keepTemplate, templates } from "../store/templates.ts";
import { storageTrouble } from "../store/trouble.ts";
import { download } from "../views/save.tsx";
import { history, reading, redo, replace, undo, values, withoutTimes } from "./making.ts";
import { savedOf } from "./reading.ts";
import { textOf } from "./values.ts";

/** What is wrong with a brief that is loaded, in words. */
function faults(error: unknown): string[] {
  if (!(error instanceof UnusableInput)) throw error;
  return error.issues.map((issue) =>
    issueSentence({ ...issue, where: { ...issue.where }, facts: { ...issue.facts } }),
  );
}

const exercises = (n: number): string => (n === 1 ? "1 exercise" : `${n} exercises`);

/** Downloads the brief as far as it can be read again; says what is not in the file. */
function saved(flight: Flight): string[] {
  const file = savedOf(reading.peek(), values.peek());
  if (!file) return ["Nothing is saved yet: no exercise has all its fields. What was typed stays here."];
  download(`${fileStem(flight.document.log.file)}.brief.yaml`, "application/yaml", file.yaml);
  return file.behind > 0
    ? [`Saved without ${exercises(file.behind)} that wait for their fields; what was typed stays here.`]
    : [];
}

function useTemplates(say: (words: readonly string[]) => void) {
  const [kept, setKept] = useState<readonly Template[]>([]);
  useEffect(() => {
    const load = () => templates().then(setKept, (error: unknown) => say([storageTrouble(error).message]));
    void load();
    return onChange((what) => {
      if (what === "templates") void load();
    });
  }, [say]);
  return kept;
}

function Templates({ say }: { say: (words: readonly string[]) => void }) {
  const kept = useTemplates(say);
  const [name, setName] = useState("");
  const take = (of: string) => {
    const template = kept.find((one) => one.name === of);
    if (!template) return;
    try {
      replace(briefValues(template.yaml, template.name), `The template ${template.name} is the brief now.`);
      say([]);
    } catch (error) {
      say(faults(error));
    }
  };
  const keep = async () => {
    const as = name.trim() || textOf(values.value.title) || "Lesson";
    try {
      await keepTemplate(as, templateText());
      setName("");
      say([`Kept in this browser as the template ${as}, without its times.`]);
    } catch (error) {
      say([storageTrouble(error).message]);
    }
  };
  const drop = async (of: string) => {
    try {
      await dropTemplate(of);
    } catch (error) {
      say([storageTrouble(error).message]);
    }
  };
  return (
    <details class="fine save templates">
      <summary>Templates{kept.length > 0 && ` (${kept.length})`}</summary>
      <p>A lesson that is flown every week: keep its brief here, and take it for the next flight.</p>
      <p>
        <label>
          Name{" "}
          <input
            value={name}
            onInput={(event) => setName(event.currentTarget.value)}
            placeholder={textOf(values.value.title)}
          />
        </label>{" "}
        <button type="button" onClick={() => void keep()}>
          Keep this brief as a template
        </button>
      </p>
      <ul aria-label="Templates in this browser">
        {kept.map((template) => (
          <li key={template.name}>
            {template.name}{" "}
            <button
              type="button"
              onClick={() => take(template.name)}
              aria-label={`Take the template ${template.name}`}
            >
              Take
            </button>
            <button
              type="button"
              onClick={() => void drop(template.name)}
              aria-label={`Remove the template ${template.name}`}
            >
              Remove
            </button>
          </li>
        ))}
      </ul>
    </details>
  );
}

/** With the fixes written out, without clock times. */
function templateText(): string {
  const whole = briefValues(reading.peek().yaml, "template");
  return briefText(withoutTimes(whole));
}

export function Keep({ flight, close }: { flight: Flight; close: () => void }) {
  const input = useRef<HTMLInputElement>(null);
  const [words, setWords] = useState<readonly string[]>([]);
  const load = async () => {
    const file = input.current?.files?.[0];
    if (!file) return;
    try {
      replace(briefValues(await file.text(), file.name), `${file.name} is the brief now.`);
      setWords([]);
    } catch (error) {
      setWords(faults(error));
    }
    if (input.current) input.current.value = "";
  };
  const steps = history.value;
  return (
    <>
      <p class="fine save">
        <button type="button" onClick={undo} disabled={!steps || steps.before.length === 0}>
          Undo
        </button>
        <button type="button" onClick={redo} disabled={!steps || steps.after.length === 0}>
          Redo
        </button>
        <button type="button" onClick={() => setWords(saved(flight))}>
          Save the brief (YAML)
        </button>
        <button type="button" onClick={() => input.current?.click()}>
          Load a brief
        </button>
        <input
          ref={input}
          class="vh"
          type="file"
          accept=".yaml,.yml,.json"
          tabIndex={-1}
          aria-label="A brief to load"
          onChange={() => void load()}
        />
        <button type="button" onClick={close}>
          Done
        </button>
      </p>
      <Templates say={setWords} />
      <div class="fine" role="status">
        {words.map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </div>
    </>
  );
}
