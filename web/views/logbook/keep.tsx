/** The whole logbook as one file, and how much room it takes. */
import { useEffect, useState } from "preact/hooks";
import { packedLogbook } from "../../archiving.ts";
import { rows } from "../../logbook.ts";
import { downloadBlob } from "../save.tsx";

const MEGABYTE = 1_000_000;

function useRoom(): string {
  const [words, setWords] = useState("");
  const known = rows.value;
  useEffect(() => {
    void navigator.storage?.estimate?.().then(({ usage = 0, quota = 0 }) => {
      const [used, all] = [usage, quota].map((bytes) => Math.round(bytes / MEGABYTE).toLocaleString("en-GB"));
      setWords(`It takes ${used} MB of the ${all} MB that this browser gives.`);
    });
  }, [known]);
  return words;
}

/** Whether the browser has promised not to clear the logbook by itself; null where it cannot say. */
function usePromise(): readonly [promised: boolean | null, ask: () => void] {
  const [promised, setPromised] = useState<boolean | null>(null);
  useEffect(() => {
    void navigator.storage?.persisted?.().then(setPromised);
  }, []);
  return [promised, () => void navigator.storage.persist().then(setPromised)];
}

export function Keep() {
  const room = useRoom();
  const [promised, ask] = usePromise();
  const save = async () => {
    const archive = await packedLogbook();
    if (archive) downloadBlob(`hindtrack-logbook-${new Date().toISOString().slice(0, 10)}.zip`, archive);
  };
  return (
    <section class="keep" aria-labelledby="keep-title">
      <h2 id="keep-title">Keep it safe</h2>
      <p>
        The logbook lives in this browser alone. Saved as one file, with every log, brief, remark and debrief,
        it can be put away, or dropped on Hindtrack in another browser or on another machine.{" "}
        <button type="button" onClick={() => void save()}>
          Save the logbook as one file
        </button>
      </p>
      <p class="fine">
        {room}{" "}
        {promised
          ? "This browser has promised not to clear it by itself."
          : "Browsers may clear what is stored when the disk is short of room."}{" "}
        {promised === false && (
          <button type="button" onClick={ask}>
            Ask this one not to
          </button>
        )}
      </p>
    </section>
  );
}
