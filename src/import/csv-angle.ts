/** Latitudes and longitudes as tables write them: decimal degrees, hemispheres, degrees with minutes and seconds. */
import { readDecimal } from "./decimal.ts";

/** "35 36.5", "35°36'30\"", "035:36:30" after the hemisphere and sign are off. */
const PARTS =
  /^(\d{1,3})[°º:\s-]+\s*(\d{1,2}(?:\.\d+)?)(?:[′'’m:\s]+(\d{1,2}(?:\.\d+)?)\s*[″"”s]?[′'’]{0,2})?[′'’m:\s]*$/;

/** "3536.0000" or "17218.0000" beside its hemisphere: degrees and minutes in one (NMEA 0183, GGA, from memory). */
const RUN_TOGETHER = /^(\d{2,3})(\d{2}\.\d+)$/;

/** Degrees, north and east positive; NaN where the text is no angle. A comma is a decimal comma: no field holds another. */
export function readAngle(text: string): number {
  const plain = text.includes(",") ? text.replace(",", ".") : text;
  const value = readDecimal(plain);
  if (!Number.isNaN(value)) return value;
  const sides = /^([NSEW])?\s*([-+]?)(.*?)\s*([NSEW])?$/i.exec(plain.trim());
  if (sides === null || (sides[1] && sides[4])) return Number.NaN;
  const side = (sides[1] ?? sides[4] ?? "").toUpperCase();
  if (sides[2] && side) return Number.NaN; // two signs
  const sign = side === "S" || side === "W" || sides[2] === "-" ? -1 : 1;
  const size = sides[3]!.replace(/[°º]$/, "").trim();
  const together = side ? RUN_TOGETHER.exec(size) : null;
  if (together !== null && Number(together[2]) < 60)
    return sign * (Number(together[1]) + Number(together[2]) / 60);
  const degrees = readDecimal(size);
  if (degrees >= 0) return sign * degrees;
  const parts = PARTS.exec(size);
  if (parts === null) return Number.NaN;
  const [minutes, seconds] = [Number(parts[2]), Number(parts[3] ?? 0)];
  return minutes < 60 && seconds < 60
    ? sign * (Number(parts[1]) + minutes / 60 + seconds / 3600)
    : Number.NaN;
}
