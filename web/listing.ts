/** Looking for flights in the logbook, and putting them in order. */
import { day, plain } from "../src/index.ts";
import { askedWords, stands } from "./asked-words.ts";
import { decided } from "./decided.ts";
import type { FlightRow } from "./store/schema.ts";

export type Order = "date" | "title" | "pilot" | "aircraft" | "wind" | "not met" | "added";

export interface Search {
  /** Every word must stand somewhere in the row, in whatever order; a day ("9 June") and a verdict ("not met") are one. */
  readonly words: string;
  /** Empty: whoever, whatever. */
  readonly pilot: string;
  readonly aircraft: string;
  readonly tag: string;
  /** Days, as 2026-10-17, both included; empty: open. */
  readonly from: string;
  readonly to: string;
  readonly order: Order;
  readonly backwards: boolean;
}

export const EVERYTHING: Search = {
  words: "",
  pilot: "",
  aircraft: "",
  tag: "",
  from: "",
  to: "",
  order: "date",
  backwards: true,
};

/** The day of the flight, in UTC; empty where its log has no times. */
const dayOf = (row: FlightRow): string => row.summary?.startUtc?.slice(0, 10) ?? "";

export const titleOf = (row: FlightRow): string => row.summary?.title || row.fileNames[0] || "";

/** How many of a verdict, as the instructor decided where one was overruled. */
export const verdictsOf = (row: FlightRow, verdict: string): number => decided(row).counts[verdict] ?? 0;

const texts = new WeakMap<FlightRow, string>();

/** All that can be found of a row, in small letters. */
function textOf(row: FlightRow): string {
  const known = texts.get(row);
  if (known !== undefined) return known;
  const { pilot, aircraft, tags, fileNames, notes, summary, trouble } = row;
  const said = notes.remarks.map(({ text }) => text);
  const why = notes.overrules.map((overrule) => `${overrule.by} ${overrule.why}`);
  const kinds = Object.keys(summary?.exercises ?? {}).map(plain);
  const titles = summary?.judged?.map(({ title }) => title) ?? [];
  const { counts } = decided(row);
  const verdicts = Object.keys(counts).filter((verdict) => counts[verdict]! > 0);
  const isJudged = verdicts.length > 0 || summary === null;
  const when = summary?.startUtc ? [dayOf(row), day(summary.startUtc)] : [];
  const text = [titleOf(row), ...when, pilot, aircraft, ...tags, ...fileNames, ...said, ...why, ...kinds]
    .concat(titles, summary?.fixes ?? [], verdicts, isJudged ? [] : "not judged", trouble ?? "")
    .join("\n")
    .toLowerCase();
  texts.set(row, text);
  return text;
}

function isFound(
  row: FlightRow,
  words: readonly string[],
  { pilot, aircraft, tag, from, to }: Search,
): boolean {
  if (pilot && row.pilot !== pilot) return false;
  if (aircraft && row.aircraft !== aircraft) return false;
  if (tag && !row.tags.includes(tag)) return false;
  const flown = dayOf(row);
  if (from && (flown === "" || flown < from)) return false;
  if (to && (flown === "" || flown > to)) return false;
  return words.length === 0 || words.every((phrase) => stands(phrase, textOf(row)));
}

const byText = new Intl.Collator(undefined, { numeric: true, sensitivity: "base" });

/** Texts of one shape, as dates are. */
const byLetters = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

const ORDERS: Readonly<Record<Order, (a: FlightRow, b: FlightRow) => number>> = {
  date: (a, b) => byLetters(a.summary?.startUtc ?? "", b.summary?.startUtc ?? ""),
  title: (a, b) => byText.compare(titleOf(a), titleOf(b)),
  pilot: (a, b) => byText.compare(a.pilot, b.pilot),
  aircraft: (a, b) => byText.compare(a.aircraft, b.aircraft),
  wind: (a, b) => (a.summary?.wind?.speedKt ?? -1) - (b.summary?.wind?.speedKt ?? -1),
  "not met": (a, b) => verdictsOf(a, "not met") - verdictsOf(b, "not met"),
  added: (a, b) => a.added - b.added,
};

export function listed(rows: readonly FlightRow[], search: Search): FlightRow[] {
  const words = askedWords(search.words);
  const compare = ORDERS[search.order];
  const sense = search.backwards ? -1 : 1;
  return rows
    .filter((row) => isFound(row, words, search))
    .sort((a, b) => sense * (compare(a, b) || ORDERS.date(a, b) || a.added - b.added));
}

/** Every value that the user has given, once, in order. */
export const valuesOf = (rows: readonly FlightRow[], of: (row: FlightRow) => readonly string[]): string[] =>
  [...new Set(rows.flatMap(of))].filter((value) => value !== "").sort(byText.compare);

/** Tags as typed, parted by commas. */
export const tagsOf = (text: string): string[] => [
  ...new Set(
    text
      .split(",")
      .map((tag) => tag.trim())
      .filter((tag) => tag !== ""),
  ),
];
