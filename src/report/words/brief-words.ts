/** What each issue code of a brief or a route means in words, and what to do about it. */
import { known, maybe, quote, type Words } from "./issue-parts.ts";

export const BRIEF_WORDS: Readonly<Record<string, Words>> = {
  "brief-not-yaml": (f) => `the brief cannot be read from here on: ${f.reason}.`,
  "brief-duplicate-key": () => "this key stands twice. Keep one of them.",
  "brief-empty": () => "the brief is empty. Write at least a fix and an exercise.",
  "unknown-standard": (f) =>
    `the brief names the standard ${quote(f.standard)}, which is not known here, so nothing is judged. Known: ${f.known}; or give the school’s own file beside it.`,
  "brief-no-exercises": () =>
    "the brief has no exercise that can be used. Add one, such as a course to a fix.",
  "brief-unknown-key": (f) => `the key ${quote(f.key)} is not known here.${maybe(f)} Allowed: ${f.allowed}.`,
  "brief-missing-key": (f) =>
    `the key ${quote(f.key)}${known(f.or) ? ` (or ${quote(f.or)})` : ""} is missing. Add it.`,
  "brief-wrong-type": (f) =>
    `here should stand a ${f.expected}, but it is ${known(f.value) ? quote(f.value) : `a ${f.found}`}.`,
  "brief-wrong-length": (f) =>
    `the list here has ${f.found} ${Number(f.found) === 1 ? "entry" : "entries"}${known(f.expected) ? `, but ${f.expected} are needed` : ", which does not fit"}.`,
  "brief-not-allowed": (f) => `${quote(f.value)} is not possible here.${maybe(f)} Possible: ${f.allowed}.`,
  "brief-out-of-range": (f) =>
    `${quote(f.value)} is out of range: ${[known(f.least) ? `at least ${f.least}` : "", known(f.most) ? `at most ${f.most}` : ""].filter(Boolean).join(", ")}${f.inclusive === false ? ", limit not included" : ""}.`,
  "brief-course-out-of-range": (f) =>
    `the direction ${f.value} is out of range. Write ${f.least} to ${f.most} degrees, magnetic, or true with a T, as in 218T.`,
  "brief-not-a-direction": (f) =>
    `${quote(f.value)} is no direction. Write degrees magnetic, as in 218, or true with a T, as in 218T.`,
  "brief-not-a-time": (f) => `${quote(f.value)} is no time. Write hh:mm or hh:mm:ss, UTC, as in 09:44.`,
  "brief-not-a-leg-length": (f) =>
    `${quote(f.value)} is no leg length. Write a time or a distance, as in 1 min or 4 NM.`,
  "brief-unknown-fix": (f) =>
    `the fix ${quote(f.ident)} is not among the fixes of this brief.${maybe(f)} ${known(f.known) ? `There are: ${f.known}.` : "It names none; add it under fixes."}`,
  "brief-ident-by-place": (f) =>
    `the point lists have ${quote(f.ident)} at ${f.places} places; the one nearest to the flight, ${f.awayNm} NM from its middle, was taken. To take another, write its place under fixes.`,
  "brief-ident-twice": (f) =>
    `the point lists have ${quote(f.ident)} at ${f.places} places; the first was taken. To take another, write its place under fixes.`,
  "brief-unknown-runway": (f) =>
    `no point list names the runway ${quote(f.ident)}.${maybe(f)} Add it to the list, or write the runway out: threshold, end, elevation_ft.`,
  "brief-runway-without-elevation": (f) =>
    `the point list gives no elevation for the runway ${quote(f.ident)}, and an approach needs it. Add it to the list, or write the runway out.`,
  "brief-unknown-exercise": (f) => `this is no exercise that is known here.${maybe(f)} Possible: ${f.known}.`,
  "brief-arc-without-length": (f) =>
    `the arc begins and ends on the same radial (${f.from} to ${f.to}), so there is nothing to fly. Correct one of them.`,
  "brief-leg-without-length": (f) =>
    `the leg from ${f.from} to ${f.to} has no length: both are at the same place.`,
  "brief-runway-without-length": () =>
    "the runway has no length: its threshold and its far end are at the same place.",
  "brief-two-minimums": () =>
    "an approach has either a decision altitude or a minimum descent altitude. Keep one of decision_ft and minimum_ft.",
  "brief-vor-without-station": () =>
    "a VOR approach needs its station. Name it under station, or let the final fix be one of kind vor.",
  "brief-final-fix-misplaced": (f) =>
    `the final fix ${f.fix} lies ${Math.abs(Number(f.beforeNm))} NM ${Number(f.beforeNm) > 0 ? "before" : "past"} the threshold and ${f.asideNm} NM beside the final course.${Number(f.beforeNm) > 0 ? "" : " The ends of the runway may be exchanged."} It has to lie before the threshold, at most ${f.mostNm} NM away and ${f.mostAsideNm} NM aside.`,
  "brief-step-down-without-place": () =>
    "a step-down needs one place: either a fix, or before_nm, the distance before the threshold.",
  "brief-both-to-and-from": () => "a course goes either to a fix or from one. Keep one of the two.",
  "brief-angular-scale-on-leg": (f) =>
    `the needle scale ${quote(f.scale)} follows the angle at a station, and a leg has none. Use one of ${f.allowed}, or write a course to or from the station.`,
  "brief-empty-window": () => "the time window has no length. Write its start and its end.",
  "brief-window-too-long": (f) =>
    `the window ${f.start} to ${f.end} is ${f.hours} hours long, and an exercise takes ${f.most} at most. Write its start first, then its end, UTC.`,
  "route-leg-without-length": (f) => `the leg from ${f.from} to ${f.to} has no length and was left out.`,
  "route-without-legs": (f) =>
    `the route ${quote(f.route)} has no leg: it needs two points at different places.`,
  "window-without-date": (f) =>
    `${f.exercise}: the window ${f.start} to ${f.end} needs a log with times; the exercise was looked for by its geometry instead.`,
  "variation-date-assumed": (f) =>
    `the log has no date, so the variation at ${f.fix} is that of ${f.model} on ${f.date}. Give the fix a declination, or write the course true, as in 218T.`,
};
