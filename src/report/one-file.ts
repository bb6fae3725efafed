/** The sheet as one file that opens anywhere without a network: the page's own viewer with the flight inside. */
import type { DebriefDocument } from "../debrief/document.ts";
import type { FlightSeries } from "../debrief/series.ts";
import { packed, unpacked } from "./packed.ts";

export interface Carried {
  readonly document: DebriefDocument;
  readonly series: FlightSeries;
}

/** Where the viewer's page wants the flight. */
const PLACE = '"%FLIGHT%"';
const TITLE = "%TITLE%";

const asText = (text: string): string =>
  text.replace(/[&<>"]/g, (c) => ({ "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" })[c]!);

/**
 * Puts a debrief into the viewer's page. Nothing in it can end the script that carries it: every `<` is written as an
 * escape of JSON.
 * @throws RangeError where the page has no place for a flight.
 */
export function oneFileHtml(viewer: string, { document, series }: Carried): string {
  const parts = viewer.split(PLACE);
  if (parts.length !== 2) throw new RangeError("invalid viewer: it has no place for a flight");
  const json = JSON.stringify({ document, series: packed(series) }).replaceAll("<", "\\u003c");
  const title = asText(document.brief?.title || document.log.name);
  return [parts[0]!.replace(TITLE, () => title), json, parts[1]!].join("");
}

/** The flight that a one-file page carries, from the text in its place. */
export function carriedFlight(json: string): Carried {
  const { document, series } = JSON.parse(json);
  return { document, series: unpacked(series) as FlightSeries };
}
