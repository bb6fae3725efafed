/** One field of the brief: its name, what is typed, and under it what is wrong or what it comes to. */
import { useState } from "preact/hooks";
import type { Choice } from "./fields.ts";

interface Props {
  readonly id: string;
  readonly label: string;
  readonly value: string;
  readonly put: (text: string) => void;
  readonly hint?: string;
  readonly choices?: readonly Choice[] | undefined;
  /** What is wrong with it, in words. */
  readonly wrong?: readonly string[];
  readonly needed?: boolean;
  /** What it comes to, as in "218°M = 220.5°T". */
  readonly note?: string | null;
  /** Id of a list of words that it offers. */
  readonly list?: string | undefined;
  /** Called when the field is left, and on Enter. */
  readonly onLeave?: () => void;
}

/** An empty field that is needed is not blamed before it was left. */
export function FieldLine(props: Props) {
  const {
    id,
    label,
    value,
    put,
    hint = "",
    choices,
    wrong = [],
    needed = false,
    note,
    list,
    onLeave,
  } = props;
  const [left, setLeft] = useState(false);
  const missing = value.trim() === "" && needed;
  const words = missing ? (left ? ["Needed here."] : []) : wrong;
  const isWrong = words.length > 0;
  const under = [isWrong ? `${id}-wrong` : "", note ? `${id}-note` : ""].filter(Boolean).join(" ");
  const common = {
    id,
    value,
    onBlur: () => {
      setLeft(true);
      onLeave?.();
    },
    ...(isWrong ? { "aria-invalid": true } : {}),
    ...(under ? { "aria-describedby": under } : {}),
  };
  return (
    <p class={needed ? "field needed" : "field"}>
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
          list={list}
          onInput={(event) => put(event.currentTarget.value)}
          onKeyDown={(event) => {
            if (event.key === "Enter") onLeave?.();
          }}
        />
      )}
      {note && !isWrong && (
        <span class="note" id={`${id}-note`}>
          {note}
        </span>
      )}
      {isWrong && (
        <span class="wrong" id={`${id}-wrong`}>
          {words.join(" ")}
        </span>
      )}
    </p>
  );
}
