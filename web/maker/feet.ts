/** Heights as they are typed: "4500", and in thousands parted as any country parts them, "4,500", "4.500", "4'500", "4 500". */
import { count } from "../../src/index.ts";

const PARTED = /^([-+]?[1-9]\d{0,2})((?:[.,'’‘´\s]\d{3})+)$/;
const UNIT = /\s*(?:ft|feet|['′])(?:\s*a?msl)?\.?$/i;
const WHOLE = /^[-+]?\d+$/;
const DECIMAL = /^[-+]?\d+[.,]\d+$/;

/** Without its parting signs; what has none stays as it is. */
function joined(text: string): string {
  const [, first, rest] = PARTED.exec(text) ?? [];
  return first === undefined || rest === undefined ? text : first + rest.replace(/\D/g, "");
}

/** The number of feet in words; the text itself where it is none. */
export const plainFeet = (text: string): string => joined(text.trim().replace(UNIT, ""));

/** A height that is flown, in whole feet; null where the text is none: "4.5" is not known to be thousands. */
export function typedHeight(text: string): number | null {
  const plain = plainFeet(text);
  return WHOLE.test(plain) ? Number(plain) : null;
}

/** What is wrong with a height that is flown, in words: nobody flies to a tenth of a foot, so another number is meant. */
export function heightComplaint(text: string): string | null {
  const plain = plainFeet(text);
  return DECIMAL.test(plain) ? `${plain} ft? Write whole feet, as in 4500.` : null;
}

/** What feet come to that were not typed in figures alone, as in "4,500 ft"; null where there is nothing to add. */
export function feetNote(text: string): string | null {
  const plain = plainFeet(text).replace(",", ".");
  if (WHOLE.test(text.trim()) || !Number.isFinite(Number(plain))) return null;
  return Number.isInteger(Number(plain)) ? `${count(Number(plain))} ft` : `${plain} ft`;
}
