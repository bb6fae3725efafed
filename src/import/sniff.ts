/** Tells the format by the content; the file's ending proves nothing. */
import { tableRows } from "./csv-beginning.ts";

/** What a file's first bytes look like. `text` and `binary` are not a log that can be read. */
export type Look = "empty" | "web-page" | "xml" | "zip" | "gzip" | "igc" | "csv" | "text" | "binary";

/** So many bytes are looked at: some lines of any text format. */
export const SNIFF_BYTES = 2048;

/**
 * The look of a file from its first bytes and the same decoded. XML begins with `<` (after spaces); FAI IGC with
 * an A record and has B or H records; a table has a line with a delimiter
 * and "lat" in it (or with a delimiter, where the caller has `named` the columns), or rows of numbers; a control character that no
 * text format has makes it binary.
 */
export function lookOf(head: Uint8Array, text: string, named = false): Look {
  if (head[0] === 0x50 && head[1] === 0x4b && (head[2] === 3 || head[2] === 5)) return "zip";
  if (head[0] === 0x1f && head[1] === 0x8b) return "gzip";
  const trimmed = text.trimStart();
  if (trimmed === "") return "empty";
  if (/^<(?:!doctype\s+html|html)\b/i.test(trimmed)) return "web-page"; // a sign-in page saved under the log's name
  if (trimmed[0] === "<") return "xml";
  if (trimmed[0] === "{" || trimmed[0] === "[") return "text";
  // Zeros that a power cut left at the end, or an old system's end-of-file mark, make no log binary.
  // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what is looked for
  if (/[\u0000-\u0008\u000e-\u001f]/.test(trimmed.replace(/[\u0000\u001a]+$/, ""))) return "binary";
  if (/^[A-Z]/.test(trimmed) && /^(?:B\d{6}\d{7}[NS]\d{8}[EW]|HF?[A-Z]?DTE)/m.test(trimmed)) return "igc";
  const lines = trimmed.split(/[\r\n]+/);
  const table = lines.some((line) => /[,;\t|]/.test(line) && (named || /lat/i.test(line)));
  return table || tableRows(lines) !== null ? "csv" : "text";
}
