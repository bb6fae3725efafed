/** Words for what can be read well but hardly be true; they stand at the top, for all below rests on it. */
import type { DocumentIssue } from "../../debrief/document.ts";
import { count } from "./number.ts";

const side = (degrees: number): string => `${Math.abs(degrees).toFixed(1)}°${degrees < 0 ? "W" : "E"}`;

export const DOUBT_WORDS: Readonly<Record<string, (facts: DocumentIssue["facts"]) => string>> = {
  "brief-place-far": (f) =>
    `${f.ident} lies ${count(Number(f.awayNm))} NM from this flight: is a sign or a digit wrong? ${f.slip ? `Check ${f.slip}; the other way it would lie near.` : "Correct its latitude and longitude."}`,
  "brief-declination-off": (f) =>
    `the declination of ${f.ident} is written as ${side(Number(f.writtenDeg))}, but the variation there is ${side(Number(f.modelDeg))} by ${f.model}. It was used as written; where it is a slip, every magnetic course here is off by ${Math.round(Number(f.offDeg))}°.`,
  "brief-airspeed-off": (f) =>
    `a true airspeed of ${f.tasKt} kt does not fit the flight: its ground speed is mostly ${f.groundSpeedKt} kt, and a wind of over ${f.windKt} kt would have been needed. It was not used; write tas_kt in knots.`,
};
