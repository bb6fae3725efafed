/** A wind in words: where from, how much, how sure, and what that rests on. */
import type { DebriefDocument, WindRecord } from "../../debrief/document.ts";
import { windReach } from "../wind-reach.ts";
import { count } from "./number.ts";
import { whatWouldHaveTold, whereNotKnown } from "./wind-known.ts";

const RESTS: Readonly<Record<WindRecord["restsOn"], string>> = {
  measured: "the air data in the log",
  turns: "the turns",
  courses: "different courses flown",
  prior: "the wind that the brief gives",
  nothing: "nothing that fixes it",
};

export const restsOn = (wind: WindRecord): string => RESTS[wind.restsOn];

/** A wind whose 95 % ellipse holds calm: its direction means nothing. */
export const isLight = (wind: WindRecord): boolean => windReach(wind)?.direction === null;

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

/** As in "13 kt from the left": a wind that pushes to the right. */
export const acrossWords = (acrossKt: number): string =>
  `${Math.abs(Math.round(acrossKt))} kt from the ${acrossKt >= 0 ? "left" : "right"}`;

/** As in "At 3,000 ft; 95 % within ± 2.2 by ± 1.7 kt. Rests on the turns." */
export function windDoubt(wind: WindRecord & { altitudeFt: number | null }): string {
  const at = wind.altitudeFt === null ? "" : `At ${count(Math.round(wind.altitudeFt / 100) * 100)} ft; `;
  const ellipse = wind.ellipse95Kt;
  const within = ellipse
    ? `95 % within ± ${ellipse.majorKt.toFixed(1)} by ± ${ellipse.minorKt.toFixed(1)} kt. `
    : "";
  const light = wind.knowledge === "full" && isLight(wind) ? "So light that its direction is not sure. " : "";
  return `${at}${within}${light}Rests on ${restsOn(wind)}.`;
}

/** The wind of the day, what it rests on, where it is not known, and what would have made it known. */
export function windSentence(document: DebriefDocument): string {
  const { wind, log } = document;
  if (!wind) {
    return log.timed
      ? "The wind cannot be told from this log."
      : "The log has no times, so the wind cannot be told from it.";
  }
  const priors = wind.priorsUsed.length > 0 ? ` The brief gave: ${wind.priorsUsed.join("; ")}.` : "";
  if (wind.knowledge !== "full") return `${whatWouldHaveTold(document)}${priors}`;
  const at = wind.altitudeFt === null ? "" : ` at ${count(Math.round(wind.altitudeFt / 100) * 100)} ft`;
  const light = isLight(wind) ? " It is light against its doubt, so its direction is not sure." : "";
  const ellipse = wind.ellipse95Kt;
  const doubt = ellipse ? `, 95 % within ${ellipse.majorKt.toFixed(1)} kt` : "";
  const prior =
    wind.restsOn === "prior" ? " The log alone does not tell it; a full turn would have done so." : "";
  const sentence = `Wind${at} ${lower(windHeadline(wind))}${doubt}; it rests on ${restsOn(wind)}.`;
  return `${sentence}${light}${prior}${whereNotKnown(document)}${priors}`;
}

const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
