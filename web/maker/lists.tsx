/** The lists of points that this browser keeps: added from files, and taken away. */
import { useRef } from "preact/hooks";
import { addLists, counted, lists, listWords, removeList } from "./points.ts";

export function Lists() {
  const input = useRef<HTMLInputElement>(null);
  const chosen = () => {
    void addLists([...(input.current?.files ?? [])]);
    if (input.current) input.current.value = "";
  };
  return (
    <div class="fine save">
      <input
        ref={input}
        class="vh"
        type="file"
        multiple
        tabIndex={-1}
        aria-label="Lists of points"
        onChange={chosen}
      />
      <p>
        <button type="button" onClick={() => input.current?.click()}>
          Add a list of points
        </button>
        A table (ident, lat, lon; perhaps kind, elevation, declination, end lat, end lon), GPX or KML. It
        stays in this browser.
      </p>
      <ul aria-label="Lists in this browser">
        {lists.value.map((list) => (
          <li key={list.name}>
            {list.name}: {counted(list)}.{" "}
            <button
              type="button"
              onClick={() => void removeList(list.name)}
              aria-label={`Remove the list ${list.name}`}
            >
              Remove
            </button>
          </li>
        ))}
      </ul>
      <div role="status">
        {listWords.value.map((sentence) => (
          <p key={sentence}>{sentence}</p>
        ))}
      </div>
    </div>
  );
}
