/** Several files of one flight as one log: in the order of time, without what was recorded twice. */
import { firstAtOrAfter } from "../quantity/span.ts";
import type { Track } from "../track/track.ts";
import { GrowingColumns, OPTIONAL_COLUMNS } from "./columns.ts";
import type { ImportedLog } from "./imported.ts";
import { Tally } from "./tally.ts";

/** Seconds: between two points so near in time another file's tell nothing new. Tuned, no source. */
const COVERED_S = 20;

interface Row {
  readonly track: Track;
  readonly row: number;
}

/**
 * The files that begin earlier come first; of a later one only the points stay that are not between two that
 * are there, 20 s or less apart, so that two recorders of one flight fill each other's gaps and are not mixed (`recorded-twice`).
 * Points without time cannot be put in order (`untimed-not-joined`). A change of file is a new segment.
 * Lines are those of each point's own file. Issues of all files stay; a single log comes back as it is.
 * @throws RangeError without any log.
 */
export function joinLogs(logs: readonly ImportedLog[]): ImportedLog {
  const [first] = logs;
  if (first === undefined) throw new RangeError("invalid logs: none");
  if (logs.length === 1) return first;
  const file = logs.map((log) => log.file).join(" + ");
  const tally = new Tally(file);
  const starting = logs
    .map((log) => ({ log, rows: timedRows(log.track, tally) }))
    .sort((a, b) => timeOf(a.rows[0]) - timeOf(b.rows[0]));
  let kept: Row[] = [];
  for (const { rows } of starting) {
    const times = Float64Array.from(kept, timeOf);
    const fresh = rows.filter((row) => {
      const time = timeOf(row);
      const at = firstAtOrAfter(times, time);
      const next = times[at] ?? Number.POSITIVE_INFINITY;
      const before = times[at - 1] ?? Number.NEGATIVE_INFINITY;
      if (next !== time && next - before > COVERED_S * 1000) return true;
      tally.add("recorded-twice", "note", placeOf(row), { dropped: 1, facts: { withinS: COVERED_S } });
      return false;
    });
    kept = [...kept, ...fresh].sort((a, b) => timeOf(a) - timeOf(b));
  }
  return {
    file,
    track: trackOf(kept, first.track),
    waypoints: logs.flatMap((log) => log.waypoints),
    routes: logs.flatMap((log) => log.routes),
    pointsSeen: logs.reduce((sum, log) => sum + log.pointsSeen, 0),
    issues: [...tally.issues(), ...logs.flatMap((log) => log.issues)],
  };
}

const timeOf = (row: Row | undefined): number =>
  row === undefined ? Number.POSITIVE_INFINITY : row.track.time[row.row]!;
const placeOf = ({ track, row }: Row) => ({ line: track.line[row]!, column: 0, point: -1 });

function timedRows(track: Track, tally: Tally): Row[] {
  const rows: Row[] = [];
  for (let row = 0; row < track.length; row++) {
    if (!Number.isNaN(track.time[row]!)) rows.push({ track, row });
    else tally.add("untimed-not-joined", "warning", placeOf({ track, row }), { dropped: 1 });
  }
  return rows.sort((a, b) => timeOf(a) - timeOf(b)); // stable: equal times keep their order
}

function trackOf(rows: readonly Row[], first: Track): Track {
  const columns = new GrowingColumns();
  let last: Row | null = null;
  for (const now of rows) {
    const { track, row } = now;
    if (last !== null && (last.track !== track || track.segment[last.row] !== track.segment[row]))
      columns.breakHere();
    columns.push(
      track.time[row]!,
      track.latitude[row]!,
      track.longitude[row]!,
      track.altitude[row]!,
      track.line[row]!,
    );
    for (const name of OPTIONAL_COLUMNS) {
      const value = track[name]?.[row];
      if (value !== undefined && !Number.isNaN(value)) columns.set(name, value);
    }
    last = now;
  }
  return columns.finish(first.name, first.kind);
}
