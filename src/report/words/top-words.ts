/** Words for what stands at the top, for all below rests on it: what can hardly be true, and what was left out of a brief. */
import type { DocumentIssue } from "../../debrief/document.ts";
import { variationText } from "./compass.ts";
import { count } from "./number.ts";

const counted = (n: number, one: string, many: string): string =>
  n > 0 ? `${n} of its ${n === 1 ? one : many}` : "";

export const TOP_WORDS: Readonly<Record<string, (facts: DocumentIssue["facts"]) => string>> = {
  "brief-place-far": (f) =>
    `${f.ident} lies ${count(Number(f.awayNm))} NM from this flight: is a sign or a digit wrong? ${f.slip ? `Check ${f.slip}; the other way it would lie near.` : "Correct its latitude and longitude."}`,
  "brief-fix-aside": (f) =>
    `${f.ident} lies ${count(Number(f.awayNm))} NM aside of this flight at the nearest, other places of the brief lie on it, and nothing that the brief asks for at ${f.ident} was found: is a digit of its latitude or longitude wrong? It was used as written.`,
  "brief-runway-number-off": (f) =>
    `runway ${f.ident} runs ${f.course} from its threshold to its far end, which its number does not agree with. ${f.exchanged ? "The runway’s ends may be exchanged." : "Its number, its threshold or its far end is wrong."} It was used as written.`,
  "brief-declination-off": (f) =>
    `the declination of ${f.ident} is written as ${variationText(Number(f.writtenDeg))}, but the variation there is ${variationText(Number(f.modelDeg))} by ${f.model}. It was used as written; where it is a slip, every magnetic course here is off by ${Math.round(Number(f.offDeg))}°.`,
  "brief-airspeed-off": (f) =>
    `a true airspeed of ${f.tasKt} kt does not fit the flight: its ground speed is mostly ${count(Number(f.groundSpeedKt))} kt, and a wind of over ${count(Number(f.windKt))} kt would have been needed. It was not used; write tas_kt in knots.`,
  "log-too-fast": (f) =>
    `its ground speed is mostly ${count(Number(f.groundSpeedKt))} kt, and no such aircraft flies over ${f.mostKt} kt: its times or its places are wrong, and so is what follows. Export the log again.`,
  "log-mostly-left-out": (f) =>
    `${count(Number(f.count))} of its ${count(Number(f.points))} points cannot be true and were left out${Number(f.backwards) > Number(f.count) / 2 ? ", most because their times go back: sort the log by time" : ""}. What is left is hardly the flight; export the log again.`,
  "log-height-unit": (f) =>
    typeof f.metFt === "number"
      ? `it gives a height of ${count(Number(f.flownFt))} ft where the brief has ${count(Number(f.briefFt))} ft, as if the units were mixed up; but the ${count(f.metFt)} ft of the brief it meets as it stands. So the ${count(Number(f.briefFt))} ft of the brief may be what stands in the other unit: the brief asks for feet. Nothing was changed, and no height is told or judged here until the two agree.`
      : `it gives a height of ${count(Number(f.flownFt))} ft where the brief has ${count(Number(f.briefFt))} ft: ${f.high ? "its heights seem to be written in feet where metres belong." : "its heights seem to be written in metres where feet belong."} Nothing was changed, and no height is told or judged here. Export the log again with its heights in the unit that its format asks for.`,
  "more-in-archive": (f) =>
    `the archive holds ${Number(f.others) === 1 ? "1 further file that may be a log and was" : `${count(Number(f.others))} further files that may be logs and were`} left out: not read as a log, without times, recorded at the same time as another, or beyond what is looked at in one archive. Unpack it and open each to see its flight.`,
  "brief-left-out": (f) => {
    const parts = [
      Number(f.exercises) > 0
        ? `${Number(f.exercises) === 1 ? "its exercise" : "its exercises"} ${f.which}`
        : "",
      counted(Number(f.fixes), "fix", "fixes"),
      counted(Number(f.winds), "wind", "winds"),
      Number(f.aircraft) > 0 ? "its aircraft, and with it the true airspeed" : "",
    ].filter(Boolean);
    return `left out because of errors: ${parts.join("; ")}. ${Number(f.exercises) > 0 ? "The others follow, numbered anew." : "The rest was used."}`;
  },
  "no-variation": (f) =>
    `${f.exercise}: no magnetic model fits ${f.date ? `the date ${f.date}` : "a log without a date"}, so the course cannot be turned true and was not compared. Give the fix a declination, or write the course true, as in 218T.`,
};
