/** What is wrong with the user's data, as a record; the sentence is made later, in `report`. */

export type Fact = string | number | boolean | null;

/** Where in the user's input something is. Lines and columns count from 1, points from 0. */
export interface Where {
  readonly file?: string;
  readonly line?: number;
  readonly column?: number;
  readonly point?: number;
  /** A path into a brief, as in `exercises[2].course`. */
  readonly path?: string;
}

export interface Issue {
  /** Kebab-case, public, stable. */
  readonly code: string;
  readonly severity: "error" | "warning" | "note";
  readonly where: Where;
  readonly facts: Readonly<Record<string, Fact>>;
}

/** Nothing usable is left of an input: carries the issues that say why, worst first. */
export class UnusableInput extends Error {
  readonly issues: readonly Issue[];
  constructor(issues: readonly Issue[]) {
    super(issues.map((i) => `${i.code} ${JSON.stringify(i.where)} ${JSON.stringify(i.facts)}`).join("; "));
    this.name = "UnusableInput";
    this.issues = issues;
  }
}
