/** What came of the flights of a folder, in their order: each flight once, its exercises in the table, and what there is to say. */
import type { ObservedFlight } from "../index.ts";
import type { FlightTask } from "./documents-of.ts";
import { ExerciseTable } from "./exercise-table.ts";
import type { FlightResult } from "./habits-worker.ts";
import { complainOf, note, sayAll } from "./output.ts";

/** On one line, whatever it says. */
const onOneLine = (text: string): string => text.replace(/\s*\n\s*/g, " ");

export class FolderResults {
  readonly observed: ObservedFlight[] = [];
  /** Files so far. */
  taken = 0;
  reused = 0;
  /** Files that gave nothing. */
  bad = 0;
  private readonly why: string[] = [];
  private readonly beware: string[] = [];
  private readonly twice: string[] = [];
  private readonly known = new Map<string, string>();
  private readonly table: ExerciseTable | null;

  constructor(out: string | null) {
    this.table = out ? new ExerciseTable(out) : null;
  }

  /** A flight may lie there as a log and as a document: what began and ended at the same moments is one, the first of them. */
  private isNew({ id, startUtc, endUtc }: ObservedFlight): boolean {
    if (!startUtc) return true;
    const key = `${startUtc} ${endUtc}`;
    const same = this.known.get(key);
    if (same === undefined) this.known.set(key, id);
    else this.twice.push(`${id}: the same flight as ${same}; counted once`);
    return same === undefined;
  }

  async take(result: FlightResult, { flight }: FlightTask): Promise<void> {
    this.taken++;
    if (!result.done) {
      this.bad++;
      this.why.push(...(result.why.length > 0 ? result.why : [`${flight.path}: it cannot be used`]));
      return;
    }
    if (result.reused) this.reused++;
    for (const { observed, csv, beware } of result.flights) {
      if (!this.isNew(observed)) continue;
      this.observed.push(observed);
      this.beware.push(...beware);
      await this.table?.add(csv);
    }
  }

  async end(): Promise<void> {
    await this.table?.close();
    sayAll(this.twice, note);
    sayAll(this.beware.map(onOneLine), note);
  }

  /** What could not be used, last of all: nobody overlooks it there. */
  complain(unreadable: readonly string[]): void {
    const lines = [...unreadable, ...this.why];
    if (lines.length === 0) return;
    if (this.bad > 0) complainOf(`${this.bad} of ${this.taken} could not be used; the rest was done`);
    for (const line of lines) complainOf(onOneLine(line));
  }
}
