/** What came of the flights of a folder, in their order: each flight once, its exercises in the table, and what there is to say. */
import type { ObservedFlight } from "../index.ts";
import type { FlightTask } from "./documents-of.ts";
import { relabelled, writeExercises } from "./exercise-table.ts";
import type { FlightResult, SeenFlight } from "./habits-worker.ts";
import { complainOf, note, sayAll } from "./output.ts";
import { type FlightMark, isSameFlight } from "./same-flight.ts";

/** On one line, whatever it says. */
const onOneLine = (text: string): string => text.replace(/\s*\n\s*/g, " ");

interface Known {
  readonly mark: FlightMark;
  /** Among the flights that count. */
  readonly index: number;
}

/** Where both are named, they are named alike. */
const areNoOthers = (a: ObservedFlight, b: ObservedFlight): boolean =>
  (["pilot", "aircraft"] as const).every((of) => a[of] === null || b[of] === null || a[of] === b[of]);

export class FolderResults {
  readonly observed: ObservedFlight[] = [];
  /** Files so far. */
  taken = 0;
  reused = 0;
  /** Files that gave nothing. */
  bad = 0;
  /** Debriefs beside their logs that are damaged, though the logs gave their flights. */
  readonly broken: string[] = [];
  private readonly why: string[] = [];
  private readonly beware: string[] = [];
  private readonly said: string[] = [];
  /** By the times at which they began and ended. */
  private readonly known = new Map<string, Known[]>();
  private readonly csvs: string[] = [];
  private readonly out: string | null;

  constructor(out: string | null) {
    this.out = out;
  }

  /**
   * A flight may lie there as a log and as a document: over the same places at the same times it is one, the first of
   * them, unless another pilot or aircraft is named for it.
   */
  private isNew({ observed, mark }: SeenFlight): boolean {
    const { id } = observed;
    const key = `${mark.startUtc} ${mark.endUtc}`;
    const alike = this.known.get(key) ?? [];
    this.known.set(key, alike);
    const twins = alike.filter((one) => isSameFlight(one.mark, mark));
    const same = twins.find(({ index }) => areNoOthers(this.observed[index]!, observed));
    if (same) {
      const first = this.observed[same.index]!;
      this.said.push(`${id}: the same flight as ${first.id}; counted once`);
      this.name(same.index, observed);
      return false;
    }
    for (const { index } of twins)
      this.said.push(
        `${id}: the same track as ${this.observed[index]!.id}, with another pilot or aircraft: each counts`,
      );
    alike.push({ mark, index: this.observed.length });
    return true;
  }

  /** What only the second of two files says of who flew, and in what. */
  private name(index: number, { pilot, aircraft }: ObservedFlight): void {
    const first = this.observed[index]!;
    const named = { ...first, pilot: first.pilot ?? pilot, aircraft: first.aircraft ?? aircraft };
    if (named.pilot === first.pilot && named.aircraft === first.aircraft) return;
    this.observed[index] = named;
    if (this.out) this.csvs[index] = relabelled(this.csvs[index]!, named);
  }

  async take(result: FlightResult, { flight }: FlightTask): Promise<void> {
    this.taken++;
    if (!result.done) {
      this.bad++;
      this.why.push(...(result.why.length > 0 ? result.why : [`${flight.path}: it cannot be used`]));
      return;
    }
    if (result.reused) this.reused++;
    for (const path of result.mended) this.said.push(`${path}: was damaged, and was made again from its log`);
    for (const path of result.broken)
      this.broken.push(`${path}: this debrief is damaged; its log ${flight.name} was worked out anew`);
    for (const seen of result.flights) {
      if (!this.isNew(seen)) continue;
      this.observed.push(seen.observed);
      this.beware.push(...seen.beware);
      if (this.out) this.csvs.push(seen.csv);
    }
  }

  async end(): Promise<void> {
    if (this.out && this.csvs.length > 0) await writeExercises(this.out, this.csvs);
    sayAll(this.said, note);
    sayAll(this.beware.map(onOneLine), note);
  }

  /** What could not be used, last of all: nobody overlooks it there. */
  complain(unreadable: readonly string[]): void {
    const lines = [...unreadable, ...this.broken, ...this.why];
    if (lines.length === 0) return;
    if (this.bad > 0) complainOf(`${this.bad} of ${this.taken} could not be used; the rest was done`);
    for (const line of lines) complainOf(onOneLine(line));
  }
}
