/** Names that came from files, made safe to show on a line and to save under; what they say stays readable. */

/** Control characters would break the line, and marks that turn the direction of writing its order. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is taken out
const CONTROL = /[\u0000-\u001f\u007f-\u009f\u061c\u200b-\u200f\u2028-\u202e\u2066-\u2069\ufeff]+/g;
/** What a file system takes for a path, a drive, a pattern or a stream (common practice, no source). */
const NOT_IN_NAMES = /[\\/:*?"<>|]+/g;
/** Longer names push all else off the page. Own choice. */
const LONGEST_SHOWN = 120;
/** Characters, so that with an ending it stays under the 255 bytes of common file systems, at up to three bytes each. */
const LONGEST_SAVED = 70;

/** Text from a file on one line, its order of writing untouched by what is in it. */
export const onOneLine = (text: string, longest: number): string => {
  const line = text.replace(CONTROL, " ");
  return line.length > longest ? `${line.slice(0, longest)}…` : line;
};

/** A name from a file, as it is shown: its end is kept, for the ending tells what it is. */
export function shownName(name: string): string {
  const line = onOneLine(name, Number.POSITIVE_INFINITY).trim();
  const half = LONGEST_SHOWN / 2;
  return line.length > LONGEST_SHOWN ? `${line.slice(0, half)}…${line.slice(-half)}` : line;
}

/** What files made of this one are named: its name without folders, ending and signs that no file system likes. */
export function fileStem(name: string): string {
  const last = name.split(/[\\/]/).at(-1) ?? "";
  const plain = last
    .replace(/\.[^.]*$/, "")
    .replace(CONTROL, " ")
    .replace(NOT_IN_NAMES, "_")
    .replace(/\s+/g, " ")
    .replace(/^[. ]+|[. ]+$/g, "");
  return plain.slice(0, LONGEST_SAVED).trim() || "flight";
}
