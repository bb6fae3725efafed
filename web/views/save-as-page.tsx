/** The sheet as one page that opens anywhere: the viewer lies beside this page, the flight is put into it here. */
import { useState } from "preact/hooks";
import { type Carried, fileStem, oneFileHtml } from "../../src/index.ts";
import { noted, useNotes } from "../notes.ts";
import { download } from "./save.tsx";

export function SaveAsPage({ flight }: { flight: Carried }) {
  const [failed, setFailed] = useState(false);
  const notes = useNotes();
  const make = async () => {
    const answer = await fetch("./one-file.html").catch(() => null);
    setFailed(!answer?.ok);
    if (!answer?.ok) return;
    const page = oneFileHtml(await answer.text(), noted(flight, notes));
    download(`${fileStem(flight.document.log.file)}.html`, "text/html", page);
  };
  return (
    <>
      <button type="button" onClick={() => void make()}>
        one page that opens anywhere (HTML)
      </button>
      {failed && (
        <b role="alert">The page could not be made: Hindtrack is no longer running. Start it again. </b>
      )}
    </>
  );
}
