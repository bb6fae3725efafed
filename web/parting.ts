/** Files given together are parted into flights, inside the worker. */
import type { ImportedLog } from "../src/index.ts";
import type { OpenRequest, WorkerMessage } from "./messages.ts";
import { type OnRead, readEach, unreadSaid } from "./reading.ts";
import {
  briefsOfFlights,
  eastward,
  type LogTrace,
  leftOutBriefs,
  type Spot,
  sortIntoFlights,
} from "./several.ts";
import type { Sorted } from "./sorting.ts";

const MINUTE_MS = 60_000;

/** A longer step says nothing of the place in its middle. Chosen. */
const LONGEST_STEP_MS = MINUTE_MS;

/** A log boiled down to where it was and when, so that many are compared without being held in memory; null without times. */
function traceOf({ track }: ImportedLog): LogTrace | null {
  const minutes = new Map<number, Spot>();
  const order = [...track.time.keys()]
    .filter((i) => !Number.isNaN(track.time[i]!))
    .sort((a, b) => track.time[a]! - track.time[b]!);
  const spot = (i: number): Spot => [track.latitude[i]!, track.longitude[i]!];
  for (const [k, i] of order.entries()) {
    const before = order[k - 1];
    if (before === undefined) continue;
    const [from, to] = [track.time[before]!, track.time[i]!];
    const minute = Math.floor(to / MINUTE_MS);
    const mark = minute * MINUTE_MS;
    if (from >= mark || to - from > LONGEST_STEP_MS) continue;
    const share = (mark - from) / (to - from);
    minutes.set(minute, between(spot(before), spot(i), share));
  }
  const [start, end] = [order[0], order.at(-1)];
  if (start === undefined || end === undefined) return null;
  return {
    startMs: track.time[start]!,
    endMs: track.time[end]!,
    first: spot(start),
    last: spot(end),
    minutes,
  };
}

/** Straight between two points a few seconds apart; across the antimeridian too. */
function between([latA, lonA]: Spot, [latB, lonB]: Spot, share: number): Spot {
  return [latA + share * (latB - latA), lonA + share * eastward(lonA, lonB)];
}

const names = (files: readonly File[]): string[] => files.map(({ name }) => name);

/** How the files part into flights; null where all are of one, or a table must be asked about first. */
export async function partedFlights(
  { files, columns }: OpenRequest,
  { logs, briefs, standard }: Sorted<File>,
  onRead: OnRead,
): Promise<Extract<WorkerMessage, { kind: "several" }> | null> {
  if (logs.length < 2) return null;
  const traced = await readEach(logs, columns, onRead, (log, file) => ({ file, trace: traceOf(log) }));
  if (!("read" in traced)) return null;
  const { read, unread } = traced;
  const flights = sortIntoFlights(read.map(({ trace }) => trace)).map((of) => of.map((i) => read[i]!.file));
  if (flights.length < 2) return null;
  const { briefs: taken } = briefsOfFlights(flights.map(names), names(briefs));
  const filesOf = (of: readonly File[], brief: number | null) =>
    [...of, ...(brief === null ? [] : [briefs[brief]!]), ...(standard ? [standard] : [])].map((file) =>
      files.indexOf(file),
    );
  return {
    kind: "several",
    flights: flights.map((of, i) => ({ files: filesOf(of, taken[i]!) })),
    unread: unreadSaid(unread),
    leftOut: leftOutBriefs(flights.map(names), names(briefs)),
  };
}
