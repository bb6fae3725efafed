/** Whether a file is a list of points: a table of them, or XML that names places and holds no recorded flight. */
import { BEGINNING_BYTES, isPointList } from "./sorting.ts";

/** As GPX 1.1 and KML 2.2 name them, with or without a prefix: single places, and what makes a file a log. */
const PLACE = /<(?:[\w.-]+:)?(?:wpt|Point)\b/;
const RECORDED = /<(?:[\w.-]+:)?(?:trkpt|Track|coord|LineString)\b/;
/** Longer than any of these tags with its prefix: a tag may lie over the border of two pieces. */
const TAG_CHARACTERS = 64;

/** Reads on only until a recorded flight begins, which in a log is soon. */
async function isPlacesOnly(file: Blob): Promise<boolean> {
  const decoder = new TextDecoder();
  let [rest, hasPlace] = ["", false];
  for (const reader = file.stream().getReader(); ; ) {
    const { value, done } = await reader.read();
    const text = rest + (value ? decoder.decode(value, { stream: true }) : "");
    if (RECORDED.test(text)) {
      await reader.cancel();
      return false;
    }
    hasPlace ||= PLACE.test(text);
    if (done) return hasPlace;
    rest = text.slice(-TAG_CHARACTERS);
  }
}

export async function isPointFile(file: Blob): Promise<boolean> {
  const beginning = await file.slice(0, BEGINNING_BYTES).text();
  const isXml = beginning
    .replace(/^\uFEFF/, "")
    .trimStart()
    .startsWith("<");
  return isXml ? isPlacesOnly(file) : isPointList(beginning);
}
