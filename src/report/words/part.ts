/** In words that a part of what was asked is not among what is judged: how many miles, at which end, and why. */
import type { CourseFacts } from "../../debrief/document.ts";
import { capital } from "./number.ts";

type Part = NonNullable<CourseFacts["part"]>;
const miles = (nm: number): string => `${nm.toFixed(1)} NM`;

/**
 * As in " The log ends in flight 9.0 NM before KESTI: 3.0 NM of 12.0 NM are judged."; empty where the whole is judged.
 * `from` and `to` name its ends.
 */
export function partNote(part: Part | undefined, distanceNm: number, from: string, to: string): string {
  if (!part) return "";
  const { before, after } = part;
  const begins =
    before &&
    `${before.why === "log-begins" ? "the log begins in flight" : "it was joined"} ${miles(before.nm)} after ${from}`;
  const ends =
    after &&
    `${after.why === "log-ends" ? "the log ends in flight" : "it was left"} ${miles(after.nm)} before ${to}`;
  const told = [begins, ends].filter((words) => words !== null).join(", and ");
  return ` ${capital(told)}:${judgedNote(part, distanceNm)}`;
}

/** As in " 3.0 NM of 12.0 NM are judged.": where the end of it is told already. */
export function judgedNote({ ofNm }: Part, distanceNm: number): string {
  const judged = miles(distanceNm);
  return ofNm === null ? ` ${judged} of it are judged.` : ` ${judged} of ${miles(ofNm)} are judged.`;
}
