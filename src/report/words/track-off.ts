/** The leading indicator as a sentence: when the track left its line, how long nothing else told, and when it was corrected. */

import type { Finding } from "../../debrief/document.ts";
import { directionFact, type FindingWords, given, num } from "./fact.ts";
import { seconds } from "./measured.ts";
import { capital, clock } from "./number.ts";

type Facts = Finding["facts"];
const at = ({ evidence }: Finding): string => (evidence.fromUtc ? `At ${clock(evidence.fromUtc)} UTC ` : "");

/** What there is to read beside the track: a needle, or a distance. */
interface Read {
  readonly already: string;
  readonly stayed: string;
  readonly never: string;
}
const NEEDLE: Read = {
  already: "The needle stood beyond a quarter by then",
  stayed: "The needle stayed under a quarter",
  never: "The needle never reached a quarter",
};
const DISTANCE: Read = {
  already: "The distance was more than a quarter of a mile off by then",
  stayed: "The distance stayed within a quarter of a mile of the arc",
  never: "The distance never came to a quarter of a mile off the arc",
};

/** `driftS`: the time that was seen of it. */
function silence(
  { quarterReached, silentS, unseenS, driftS }: Facts,
  { already, stayed, never }: Read,
): string {
  if (quarterReached !== true && given(unseenS) !== null)
    return `${stayed} for the ${seconds(driftS)} that were seen`;
  if (quarterReached !== true || given(silentS) === null) return never;
  return Math.round(num(silentS)) === 0 ? already : `${stayed} for ${seconds(silentS)}`;
}

const correction = ({ leadS, unseenS }: Facts): string =>
  given(unseenS) !== null
    ? `then the log is silent for ${seconds(unseenS)}, and when it was corrected is not known`
    : given(leadS) === null
      ? "no correction followed"
      : `the first correction came after ${seconds(leadS)}`;

const offCourse: FindingWords = (facts, finding) =>
  capital(
    `${at(finding)}the track, ${directionFact(facts, "track")}, stood ${Math.round(num(facts.degrees))}° ${facts.side} of the course, ${directionFact(facts, "course")}. ${silence(facts, NEEDLE)}; ${correction(facts)}`,
  );

export const TRACK_OFF_WORDS: Readonly<Record<string, FindingWords>> = {
  "drifted-before-needle": (facts, finding) => `${offCourse(facts, finding)}.`,
  "final-track-off": (facts, finding) =>
    `${offCourse(facts, finding)}, ${Math.abs(num(facts.worstNm)).toFixed(2)} NM ${facts.side} at the farthest.`,
  "arc-track-off": (facts, finding) =>
    capital(
      `${at(finding)}the track stood ${Math.round(num(facts.degrees))}° off the arc’s tangent to the ${facts.side}. ${silence(facts, DISTANCE)}; ${correction(facts)}, ${Math.abs(num(facts.worstNm)).toFixed(2)} NM ${facts.side} at the farthest.`,
    ),
};
