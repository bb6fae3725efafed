/** A wind in words: where from, how much, how sure, and what that rests on. */
import type { DebriefDocument, WindRecord } from "../../debrief/document.ts";
import { threeFigures } from "../../quantity/angle.ts";
import { windReach } from "../wind-reach.ts";
import { heightWords, trueDirection } from "./number.ts";
import { whatWouldHaveTold, whereNotKnown } from "./wind-known.ts";

const RESTS: Readonly<Record<WindRecord["restsOn"], string>> = {
  measured: "the air data in the log",
  turns: "the turns",
  courses: "different courses flown",
  prior: "what the brief says beforehand",
  nothing: "nothing that fixes it",
};

export const restsOn = (wind: WindRecord): string => RESTS[wind.restsOn];

type FullWind = WindRecord & { readonly fromTrueDeg: number; readonly speedKt: number };

/** A wind with a direction and a speed. */
export const isFull = (wind: WindRecord): wind is FullWind =>
  wind.knowledge === "full" && wind.fromTrueDeg !== null && wind.speedKt !== null;

/** A wind whose 95 % ellipse holds calm: its direction means nothing. */
export const isLight = (wind: WindRecord): boolean => windReach(wind)?.direction === null;

/** Rounded to nothing: it has no direction that a reader could use. */
const isCalm = (kt: number): boolean => Math.round(Math.abs(kt)) === 0;

/** As in "From 192° true, 20 kt"; "Calm, under 1 kt". */
export function windHeadline(wind: WindRecord): string {
  if (isFull(wind)) {
    if (isCalm(wind.speedKt)) return "Calm, under 1 kt";
    return `From ${threeFigures(wind.fromTrueDeg)}° true, ${Math.round(wind.speedKt)} kt`;
  }
  if (wind.knowledge === "along" && wind.alongKt !== null)
    return `${alongWords(wind.alongKt)}; across: not known`;
  return "The wind cannot be told from this log";
}

/** As in "13 kt from behind". */
export const alongWords = (alongKt: number): string =>
  isCalm(alongKt)
    ? "under 1 kt from ahead or behind"
    : `${Math.abs(Math.round(alongKt))} kt ${alongKt >= 0 ? "from behind" : "from ahead"}`;

/** As in "13 kt from the left": a wind that pushes to the right. */
export const acrossWords = (acrossKt: number): string =>
  isCalm(acrossKt)
    ? "under 1 kt from either side"
    : `${Math.abs(Math.round(acrossKt))} kt from the ${acrossKt >= 0 ? "left" : "right"}`;

/** The wind as the name of its arrow: "wind from 192° true, 20 kt". */
export function windName(wind: WindRecord): string {
  if (isFull(wind)) return `wind ${lower(windHeadline(wind))}`;
  if (wind.knowledge === "along" && wind.alongKt !== null)
    return `wind along the track only, ${alongWords(wind.alongKt)}`;
  return "wind not known";
}

/** Short enough to stand under an arrow: "192°T 20 kt". */
export function windLabel(wind: WindRecord): string {
  if (isFull(wind))
    return isCalm(wind.speedKt)
      ? "calm"
      : `${trueDirection(wind.fromTrueDeg)} ${Math.round(wind.speedKt)} kt`;
  if (wind.knowledge === "along" && wind.alongKt !== null)
    return alongWords(wind.alongKt).replace("from ", "");
  return "not known";
}

/** As in "At 3,000 ft; 95 % within an oval of ± 2.2 by ± 1.7 kt. Rests on the turns." */
export function windDoubt(wind: WindRecord & { altitudeFt: number | null }): string {
  const at = wind.altitudeFt === null ? "" : `At ${heightWords(wind.altitudeFt)}; `;
  const ellipse = wind.ellipse95Kt;
  const within = ellipse
    ? `95 % within an oval of ± ${ellipse.majorKt.toFixed(1)} by ± ${ellipse.minorKt.toFixed(1)} kt. `
    : "";
  const light = wind.knowledge === "full" && isLight(wind) ? "So light that its direction is not sure. " : "";
  const rests = wind.restsOn === "nothing" ? "Nothing flown fixes it." : `Rests on ${restsOn(wind)}.`;
  return `${at}${within}${light}${rests}`;
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
  const at = wind.altitudeFt === null ? "" : ` at ${heightWords(wind.altitudeFt)}`;
  const light =
    isLight(wind) && !isCalm(wind.speedKt ?? 0)
      ? " It is light against its doubt, so its direction is not sure."
      : "";
  const ellipse = wind.ellipse95Kt;
  const doubt = ellipse ? `, 95 % within ${ellipse.majorKt.toFixed(1)} kt` : "";
  const prior =
    wind.restsOn === "prior" ? " The log alone does not tell it; a full turn would have done so." : "";
  const sentence = `Wind${at} ${lower(windHeadline(wind))}${doubt}; it rests on ${restsOn(wind)}.`;
  return `${sentence}${light}${prior}${whereNotKnown(document)}${priors}`;
}

const lower = (text: string): string => text.charAt(0).toLowerCase() + text.slice(1);
