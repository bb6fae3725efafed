/** What one cleaning rule found: the rows it leaves out or names, and why. */
import type { Fact, Issue } from "../quantity/issue.ts";
import type { Track } from "./track.ts";

/** One code's rows in the track as it was given, in rising order. `dropped` tells whether they were left out. */
export interface CleanFinding {
  readonly code: string;
  readonly severity: Issue["severity"];
  readonly rows: readonly number[];
  readonly dropped: boolean;
  readonly facts: Readonly<Record<string, Fact>>;
}

/** So many lines are named; the rest is only counted. */
const PLACES = 5;

export function issueOf(finding: CleanFinding, track: Track): Issue {
  const { code, severity, rows, dropped, facts } = finding;
  const first = rows[0];
  const line = first === undefined ? 0 : track.line[first]!;
  const lines = rows.slice(0, PLACES).flatMap((row) => (track.line[row]! > 0 ? [track.line[row]!] : []));
  return {
    code,
    severity,
    where: { ...(line > 0 ? { line } : {}), ...(first === undefined ? {} : { point: first }) },
    facts: {
      ...facts,
      count: rows.length,
      ...(dropped ? { dropped: rows.length } : {}),
      ...(lines.length > 0 ? { lines: lines.join(", ") } : {}),
    },
  };
}
