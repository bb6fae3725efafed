/** One line for an issue: the file, the place, what is wrong and what to do. */
import type { DocumentIssue } from "../../debrief/document.ts";
import { ISSUE_WORDS } from "./issue-words.ts";
import { onOneLine, shownName } from "./name.ts";
import { capital } from "./number.ts";

const LONGEST_TEXT = 200;
const plain = (text: string): string => onOneLine(text, LONGEST_TEXT);

/** "exercises[0].course" is "exercise 1, course": counted as the sheet counts them. */
const pathWords = (path: string): string =>
  plain(path).replace(
    /^exercises\[(\d+)\](\.?)/,
    (_, index, more) => `exercise ${Number(index) + 1}${more && ", "}`,
  );

/** As in "log.gpx, line 12, column 3". */
function place(where: DocumentIssue["where"]): string {
  const parts = [
    where.file === undefined ? "" : shownName(where.file),
    where.line === undefined ? "" : `line ${where.line}`,
    where.column === undefined ? "" : `column ${where.column}`,
    where.path === undefined || where.path === "" ? "" : pathWords(where.path),
  ];
  return parts.filter(Boolean).join(", ");
}

/** A code without words is still told, with its facts: nothing is kept from the user. */
export function issueSentence(issue: DocumentIssue): string {
  const facts = Object.fromEntries(
    Object.entries(issue.facts).map(([k, v]) => [k, typeof v === "string" ? plain(v) : v]),
  );
  const words =
    ISSUE_WORDS[issue.code]?.(facts) ??
    `${issue.code.replaceAll("-", " ")} (${Object.entries(facts)
      .map(([k, v]) => `${k} ${v}`)
      .join(", ")})`;
  const at = place(issue.where);
  return at ? `${at}: ${words}` : capital(words);
}
