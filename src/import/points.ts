/** A point list in any of its forms: a table with headings, GPX waypoints, KML placemarks. */
import { distinct, type ListedPoint, type ListedRunway } from "../geodesy/index.ts";
import { type Issue, UnusableInput } from "../quantity/issue.ts";
import { decoderFor } from "./decode.ts";
import type { ByteSource, ReadOptions, Waypoint } from "./imported.ts";
import { Lines } from "./lines.ts";
import { PointTable } from "./point-table.ts";
import { readPlaces } from "./read.ts";
import { lookOf, SNIFF_BYTES } from "./sniff.ts";
import { paced, peek } from "./source.ts";
import { Tally } from "./tally.ts";

export interface ReadPoints {
  readonly file: string;
  readonly points: readonly ListedPoint[];
  /** Landing directions; their thresholds are among the points as well. */
  readonly runways: readonly ListedRunway[];
  readonly issues: readonly Issue[];
}

/**
 * The points and runways of a list. Points of one ident at different places are all kept; the same at the same place
 * is kept once (`place-repeated`); both are counted (`ident-repeated` the former). Throws `UnusableInput` like `readPlaces`; `no-point-headings` where a table has
 * no headings of ident, latitude and longitude.
 */
export async function readPoints(
  bytes: ByteSource,
  file: string,
  options: ReadOptions = {},
): Promise<ReadPoints> {
  const { head, whole } = await peek(bytes, SNIFF_BYTES);
  const look = lookOf(head, decoderFor(head).decode(head));
  if (look === "csv") return readTable(head, whole, file, options);
  const { waypoints, routes, issues } = await readPlaces(whole, file, options);
  const onRoutes = routes.flatMap((route) => route.points);
  const tally = new Tally(file);
  for (const { ident } of [...waypoints, ...onRoutes])
    if (ident === "") tally.add("place-without-ident", "warning", NOWHERE);
  const listed = (places: readonly Waypoint[]) => places.filter(({ ident }) => ident !== "").map(pointOf);
  return finished(file, listed(waypoints), [], tally, issues, listed(onRoutes));
}

/** A waypoint of a log or a list, of which no more is known. */
export const pointOf = ({ ident, latitude, longitude, altitude }: Waypoint): ListedPoint => ({
  ident,
  latitude,
  longitude,
  kind: "waypoint",
  declination: null,
  elevation: altitude,
});

async function readTable(
  head: Uint8Array,
  whole: AsyncIterable<Uint8Array>,
  file: string,
  options: ReadOptions,
): Promise<ReadPoints> {
  const tally = new Tally(file);
  const table = new PointTable(tally);
  const lines = new Lines((text, line) => table.readLine(text, line));
  const decoder = decoderFor(head);
  for await (const piece of paced(whole, file, options)) lines.write(decoder.decode(piece));
  lines.write(decoder.end());
  lines.end();
  const refuse = (code: string): Issue => ({
    code,
    severity: "error",
    where: { file, line: 1 },
    facts: {},
  });
  if (!table.headed) throw new UnusableInput([refuse("no-point-headings")]);
  if (table.points.length === 0) throw new UnusableInput([refuse("no-places"), ...tally.issues()]);
  return finished(file, table.points, table.runways, tally, []);
}

const NOWHERE = { line: 0, column: 0, point: -1 };

/** Idents of several points at different places, each once. */
function namedTwice(points: readonly ListedPoint[]): string[] {
  const times = new Map<string, number>();
  for (const { ident } of points) {
    const same = ident.toUpperCase();
    times.set(same, (times.get(same) ?? 0) + 1);
  }
  return [...times].flatMap(([ident, n]) => (n > 1 ? [ident] : []));
}

function finished(
  file: string,
  points: readonly ListedPoint[],
  runways: readonly ListedRunway[],
  tally: Tally,
  issues: readonly Issue[],
  onRoutes: readonly ListedPoint[] = [],
): ReadPoints {
  const { kept, repeated } = distinct(points, (p) => p);
  for (const { ident } of repeated) tally.add("place-repeated", "warning", NOWHERE, { facts: { ident } });
  for (const ident of namedTwice(kept)) tally.add("ident-repeated", "warning", NOWHERE, { facts: { ident } });
  const landing = distinct(runways, (r) => r.threshold).kept;
  // a route leads over points that the list has already: that is no double
  const all = distinct([...kept, ...onRoutes], (p) => p).kept;
  return { file, points: all, runways: landing, issues: [...issues, ...tally.issues()] };
}
