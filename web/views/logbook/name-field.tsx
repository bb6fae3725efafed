/** A name typed by the user, with those given before to choose from. */
import { useEffect, useId, useRef, useState } from "preact/hooks";

interface Props {
  readonly name: string;
  readonly label: string;
  readonly known: readonly string[];
  readonly placeholder?: string;
  /** What stands; left out in a form that writes on several. */
  readonly value?: string;
  /** Given what was typed, and what stood when the typing began. */
  readonly change?: (value: string, began: string) => void;
}

export function NameField({ name, label, known, placeholder, value, change }: Props) {
  const list = useId();
  // what is being typed stands, whatever comes into the logbook meanwhile, from another tab too
  const [typed, setTyped] = useState<string | null>(null);
  const began = useRef<string | null>(null);
  useEffect(() => {
    if (began.current === null) setTyped(null);
  }, [value]);
  const type = (text: string) => {
    began.current ??= value ?? "";
    setTyped(text);
  };
  const end = (text: string) => {
    const from = began.current ?? value ?? "";
    began.current = null;
    change?.(text, from);
  };
  return (
    <p class="field">
      <label>
        {label}
        <input
          name={name}
          list={list}
          {...(value === undefined ? {} : { value: typed ?? value })}
          placeholder={placeholder}
          autocomplete="off"
          onInput={(event) => type(event.currentTarget.value)}
          onChange={(event) => end(event.currentTarget.value)}
          onBlur={(event) => {
            // typed and taken back: nothing was changed, and what came meanwhile may show
            if (began.current === event.currentTarget.value) setTyped(null);
            began.current = null;
          }}
        />
      </label>
      <datalist id={list}>
        {known.map((name) => (
          <option key={name} value={name} />
        ))}
      </datalist>
    </p>
  );
}
