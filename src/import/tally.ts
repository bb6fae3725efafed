/** Gathers what is wrong with a file, one issue a code, however many points it touches. */
import type { Fact, Issue } from "../quantity/issue.ts";

/** So many places are named for one code; the rest is only counted. Enough to find them by hand. */
const PLACES = 5;

interface Entry {
  readonly code: string;
  readonly severity: Issue["severity"];
  readonly line: number;
  readonly column: number;
  readonly point: number;
  readonly facts: Readonly<Record<string, Fact>>;
  readonly lines: number[];
  count: number;
  dropped: number;
}

/** Where the reader stands; `point` counts the file's points from 0, -1 where it is not about a point. */
export interface Place {
  readonly line: number;
  readonly column: number;
  readonly point: number;
}

/**
 * One issue a code (and a `detail`, such as the element's name): `where` is the first place, `facts.count` how
 * often it came, `facts.lines` the first five lines as text, and `facts.dropped`, where points were left out
 * for it, how many. The sum of `dropped` over all issues is the points seen less the points kept.
 */
export class Tally {
  private readonly entries = new Map<string, Entry>();
  private readonly file: string;
  constructor(file: string) {
    this.file = file;
  }

  add(
    code: string,
    severity: Issue["severity"],
    place: Place,
    more: {
      readonly dropped?: number;
      readonly facts?: Readonly<Record<string, Fact>>;
      readonly detail?: string;
    } = {},
  ): void {
    const key = more.detail === undefined ? code : `${code} ${more.detail}`;
    let entry = this.entries.get(key);
    if (entry === undefined) {
      const { line, column, point } = place;
      entry = {
        code,
        severity,
        line,
        column,
        point,
        facts: more.facts ?? {},
        lines: [],
        count: 0,
        dropped: 0,
      };
      this.entries.set(key, entry);
    }
    entry.count++;
    entry.dropped += more.dropped ?? 0;
    if (entry.lines.length < PLACES && place.line > 0) entry.lines.push(place.line);
  }

  issues(): Issue[] {
    const rank = { error: 0, warning: 1, note: 2 };
    return [...this.entries.values()]
      .sort((a, b) => rank[a.severity] - rank[b.severity])
      .map((e) => ({
        code: e.code,
        severity: e.severity,
        where: {
          file: this.file,
          ...(e.line > 0 ? { line: e.line } : {}),
          ...(e.column > 0 ? { column: e.column } : {}),
          ...(e.point >= 0 ? { point: e.point } : {}),
        },
        facts: {
          ...e.facts,
          count: e.count,
          ...(e.dropped > 0 ? { dropped: e.dropped } : {}),
          ...(e.lines.length > 0 ? { lines: e.lines.join(", ") } : {}),
        },
      }));
  }
}

/** How many points each code left out, from `facts.dropped`. */
export function droppedByCode(issues: readonly Issue[]): Record<string, number> {
  const counts: Record<string, number> = {};
  for (const { code, facts } of issues) {
    if (typeof facts.dropped === "number" && facts.dropped > 0)
      counts[code] = (counts[code] ?? 0) + facts.dropped;
  }
  return counts;
}
