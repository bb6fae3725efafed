/** A name typed by the user, with those given before to choose from. */
interface Props {
  readonly id: string;
  readonly label: string;
  readonly value: string;
  readonly known: readonly string[];
  readonly placeholder?: string;
  readonly change: (value: string) => void;
}

export function NameField({ id, label, value, known, placeholder, change }: Props) {
  return (
    <p class="field">
      <label>
        {label}
        <input
          list={`${id}-known`}
          value={value}
          placeholder={placeholder}
          autocomplete="off"
          onChange={(event) => change(event.currentTarget.value)}
        />
      </label>
      <datalist id={`${id}-known`}>
        {known.map((name) => (
          <option key={name} value={name} />
        ))}
      </datalist>
    </p>
  );
}
