/** A wind in few words: where from, how much, how sure, and what that rests on. */
import type { WindRecord } from "../src/index.ts";

const RESTS: Readonly<Record<WindRecord["restsOn"], string>> = {
  measured: "the air data in the log",
  turns: "the turns",
  courses: "different courses flown",
  prior: "the wind that the brief gives",
  nothing: "nothing that fixes it",
};

export const restsOn = (wind: WindRecord): string => RESTS[wind.restsOn];

/** As in "From 192° true, 20 kt". */
export function windHeadline(wind: WindRecord): string {
  if (wind.knowledge === "full" && wind.fromTrueDeg !== null && wind.speedKt !== null) {
    const from = String(((Math.round(wind.fromTrueDeg) + 359) % 360) + 1).padStart(3, "0");
    return `From ${from}° true, ${Math.round(wind.speedKt)} kt`;
  }
  if (wind.knowledge === "along" && wind.alongKt !== null)
    return `${alongWords(wind.alongKt)}; across: not known`;
  return "The wind cannot be told from this log";
}

/** As in "13 kt from behind". */
export const alongWords = (alongKt: number): string =>
  `${Math.abs(Math.round(alongKt))} kt ${alongKt >= 0 ? "from behind" : "from ahead"}`;

/** As in "at 3,000 ft; 95 % within ± 2.2 by ± 1.7 kt. Rests on the turns." */
export function windDoubt(wind: WindRecord & { altitudeFt: number | null }): string {
  const at =
    wind.altitudeFt === null
      ? ""
      : `At ${(Math.round(wind.altitudeFt / 100) * 100).toLocaleString("en-GB")} ft; `;
  const ellipse = wind.ellipse95Kt;
  const within = ellipse
    ? `95 % within ± ${ellipse.majorKt.toFixed(1)} by ± ${ellipse.minorKt.toFixed(1)} kt. `
    : "";
  return `${at}${within}Rests on ${restsOn(wind)}.`;
}
