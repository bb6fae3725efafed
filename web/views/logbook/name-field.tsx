/** A name typed by the user, with those given before to choose from. */
import { useEffect, useId, useState } from "preact/hooks";

interface Props {
  readonly name: string;
  readonly label: string;
  readonly known: readonly string[];
  readonly placeholder?: string;
  /** What stands; left out in a form that writes on several. */
  readonly value?: string;
  readonly change?: (value: string) => void;
}

export function NameField({ name, label, known, placeholder, value, change }: Props) {
  const list = useId();
  // what is being typed stands, whatever comes into the logbook meanwhile
  const [typed, setTyped] = useState<string | null>(null);
  useEffect(() => setTyped(null), [value]);
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
          onInput={(event) => setTyped(event.currentTarget.value)}
          onChange={(event) => change?.(event.currentTarget.value)}
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
