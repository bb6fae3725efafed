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
 * is kept once (`place-repeated`). Throws `UnusableInput` like `readPlaces`; `no-point-headings` where a table has
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
  const places = [...waypoints, ...routes.flatMap((route) => route.points)];
  const tally = new Tally(file);
  const named = places.filter(({ ident }) => ident !== "");
  for (const _ of places.slice(named.length))
    tally.add("place-without-ident", "warning", { line: 0, column: 0, point: -1 });
  return finished(file, named.map(pointOf), [], tally, issues);
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

function finished(
  file: string,
  points: readonly ListedPoint[],
  runways: readonly ListedRunway[],
  tally: Tally,
  issues: readonly Issue[],
): ReadPoints {
  const { kept, repeated } = distinct(points, (p) => p);
  for (const { ident } of repeated)
    tally.add("place-repeated", "note", { line: 0, column: 0, point: -1 }, { facts: { ident } });
  const landing = distinct(runways, (r) => r.threshold).kept;
  return { file, points: kept, runways: landing, issues: [...issues, ...tally.issues()] };
}
