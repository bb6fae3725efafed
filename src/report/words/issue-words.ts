/** What each issue code means in words, and what to do about it. */
import { BRIEF_WORDS } from "./brief-words.ts";
import { FORMAT_WORDS } from "./format-words.ts";
import { HOLD_FIELD_WORDS } from "./hold-fields.ts";
import { type Facts, known, quote, type Words } from "./issue-parts.ts";
import { count } from "./number.ts";
import { TOP_WORDS } from "./top-words.ts";

/** "3 points" or "1 point", as counted. */
function points(facts: Facts): string {
  const n = Number(facts.count ?? 0);
  return n === 1 ? "1 point" : `${count(n)} points`;
}
const counted = (fact: unknown, what: string): string =>
  `${count(Number(fact))} ${what}${Number(fact) === 1 ? "" : "s"}`;
const were = (facts: Facts): string => (Number(facts.count ?? 0) === 1 ? "was" : "were");
const have = (facts: Facts): string => (Number(facts.count ?? 0) === 1 ? "has" : "have");

/** The file as a whole. */
const FILE: Record<string, Words> = {
  "empty-file": () => "the file is empty. Export the log again from the receiver.",
  "unknown-format": () =>
    "this is not a track log that Hindtrack reads. It reads GPX, KML, KMZ, IGC and tables (CSV); export the flight in one of them.",
  "web-page": () =>
    "this is a web page, not a track log. Download the log itself, not the page that shows it.",
  "xml-not-a-log": (f) =>
    `this is XML, but its outer element is ${quote(f.root ?? f.element ?? "unknown")}, not a track log. Export the flight as GPX or KML.`,
  "no-points": (f) =>
    Number(f.seen) > 0
      ? `none of its ${count(Number(f.seen))} track points could be read. Export the log again.`
      : `there are no track points in it (${counted(f.waypoints, "waypoint")}, ${counted(f.routes, "route")}). Export the recorded track, not the plan.`,
  "no-places": () =>
    "there is neither a route nor a waypoint in it. Export the plan again, or write a brief.",
  "no-route": () =>
    "there is no route in it, so no brief can be made of it. Export the plan as a route, or write a brief.",
  "no-log-given": () => "this is a brief; a track log is needed beside it. Open both together.",
  "no-such-flight": (f) =>
    `it holds ${f.flights} ${Number(f.flights) === 1 ? "flight" : "flights"}, not ${f.asked}. Choose one of 1 to ${f.flights}.`,
  "other-flights": (f) =>
    `the log holds ${f.flights} flights; this is number ${f.chosen}, and ${count(Number(f.dropped))} points of the others were left out.`,
  "no-usable-points": (f) => `none of its ${count(Number(f.of))} points can be true. Export the log again.`,
  "too-few-points": (f) =>
    Number(f.backwards) > Number(f.points) / 2
      ? `its times run backwards: ${count(Number(f.backwards))} of its ${count(Number(f.points))} points are earlier than one before them. Sort the log by time, the earliest first, or export it again.`
      : `${Number(f.used) === 0 ? "none" : `only ${f.used}`} of its ${count(Number(f.points))} ${Number(f.points) === 1 ? "point" : "points"} can be used, and a path needs two. Export the whole log.`,
  "broken-xml": (f) =>
    `the file breaks off or is damaged here (${f.reason}). What could be read before and after was kept; export the log again to get the rest.`,
  "xml-too-deep": (f) =>
    `elements are nested over ${f.limit} deep, which no track log needs. Reading stopped here; what stood before was kept.`,
  "xml-too-long": (f) =>
    `one text or name is over ${f.limit} characters long, which no track log needs. Reading stopped here; what stood before was kept.`,
  "unknown-encoding": (f) =>
    `the character encoding ${quote(f.name)} is not known here; the file was read as UTF-8. Names may look odd, numbers are right.`,
  "undecodable-bytes": (f) =>
    `some bytes are not ${f.encoding} text and show as a replacement sign. Names may look odd, numbers are right.`,
  "no-point-headings": () =>
    "no line of headings names ident, lat and lon, so this is no list of points. Write them over its columns; kind, elevation, declination, end lat and end lon may follow.",
  "place-without-ident": (f) =>
    `${points(f)} ${have(f)} no ident and ${were(f)} left out. A point of a list is looked up by its ident.`,
  "place-repeated": (f) =>
    `${points(f)} ${Number(f.count) === 1 ? "stands" : "stand"} in the list twice at the same place (first: ${f.ident}); one of each was kept.`,
  "ident-repeated": (f) =>
    `${Number(f.count) === 1 ? "one ident stands" : `${f.count} idents stand`} in the list for more than one place (first: ${f.ident}). All were kept; where a brief names one, the place nearest to the flight is taken.`,
  "unknown-kind": (f) =>
    `${points(f)} ${have(f)} a kind that is not known here (first: ${quote(f.kind)}) and ${Number(f.count) === 1 ? "counts" : "count"} as another point. Kinds are vor, ndb, dme, waypoint, runway and other.`,
  "runway-without-direction": (f) =>
    `the runway ${f.ident} has neither a far end nor a readable course, so it was kept as a point only. Write end lat and end lon, or a course such as 218T.`,
  "runway-length-assumed": (f) =>
    `no length is written for the runway ${f.ident}${Number(f.count) > 1 ? ` and ${Number(f.count) - 1} more` : ""}; ${count(Number(f.lengthFt))} ft were taken. Its direction is as written; the width of a localizer hangs on the length: write it.`,
  "runway-course-by-model": (f) =>
    `the course of the runway ${f.ident}${Number(f.count) > 1 ? ` and ${Number(f.count) - 1} more` : ""} is magnetic and was turned true by ${f.model}. Write its declination, or the course true, as in 218T.`,
  "runway-off-its-number": (f) =>
    `the runway ${f.ident} points ${f.courseMagnetic}°M, which does not fit its number. It was used as written; correct its ident, its course or its end.`,
  "runway-too-long": (f) =>
    `the runway ${f.ident} is ${f.lengthNm} NM long, and there is none so long. It was used as written; correct its end or its length.`,
  "place-too-long": (f) =>
    `a waypoint or route point is over ${f.limit} characters long and was left out. Shorten its description.`,
};

/** Elements of GPX and columns of tables as a reader knows them. */
const ELEMENTS: Readonly<Record<string, string>> = {
  ele: "height",
  altitude: "height",
  pressureAltitude: "pressure altitude",
  speed: "speed",
  groundSpeed: "ground speed",
  course: "course",
  trackAngle: "track",
  trueAirspeed: "true airspeed",
  indicatedAirspeed: "indicated airspeed",
  headingTrue: "true heading",
  headingMagnetic: "magnetic heading",
  outsideAir: "outside air temperature",
  elevation: "elevation",
  endElevation: "elevation of the far end",
  declination: "declination",
  length: "length",
  hdop: "HDOP",
  sat: "number of satellites",
};

/** Points of the log. */
const POINTS: Record<string, Words> = {
  "unreadable-position": (f) =>
    `${points(f)} ${have(f)} no readable latitude and longitude${known(f.lat) || known(f.lon) ? ` (first: lat ${quote(f.lat ?? "")}, lon ${quote(f.lon ?? "")})` : ""}${known(f.begins) ? ` (first: ${quote(f.begins)})` : ""} and ${were(f)} left out.`,
  "unreadable-place": (f) =>
    `${Number(f.count) > 1 ? `${f.count} waypoints or route points have` : "a waypoint or route point has"} no readable place${known(f.lat) || known(f.lon) ? ` (${Number(f.count) > 1 ? "first: " : ""}lat ${quote(f.lat ?? "")}, lon ${quote(f.lon ?? "")})` : ""} and ${were(f)} left out${known(f.lines) && Number(f.count) > 1 ? `: lines ${f.lines}` : ""}. Latitude is within 90°, longitude within 180°; correct it in the file.`,
  "unreadable-time": (f) =>
    `${points(f)} ${have(f)} a time that cannot be read${known(f.time) ? ` (first: ${quote(f.time)})` : ""}. Times are written as 2026-10-17T09:44:10Z.`,
  "unreadable-value": (f) =>
    `${points(f)} ${have(f)} an unreadable ${ELEMENTS[String(f.element)] ?? quote(f.element)} (first: ${quote(f.value)}); it counts as missing.`,
  "time-without-zone": (f) => `${points(f)} ${have(f)} a time without a zone, taken as UTC.`,
  "point-without-fix": (f) => `${points(f)} ${were(f)} recorded without a GPS fix and left out.`,
  "no-times": () =>
    "the log has no times. Geometry is still compared; what needs time (track, drift, wind) cannot be told. Record with times on.",
  "too-few-times": (f) =>
    `only ${points(f)} ${have(f)} a time, too few to use. Geometry is still compared; what needs time cannot be told.`,
  "point-without-time": (f) => `${points(f)} without a time ${were(f)} left out of a log that has times.`,
  "duplicate-time": (f) => `${points(f)} with the same time as the point before ${were(f)} left out.`,
  "time-going-back": (f) => `${points(f)} with a time before that of an earlier point ${were(f)} left out.`,
  "out-of-range": (f) =>
    `${points(f)} with a latitude over 90° or a longitude over 180° ${were(f)} left out. Where it is all of them, the two may be exchanged.`,
  "zero-zero": (f) =>
    `${points(f)} at exactly 0° latitude and 0° longitude, as receivers write without a fix, ${were(f)} left out.`,
  "impossible-jump": (f) =>
    `${points(f)} that would have needed more than ${f.limitKt} kt ${were(f)} left out.`,
  "position-step": () =>
    "the position steps aside here and stays there. Nothing was left out; nothing is measured across the step.",
  "frozen-position": (f) =>
    `${points(f)} repeating a place while the aircraft flew on ${were(f)} left out, as the receiver had stopped.`,
  "ground-noise": (f) => `${points(f)} from standing before or after the flight ${were(f)} left out.`,
  "impossible-height": (f) =>
    `${points(f)} ${have(f)} a height under ${f.lowestFt} or over ${count(Number(f.highestFt))} ft; the place was kept, the height counts as missing.`,
  "height-jump": (f) =>
    `${points(f)} ${have(f)} a height that would have needed more than ${count(Number(f.limitFpm))} ft/min; the place was kept, the height counts as missing.`,
  "gap-in-log": (f) =>
    `the log has ${Number(f.count) === 1 ? "a gap" : `${f.count} gaps`} of over ${Math.round(Number(f.limitS))} s, the longest ${Math.round(Number(f.longestS))} s. Nothing is measured across ${Number(f.count) === 1 ? "it" : "them"}.`,
};

export const ISSUE_WORDS: Readonly<Record<string, Words>> = {
  ...FILE,
  ...FORMAT_WORDS,
  ...POINTS,
  ...BRIEF_WORDS,
  ...HOLD_FIELD_WORDS,
  ...TOP_WORDS,
};
