/** Rows of a truth table: a comma file whose comment lines begin with #. */
import { readFileSync } from "node:fs";

export function truthRows(name: string): string[][] {
  const text = readFileSync(new URL(`../truth/${name}`, import.meta.url), "utf8");
  return text
    .split(/\r?\n/)
    .filter((line) => line.trim() !== "" && !line.startsWith("#"))
    .map((line) => line.split(",").map((cell) => cell.trim()));
}

/** Degrees from text such as 40:10:24.50000N; anything else is an error, so that no row is misread. */
export function dms(text: string): number {
  const m = /^(\d+):(\d+):([\d.]+)([NSEW])$/.exec(text);
  if (!m) throw new Error(`not degrees, minutes, seconds: ${text}`);
  const degrees = Number(m[1]) + Number(m[2]) / 60 + Number(m[3]) / 3600;
  return m[4] === "S" || m[4] === "W" ? -degrees : degrees;
}
