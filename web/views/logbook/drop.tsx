/** Where files are dropped or chosen. */
import { useRef } from "preact/hooks";
import { dropOnSheet } from "../../dropping.ts";
import { ToSamples } from "./samples.tsx";

/** The button that opens the system's own choice of files. */
function ChooseFiles({ words }: { words: string }) {
  const input = useRef<HTMLInputElement>(null);
  const chosen = () => {
    void dropOnSheet([...(input.current?.files ?? [])]);
    if (input.current) input.current.value = "";
  };
  return (
    <>
      <input
        ref={input}
        class="vh"
        type="file"
        multiple
        onChange={chosen}
        tabIndex={-1}
        aria-label="Logs and briefs"
      />
      <button class="btn" type="button" onClick={() => input.current?.click()}>
        {words}
      </button>
    </>
  );
}

/** The large place for the first file. */
export function FirstDrop() {
  return (
    <div class="drop">
      <h2>Drop a track log here</h2>
      <p>
        GPX, KML, KMZ, IGC or CSV, as GPS receivers write them; the brief of the lesson too, in YAML or JSON,
        if there is one. The sheet stands a few seconds later. Logs of many flights, or a logbook saved as a
        file, can be dropped together.
      </p>
      <ChooseFiles words="Choose files" />
    </div>
  );
}

/** The small place above the list. */
export function MoreDrop() {
  return (
    <div class="drop more">
      <p>
        Drop logs here, as many as you like, with their briefs. A brief goes with the log of its own name; one
        brief alone goes with all. <ToSamples />
      </p>
      <ChooseFiles words="Choose files" />
    </div>
  );
}
