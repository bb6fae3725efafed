/** Where a wind is not known, what the aircraft did there, and what manoeuvre would have made it known. */

import type { DebriefDocument, DocumentLeg } from "../../debrief/document.ts";
import { cosDeg } from "../../quantity/angle.ts";
import { tooSparseForWind } from "./log-cautions.ts";
import { clock, count, secondsBetween, trueDirection } from "./number.ts";

/** Shorter stretches without a wind are not worth a sentence, s. Own choice. */
const LEAST_S = 120;
/** A straight counts as a course from here on, s: as in the table of the straights. */
const COURSE_S = 60;
/** Courses within this of one line, or of its reverse, show the wind along that line alone. Own choice, degrees. */
const ONE_LINE_DEG = 25;
/** Turned through this much, an aircraft has flown about a full turn, degrees. */
const FULL_TURN_DEG = 300;
/** From here on a turn is not level, ft/min. Own choice. */
const LEVEL_FPM = 300;

/** After a wind of the day: the longest stretch without one. Empty where all else is known. */
export function whereNotKnown(document: DebriefDocument): string {
  const longest = stretches(document.legs).sort((a, b) => seconds(b) - seconds(a))[0];
  if (!longest || seconds(longest) < LEAST_S) return "";
  const [from, to] = [longest[0]!.startUtc, longest.at(-1)!.endUtc];
  const along = longest.filter((leg) => leg.wind.knowledge === "along").length;
  const known =
    along === longest.length
      ? "only the part along the track is known"
      : along === 0
        ? "it is not known"
        : "at most the part along the track is known";
  const why = tooSparseForWind(document.log) || `${flown(longest)}. ${manoeuvre(document, longest)}`;
  return ` From ${clock(from)} to ${clock(to)} ${known}: ${why}`;
}

/** Where there is no wind of the day to give. */
export function whatWouldHaveTold(document: DebriefDocument): string {
  const { legs } = document;
  const sparse = tooSparseForWind(document.log);
  if (sparse) return `The direction of the wind cannot be told from this log: ${sparse}`;
  if (legs.length === 0) return "The wind cannot be told from this log.";
  return `The direction of the wind cannot be told from this log: ${flown(legs)}. ${manoeuvre(document, legs)}`;
}

/** What was flown, and why it does not tell. */
function flown(legs: readonly DocumentLeg[]): string {
  const turn = biggestTurn(legs);
  if (turn) {
    const { verticalFpm } = turn;
    const steady = verticalFpm === null || Math.abs(verticalFpm) < LEVEL_FPM;
    const how = steady
      ? ""
      : `, ${verticalFpm < 0 ? "descending" : "climbing"} ${count(Math.round(Math.abs(verticalFpm) / 100) * 100)} ft a minute,`;
    return `the turn through ${count(Math.abs(turn.turnDeg))}° at ${clock(turn.startUtc)}${how} leaves too much doubt`;
  }
  const courses = coursesOf(legs);
  const line = courses[0]?.trackTrueDeg;
  if (line === undefined) return "its legs are too short and its turns too small to tell it";
  if (courses.every((leg) => offLine(leg.trackTrueDeg, line) <= ONE_LINE_DEG)) {
    const reverse = courses.some((leg) => cosDeg(leg.trackTrueDeg - line) < 0);
    const where = `${reverse ? "courses" : "one course"} near ${trueDirection(line)}${reverse ? " and its reverse" : ""}`;
    return `${where} ${reverse ? "show" : "shows"} at most what helps or hinders along ${reverse ? "them" : "it"}`;
  }
  return "the courses flown and the turns between them leave too much doubt";
}

/**
 * Three unknowns, two of the wind and the airspeed, ask for a turn or for three courses; where the brief gives the
 * airspeed, two courses do. Gray, "Using GPS to accurately establish true airspeed", 1998, for the three legs.
 */
function manoeuvre({ brief }: DebriefDocument, legs: readonly DocumentLeg[]): string {
  if (biggestTurn(legs)) return "A full turn at one height and one airspeed would have made it known.";
  const courses = brief?.aircraft
    ? "a minute on a second course 60 to 90° off the first at the airspeed of the brief"
    : "a minute each on three courses 60° and more apart at one airspeed";
  return `A full turn, or ${courses}, would have made it known.`;
}

const isKnown = (leg: DocumentLeg): boolean => leg.wind.knowledge === "full";

/** Legs in a row without a wind. */
function stretches(legs: readonly DocumentLeg[]): DocumentLeg[][] {
  const found: DocumentLeg[][] = [];
  legs.forEach((leg, i) => {
    if (isKnown(leg)) return;
    const last = found.at(-1);
    if (last && i > 0 && !isKnown(legs[i - 1]!)) last.push(leg);
    else found.push([leg]);
  });
  return found;
}

const seconds = (legs: readonly DocumentLeg[]): number =>
  secondsBetween(legs[0]!.startUtc, legs.at(-1)!.endUtc);

const coursesOf = (legs: readonly DocumentLeg[]): DocumentLeg[] =>
  legs.filter((leg) => leg.kind === "straight" && secondsBetween(leg.startUtc, leg.endUtc) >= COURSE_S);

const biggestTurn = (legs: readonly DocumentLeg[]): DocumentLeg | null =>
  legs
    .filter((leg) => leg.kind === "turn" && Math.abs(leg.turnDeg) >= FULL_TURN_DEG)
    .sort((a, b) => Math.abs(b.turnDeg) - Math.abs(a.turnDeg))[0] ?? null;

/** Degrees between a direction and a line, which has no sense: 0 to 90. */
function offLine(degrees: number, line: number): number {
  const turn = (((degrees - line) % 180) + 180) % 180;
  return Math.min(turn, 180 - turn);
}
