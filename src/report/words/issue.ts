/** One line for an issue: the file, the place, what is wrong and what to do. */
import type { DocumentIssue } from "../../debrief/document.ts";
import { ISSUE_WORDS } from "./issue-words.ts";
import { capital } from "./number.ts";

/** Control characters of a file's own text would break the one line, and marks that turn the direction of writing its order. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is taken out
const CONTROL = /[\u0000-\u001f\u007f-\u009f\u2028-\u202e\u2066-\u2069]+/g;
const LONGEST_TEXT = 200;

const plain = (text: string): string => {
  const line = text.replace(CONTROL, " ");
  return line.length > LONGEST_TEXT ? `${line.slice(0, LONGEST_TEXT)}…` : line;
};

/** As in "log.gpx, line 12, column 3". */
function place(where: DocumentIssue["where"]): string {
  const parts = [
    where.file === undefined ? "" : plain(where.file),
    where.line === undefined ? "" : `line ${where.line}`,
    where.column === undefined ? "" : `column ${where.column}`,
    where.path === undefined || where.path === "" ? "" : plain(where.path),
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
