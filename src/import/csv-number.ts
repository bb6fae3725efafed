/** Numbers of a table: a decimal comma where the fields are parted otherwise or quoted, and marks between thousands. */
import { readDecimal } from "./decimal.ts";

/** "3,000" or "12,345.6" */
const COMMA_THOUSANDS = /^[-+]?\d{1,3}(?:,\d{3})+(?:\.\d+)?$/;
/** "3.000,5" */
const POINT_THOUSANDS = /^[-+]?\d{1,3}(?:\.\d{3})+,\d+$/;

/** `commaIsDecimal` where fields are not parted by commas: "3,000" is three then, else three thousand. */
export function readTableNumber(text: string, commaIsDecimal: boolean): number {
  if (!text.includes(",")) return readDecimal(text);
  if (!commaIsDecimal && COMMA_THOUSANDS.test(text)) return readDecimal(text.replaceAll(",", ""));
  if (POINT_THOUSANDS.test(text)) return readDecimal(text.replaceAll(".", "").replace(",", "."));
  return readDecimal(text.replace(",", "."));
}
