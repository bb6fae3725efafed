/** A name typed by the user, with those given before to choose from. */
import { useId } from "preact/hooks";

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
  return (
    <p class="field">
      <label>
        {label}
        <input
          name={name}
          list={list}
          {...(value === undefined ? {} : { value })}
          placeholder={placeholder}
          autocomplete="off"
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
