/** What the issue codes of single formats, archives and several files mean in words. */
import type { DocumentIssue } from "../../debrief/document.ts";
import { count } from "./number.ts";

type Facts = DocumentIssue["facts"];
type Words = (facts: Facts) => string;

const quote = (fact: unknown): string => `“${String(fact)}”`;
const counted = (n: unknown, one: string): string =>
  Number(n) === 1 ? `1 ${one}` : `${count(Number(n ?? 0))} ${one}s`;
const were = (n: unknown): string => (Number(n) === 1 ? "was" : "were");

/** Columns as the trade calls them. */
const COLUMNS: Readonly<Record<string, string>> = {
  groundSpeed: "ground speed",
  trueAirspeed: "true airspeed",
  indicatedAirspeed: "indicated airspeed",
};

export const FORMAT_WORDS: Readonly<Record<string, Words>> = {
  "archive-without-log": () =>
    "there is no track log in this archive. Unpack it and open the log itself (GPX, KML, IGC or CSV).",
  "archive-too-big": (f) =>
    `unpacked it is over ${Math.round(Number(f.limit) / 1e6)} MB, which no track log needs. Reading stopped there; what came before was kept.`,
  "broken-archive": (f) =>
    /^unknown compression/.test(String(f.reason))
      ? `it is packed in a way that is not read here (${f.reason}). Unpack it and open the log itself.`
      : `the archive is damaged or cut off (${f.reason}). What could be unpacked was read; export it again to get the rest.`,
  "line-too-long": (f) =>
    `${counted(f.lines, "line")} of over 65,536 characters ${were(f.lines)} read only to there.`,
  "unknown-line": (f) =>
    `${counted(f.count, "line")} of no known record ${were(f.count)} passed over (first: ${quote(f.begins)}).`,
  "unreadable-record": (f) => `an ${f.record} record cannot be read; what it declares is not used.`,
  "unreadable-date": (f) =>
    `the date ${quote(f.date)} cannot be read, so times count from 1 January 1970. Dates are written as in ${f.form ?? "2026-10-17"}.`,
  "ambiguous-date": (f) =>
    `the date ${quote(f.date)} may have the day or the month first; ${f.read} was taken. Durations and speeds are right either way.`,
  "no-date": () =>
    "the log has times but no date, so they count from 1 January 1970. Durations and speeds are right; what needs the date (variation) cannot be told.",
  "lines-out-of-order": (f) =>
    `${counted(f.count, "line")} out of the order of time ${were(f.count)} put in order.`,
  "segments-out-of-order": () => "whole segments out of the order of time were put in order.",
  "fix-without-height": (f) =>
    `${counted(f.count, "fix").replace(/fixs$/, "fixes")} in two dimensions: the place was kept, the height counts as missing.`,
  "height-above-ellipsoid": (f) =>
    `heights above the ellipsoid were brought to sea level with ${f.geoid} (the sea lies ${f.geoidM} m from the ellipsoid here).`,
  "height-is-pressure": (f) =>
    `the log has no GPS height; the pressure altitude on ${f.hPa} hPa stands in its place. It is not on QNH.`,
  "height-above-ground": () =>
    "heights are above the ground, which is not known here; they count as missing.",
  "height-mode-ground": () =>
    "the file tells viewers to ignore its heights, yet has them; they were taken as above sea level.",
  "track-lists-differ": (f) =>
    `a track has ${counted(f.times, "time")} but ${counted(f.coordinates, "place")}; they were paired in order, what is left over was left out or has no time.`,
  "unused-geometry": (f) =>
    `${counted(f.points, f.geometry === "line" ? "line point" : "timed placemark")} beside the track ${were(f.points)} not used.`,
  "no-headings": (f) =>
    `this table does not tell which columns are latitude and longitude (in its first ${f.looked} lines). Give the table a line of headings, such as time, latitude, longitude, altitude (ft), or say which column is which (on the terminal with --column).`,
  "too-many-commas": (f) =>
    `${counted(f.count, "point")} ${Number(f.count) === 1 ? "has" : "have"} ${f.values} values under ${f.columns} headings, as decimal commas between commas make, and ${were(f.count)} left out. Export with decimal points, or with semicolons between the columns.`,
  "unit-assumed": (f) =>
    `the column ${quote(f.column)} names no unit; ${f.unit === "c" ? "°C" : f.unit} was taken. Write it in the heading, as in altitude (ft).`,
  "link-not-followed": () =>
    "the file points to another file, which is not fetched. Save that one and open it.",
  "unit-by-way": (f) => `the logged speeds name no unit; ${f.unit} fits the way flown and was taken.`,
  "unit-not-found": () => "the logged speeds name no unit, and none fits the way flown; they were not used.",
  "unclear-column": (f) =>
    `the column ${quote(f.column)} was not used, as it says neither true nor magnetic. Name it true heading or magnetic heading.`,
  "implausible-column": (f) =>
    `the ${COLUMNS[String(f.column)] ?? f.column} is ${f.ratio} times the speed of the way flown and was not used. Check its unit.`,
  "recorded-twice": (f) =>
    `${counted(f.count, "point")} that another file has too ${were(f.count)} left out.`,
  "untimed-not-joined": (f) =>
    `${counted(f.count, "point")} without a time cannot be joined with other files and ${were(f.count)} left out.`,
};
