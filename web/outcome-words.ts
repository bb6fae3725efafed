/** What there is to say when files have been read, or could not be. */
import { type DocumentIssue, issueSentence, shownName, TOP_WORDS } from "../src/index.ts";
import type { Outcome } from "./analyst.ts";
import type { Debriefed, Unread } from "./messages.ts";
import type { LeftOutBrief } from "./several.ts";
import type { FlightRow } from "./store/schema.ts";

const leftOutSentence = (names: readonly string[], log: string): string =>
  `Left out: ${names.map(shownName).join(", ")}. One brief makes a sheet; this one is of ${shownName(log)}.`;

/** What must not wait until the foot of the sheet: files not read, parts of the brief not usable. */
export function sheetWords({ leftOut, unread, document }: Debriefed): string[] {
  const brief =
    document.brief?.issues.filter(({ severity, code }) => severity !== "note" && !(code in TOP_WORDS)) ?? [];
  const log = document.log.issues.filter((issue) => issue.severity === "error");
  return [
    ...unreadWords(unread),
    ...(leftOut.length > 0 ? [leftOutSentence(leftOut, document.log.file)] : []),
    ...[...brief, ...log].map((issue) => issueSentence(issue)),
  ];
}

const sentences = (issues: readonly DocumentIssue[]): string[] => issues.map((issue) => issueSentence(issue));

/** Why there is no sheet. */
export function failureWords(outcome: Extract<Outcome, { kind: "unusable" | "fault" }>): string[] {
  return outcome.kind === "unusable"
    ? sentences(outcome.issues)
    : [
        `Hindtrack itself failed on these files: ${outcome.text}. Nothing was changed; other files can be opened.`,
      ];
}

/** More than this would hide the page. */
const MOST_NAMED = 6;

/** Files that many were dropped with and that could not be read, each with its first cause. */
export function unreadWords(unread: readonly Unread[]): string[] {
  const named = unread.slice(0, MOST_NAMED).flatMap(({ issues }) => sentences(issues.slice(0, 1)));
  const rest = unread.slice(MOST_NAMED).map(({ file }) => shownName(file));
  return rest.length > 0 ? [...named, `Not read either: ${rest.join(", ")}.`] : named;
}

/** Briefs that many were dropped with and that no flight took, each with why. */
export function leftOutWords(leftOut: readonly LeftOutBrief[]): string[] {
  const loose = leftOut.filter(({ joined }) => joined === null).map(({ name }) => shownName(name));
  return [
    ...leftOut.flatMap(({ name, joined }) =>
      joined
        ? [
            `Left out: ${shownName(name)}. Its log ${shownName(joined.log)} is of one flight with ${joined.others.map(shownName).join(", ")}, which is held against ${shownName(joined.brief)}.`,
          ]
        : [],
    ),
    ...(loose.length > 0
      ? [`Left out: ${loose.join(", ")}. A brief goes with the log of its own name.`]
      : []),
  ];
}

export const flightsWords = (n: number): string => (n === 1 ? "1 flight" : `${n} flights`);

/** Adding was cancelled: what of the flights as they stand now is not finished and goes, and how many stay; null is one that is gone. */
export function whenCancelled(now: readonly (Pick<FlightRow, "id" | "analysis"> | null)[]): {
  readonly unfinished: readonly string[];
  readonly words: string;
} {
  const standing = now.filter((row) => row !== null);
  const unfinished = standing.filter(({ analysis }) => analysis === null).map(({ id }) => id);
  const added = standing.length - unfinished.length;
  return { unfinished, words: `Cancelled: ${added} of ${flightsWords(now.length)} added to the logbook.` };
}
