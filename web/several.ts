/** Which of many logs given together are of one flight, and which brief goes with which. */

/** Where a log was, and when: its ends, and its place at every whole minute. */
export interface LogTrace {
  readonly startMs: number;
  readonly endMs: number;
  readonly first: Spot;
  readonly last: Spot;
  /** By whole minutes since 1970, UTC. */
  readonly minutes: ReadonlyMap<number, Spot>;
}

/** Latitude and longitude, degrees. */
export type Spot = readonly [latitude: number, longitude: number];

/** Minutes between two files of one flight. Chosen: a recorder begins its next file within seconds; a turnround takes longer. */
const BREAK_MIN = 2;
/** NM between two recorders of one aircraft at the same moment. Chosen: the chord of half a minute in a standard turn at 150 kt lies 0.24 NM inside. */
const TOGETHER_NM = 0.3;
/** Share of the common minutes in which they must be so near: a receiver may be wrong now and then. Chosen. */
const TOGETHER_SHARE = 0.9;
/** NM an aircraft covers in the break. Chosen: 180 kt, faster than any trainer. */
const BREAK_NM = 3 * BREAK_MIN;
const NM_PER_DEGREE = 60;

/** Degrees of longitude from one to the other, the short way, east positive. */
export const eastward = (from: number, to: number): number => ((((to - from + 540) % 360) + 360) % 360) - 180;

/** Flat enough within a few miles. */
function apartNm([latA, lonA]: Spot, [latB, lonB]: Spot): number {
  const east = eastward(lonA, lonB);
  return NM_PER_DEGREE * Math.hypot(latB - latA, east * Math.cos((latA * Math.PI) / 180));
}

function areOneFlight(a: LogTrace, b: LogTrace): boolean {
  const [first, second] = a.startMs <= b.startMs ? [a, b] : [b, a];
  if (second.startMs - first.endMs > BREAK_MIN * 60_000) return false;
  const common = [...first.minutes].flatMap(([minute, spot]) => {
    const other = second.minutes.get(minute);
    return other ? [apartNm(spot, other)] : [];
  });
  if (common.length > 0) {
    return common.filter((nm) => nm <= TOGETHER_NM).length >= TOGETHER_SHARE * common.length;
  }
  return apartNm(first.last, second.first) <= BREAK_NM;
}

/** Indexes of the logs of each flight, in the order given. A log without times stands alone. */
export function sortIntoFlights(traces: readonly (LogTrace | null)[]): number[][] {
  const flights: number[][] = [];
  const order = traces.map((_, i) => i).sort((a, b) => startOf(traces[a]) - startOf(traces[b]));
  for (const i of order) {
    const trace = traces[i];
    const mine = flights.find((flight) =>
      flight.some((j) => trace && traces[j] && areOneFlight(traces[j], trace)),
    );
    if (mine) mine.push(i);
    else flights.push([i]);
  }
  return flights.map((flight) => flight.sort((a, b) => a - b)).sort((a, b) => a[0]! - b[0]!);
}

const startOf = (trace: LogTrace | null | undefined): number => trace?.startMs ?? Number.POSITIVE_INFINITY;

const stem = (name: string): string => name.replace(/\.[^.]*$/, "").toLowerCase();

export interface BriefsOfFlights {
  /** Index of the brief of each flight, or null. */
  readonly briefs: readonly (number | null)[];
  /** Briefs that no flight takes. */
  readonly unused: readonly number[];
}

/**
 * A brief goes with the log of its own name (`lesson.gpx`, `lesson.yaml`); one that has no such log, if it is the only
 * one, goes with every flight that has none yet: a lesson that all of them flew.
 */
export function briefsOfFlights(
  flights: readonly (readonly string[])[],
  names: readonly string[],
): BriefsOfFlights {
  const stems = names.map(stem);
  const own = flights.map((logs) => {
    const called = new Set(logs.map(stem));
    const at = stems.findIndex((s) => called.has(s));
    return at < 0 ? null : at;
  });
  const loose = names.flatMap((_, i) => (own.includes(i) ? [] : [i]));
  // the brief of a log that is one flight with another is no lesson of all
  const called = new Set(flights.flat().map(stem));
  const [common] = loose;
  const taken = loose.length === 1 && own.includes(null) && !called.has(stems[common!]!);
  return {
    briefs: taken ? own.map((brief) => brief ?? common!) : own,
    unused: taken ? [] : loose,
  };
}

/** A brief that no flight takes. */
export interface LeftOutBrief {
  readonly name: string;
  /** Its log is there, but is one flight with another, whose brief was taken. */
  readonly joined: {
    readonly log: string;
    readonly others: readonly string[];
    readonly brief: string;
  } | null;
}

/** Why briefs are left out, by the names of logs and briefs. */
export function leftOutBriefs(
  flights: readonly (readonly string[])[],
  names: readonly string[],
): LeftOutBrief[] {
  const { briefs, unused } = briefsOfFlights(flights, names);
  return unused.map((i) => {
    const name = names[i]!;
    const own = flights.findIndex((logs) => logs.some((log) => stem(log) === stem(name)));
    const [logs = [], brief] = [flights[own], names[briefs[own] ?? -1]];
    const log = logs.find((log) => stem(log) === stem(name));
    if (log === undefined || brief === undefined) return { name, joined: null };
    return { name, joined: { log, others: logs.filter((other) => other !== log), brief } };
  });
}
