/** The logs of an archive as one: flights of other times that lie in it are flights of it. */
import { type Issue, UnusableInput } from "../quantity/issue.ts";
import type { ImportedLog } from "./imported.ts";
import { joinLogs } from "./join.ts";
import { rewindable } from "./source.ts";
import { Tally } from "./tally.ts";
import { MAX_UNPACKED, unpack } from "./unpack.ts";

/** Entries of an archive that are looked at for a log. Own choice: a month of daily lessons. */
const TRIED_ENTRIES = 32;

type Times = readonly [first: number, last: number];

/** When it was recorded, ms; null where no point has a time. */
function timesOf({ track }: ImportedLog): Times | null {
  let [first, last] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const time of track.time) {
    if (time < first) first = time;
    if (time > last) last = time;
  }
  return first <= last ? [first, last] : null;
}

/** Whether it was recorded at another time than all these: of two at once nobody knows whether they are one aircraft. */
function isApart(log: ImportedLog, others: readonly Found[]): boolean {
  const own = timesOf(log);
  return others.every(({ log: other }) => {
    const times = timesOf(other);
    return own !== null && times !== null && (own[1] < times[0] || own[0] > times[1]);
  });
}

/** A log of an archive, and what is wrong with it there. */
interface Found {
  readonly entry: string;
  readonly log: ImportedLog;
  readonly ofArchive: readonly Issue[];
}

/** Of several entries each line says which: two may be damaged alike. */
const inEntry = (issues: readonly Issue[], file: string, entry: string): Issue[] =>
  issues.map((issue) =>
    issue.where.file === file ? { ...issue, where: { ...issue.where, file: `${file}/${entry}` } } : issue,
  );

/** The logs of several entries: those of other times are further flights; how many were left is said. */
function joined(found: readonly Found[], file: string, left: number): ImportedLog {
  const more: Issue = { code: "more-in-archive", severity: "note", where: { file }, facts: { others: left } };
  const several = found.length > 1;
  const named = (issues: readonly Issue[], entry: string) =>
    several ? inEntry(issues, file, entry) : issues;
  const logs = found.map(({ entry, log }) => ({ ...log, issues: named(log.issues, entry) }));
  const ofArchive = found.flatMap(({ entry, ofArchive }) => named(ofArchive, entry));
  const log = { ...joinLogs(logs), file };
  return { ...log, issues: [...ofArchive, ...(left > 0 ? [more] : []), ...log.issues] };
}

/**
 * The entries of an archive that have what is wanted. Logs recorded at other times than those before are joined to them,
 * as several flights of one file are; the rest is counted (`more-in-archive`). Where no entry has what is wanted, what
 * the first of them has, or why it cannot be read.
 */
export async function readArchive(
  kind: "zip" | "gzip",
  packedOnce: AsyncIterable<Uint8Array>,
  file: string,
  readEntry: (entry: AsyncIterable<Uint8Array>) => Promise<ImportedLog>,
  isWanted: (log: ImportedLog) => boolean,
): Promise<ImportedLog> {
  const packed = rewindable(packedOnce);
  const found: Found[] = [];
  let first: UnusableInput | ImportedLog | null = null;
  let [candidates, unpackedBytes] = [0, 0];
  for (let skip = 0; skip < TRIED_ENTRIES && unpackedBytes <= MAX_UNPACKED; skip++) {
    const tally = new Tally(file);
    const unpacked = unpack(kind, packed.fromStart(), tally, skip);
    try {
      const log = await readEntry(unpacked.bytes);
      if (isWanted(log) && isApart(log, found)) {
        found.push({ entry: unpacked.entry() ?? "", log, ofArchive: tally.issues() });
      }
      first ??= { ...log, issues: [...tally.issues(), ...log.issues] };
    } catch (error) {
      if (!(error instanceof UnusableInput)) throw error;
      const none: Issue = { code: "archive-without-log", severity: "error", where: { file }, facts: {} };
      const damage = tally.issues();
      const nothing = error.issues[0]?.code === "empty-file" && damage.length > 0;
      const reason = unpacked.entry() === null ? [none] : nothing ? [] : error.issues;
      first ??= new UnusableInput([...reason, ...damage]);
    }
    candidates = Math.max(candidates, unpacked.others() + Number(unpacked.entry() !== null));
    unpackedBytes += unpacked.length();
    if (unpacked.entry() === null || kind === "gzip" || !packed.canRewind()) break;
  }
  if (found.length > 0) return joined(found, file, candidates - found.length);
  if (first instanceof UnusableInput) throw first;
  return first!;
}
