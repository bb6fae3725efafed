/** The sheet as files, and on paper. */
import type { ComponentChildren } from "preact";

import {
  type Carried,
  debriefGeoJson,
  exercisesCsv,
  fileStem,
  legsCsv,
  pointsCsv,
  verdictsCsv,
} from "../../src/index.ts";
import { noted, useNotes } from "../notes.ts";

export function downloadBlob(name: string, blob: Blob): void {
  const address = URL.createObjectURL(blob);
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  link.click();
  // The browser reads the blob after the click has been handled.
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

export const download = (name: string, type: string, text: string): void =>
  downloadBlob(name, new Blob([text], { type }));

interface Props {
  readonly flight: Carried;
  /** Ways to save that stand before these. */
  readonly more?: ComponentChildren;
}

export function Save({ flight, more }: Props) {
  const name = fileStem(flight.document.log.file);
  const notes = useNotes();
  const json = () =>
    download(
      `${name}.debrief.json`,
      "application/json",
      JSON.stringify(noted(flight, notes).document, null, 2),
    );
  const csv = (what: string, text: string) => download(`${name}.${what}.csv`, "text/csv", text);
  const map = () =>
    download(
      `${name}.geojson`,
      "application/geo+json",
      JSON.stringify(debriefGeoJson(flight.document, flight.series)),
    );
  return (
    <p class="fine save screen">
      Save as {more}
      <button type="button" onClick={json}>
        document (JSON)
      </button>
      <button type="button" onClick={() => csv("exercises", exercisesCsv(noted(flight, notes).document))}>
        exercises (CSV)
      </button>
      <button type="button" onClick={() => csv("verdicts", verdictsCsv(noted(flight, notes).document))}>
        verdicts (CSV)
      </button>
      <button type="button" onClick={() => csv("legs", legsCsv(flight.document))}>
        legs and wind (CSV)
      </button>
      <button type="button" onClick={() => csv("points", pointsCsv(flight.document, flight.series))}>
        points (CSV)
      </button>
      <button type="button" onClick={map}>
        map (GeoJSON)
      </button>
      <button type="button" onClick={() => print()}>
        Print
      </button>
    </p>
  );
}
