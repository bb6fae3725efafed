/** A course in words: the sentence over the drawing, and the notes beside it. */

import type { CourseFacts, CourseRecord, Finding } from "../../debrief/document.ts";
import type { NauticalMiles } from "../../quantity/units.ts";
import { saysWhy } from "./cause.ts";
import { compassNote, flownHeading } from "./compass.ts";
import { beyondWords, findingSentence, unseenTail } from "./finding.ts";
import { heightReachedNote } from "./height-reached.ts";
import { HEIGHT_UNIT } from "./height-unit.ts";
import { needleSize, seconds } from "./measured.ts";
import {
  capital,
  clock,
  clockSeconds,
  degreesDoubt,
  degreesToSide,
  offCourse,
  plain,
  plusMinus,
} from "./number.ts";
import { partNote } from "./part.ts";
import { PRESSURE_HEIGHTS } from "./pressure-heights.ts";
import { acrossWords, restsOn } from "./wind.ts";

const REASONS: Readonly<Record<string, string>> = {
  "no-times": "the log has no times",
  "wind-not-known": "the wind here is not known from this log",
  "wind-along-only": "only the wind along this course is known, not the wind across it",
  "height-is-pressure": PRESSURE_HEIGHTS,
  "no-height": "the log has no heights",
  "height-unit": HEIGHT_UNIT,
  "all-near-station": "all of it was flown within a mile of the station",
};

/** One or two plain sentences: the most telling finding, and what it came to. */
export function courseSentence(exercise: CourseRecord, facts: CourseFacts): string {
  const { findings } = exercise;
  const lead = findings[0];
  if (!lead) return `Farthest ${offCourse(facts.crossTrack.maxNm)}.${partly(facts)}`;
  const stayed =
    lead.code === "chased"
      ? ` It ${Math.abs(facts.needle.max) > 1 ? "went to" : "stayed within"} ${needleSize(facts.needle.max)}.`
      : "";
  return `${findingSentence(lead, exercise)}${stayed}${leftOut(facts)}${partly(facts)}`;
}

/** As in " The 2 min 10 s before it was joined, at 09:16:02 UTC, are not judged."; with how far off it was flown along meanwhile. Empty where little was left out. */
function leftOut({ beforeJoining: before, judged, intercept }: CourseFacts): string {
  if (!before) return "";
  const { drifted, strayed } = before;
  const joinedUtc = intercept?.joinedUtc ?? (judged.begins === "established" ? judged.fromUtc : null);
  const when = joinedUtc ? `, at ${clockSeconds(joinedUtc)} UTC,` : "";
  const off = drifted
    ? `; in them it went from within half scale to ${offCourse(drifted.crossTrackNm)}, ${needleSize(drifted.needle)}`
    : strayed && `; in them it was flown along the course up to ${offCourse(strayed.crossTrackNm)}`;
  return ` The ${seconds(before.seconds)} before it was joined${when} are not judged${off ?? ""}.`;
}

const partly = ({ part, judged, form, fix, fromFix }: CourseFacts): string =>
  partNote(part, judged.distanceNm, (form === "leg" ? fromFix : fix) ?? "its beginning", fix ?? "its end");

function cost({ findings: [lead] }: CourseRecord, facts: CourseFacts): string {
  const { crossTrack, needle } = facts;
  const { unseen } = crossTrack;
  const tail =
    unseen && lead?.code !== "tracked-within"
      ? unseenTail({
          unseenNm: unseen.most,
          unseenNeedle: needle.unseen?.most ?? null,
          unseenS: unseen.seconds,
        })
      : "";
  const when = facts.crossTrack.maxUtc ? ` at ${clock(facts.crossTrack.maxUtc)} UTC` : "";
  const beyond = beyondWords(facts.needle, facts.judged.shareOf);
  const doubt = ` (${plusMinus(facts.crossTrack.doubt95Nm, 2, " NM")}${unseen ? " at the points of the log" : ""})`;
  return `${joinedOff(facts) ? "Once established, farthest" : "Farthest"} ${offCourse(facts.crossTrack.maxNm)}${doubt}${when}; needle at most ${needleSize(facts.needle.max)}${beyond ? `, ${beyond}` : ", never beyond a quarter"}.${tail}`;
}

/** Two distances that contradict each other to a reader. Chosen: hundredths are told. */
const CLEARLY: NauticalMiles = 0.05;
/** The turn onto the course ended, or went past it, farther off than the aircraft ever was once established. */
function joinedOff({ intercept, joining, crossTrack }: CourseFacts): boolean {
  const off = Math.max(intercept?.overshootNm ?? 0, Math.abs(joining?.crossTrackNm ?? 0));
  return off - Math.abs(crossTrack.maxNm) >= CLEARLY;
}

function remedy({ whatWouldHaveWorked: w }: CourseRecord, { variation }: CourseFacts): string | null {
  if (!w) return null;
  const heading = flownHeading(w.headingTrueDeg, variation);
  const correction =
    Math.round(w.windCorrectionDeg) === 0
      ? "no wind correction"
      : `${degreesToSide(w.windCorrectionDeg)} into the wind`;
  const hold = `Heading ${heading}, ${correction} ${degreesDoubt(w.doubt95Deg)}, holds this course.${compassNote(variation)}`;
  if (!w.rejoin) return hold;
  const side = w.rejoin.cutDeg > 0 ? "right" : "left";
  return `${hold} From the worst point, ${clock(w.rejoin.fromUtc)} UTC, a track ${Math.abs(Math.round(w.rejoin.cutDeg))}° to the ${side} of the course rejoins in ${w.rejoin.distanceNm.toFixed(1)} NM.`;
}

function windNote(facts: CourseFacts): string | null {
  const { wind } = facts;
  if (wind?.knowledge !== "full" || wind.acrossKt === null) return null;
  const doubt = wind.across95Kt === null ? "" : ` (± ${wind.across95Kt.toFixed(1)} kt)`;
  return `${restsOn(wind)}: across this course ${acrossWords(wind.acrossKt)}${doubt}.`;
}

/** Only what matters for this course: one line a reason. */
function untold(facts: CourseFacts): string | null {
  const reasons = [...new Set(facts.cannotTell.map(({ reason }) => reason))];
  if (reasons.length === 0) return null;
  return `${capital(reasons.map((r) => REASONS[r] ?? plain(r)).join("; "))}.`;
}

/** The finding that says why, where the first one does not; of a needle that was chased no turn and no drift does. */
export const courseCause = ({ findings }: CourseRecord): Finding | undefined =>
  findings[0]?.code === "chased" ? undefined : findings.slice(1).find(saysWhy);

/** The notes beside the drawing, in reading order; null where there is nothing to say. */
export function courseNotes(exercise: CourseRecord, facts: CourseFacts): [string, string | null][] {
  const { source } = exercise;
  const cause = courseCause(exercise);
  return [
    ["Why.", cause ? findingSentence(cause, exercise) : null],
    ["What it came to.", source === "fitted" ? null : cost(exercise, facts)],
    ["What would have worked.", source === "fitted" ? null : remedy(exercise, facts)],
    ["The wind rests on", windNote(facts)],
    ["Height.", heightReachedNote(facts.altitude)],
    ["What cannot be told.", untold(facts)],
  ];
}
