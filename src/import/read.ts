/** Reads a log of any known format, told by its content, from bytes to columns. */
import { type Issue, UnusableInput } from "../quantity/issue.ts";
import { GrowingColumns } from "./columns.ts";
import { decoderFor } from "./decode.ts";
import { GpxReader } from "./gpx.ts";
import type { ByteSource, ImportedLog, ReadOptions, Route, Waypoint } from "./imported.ts";
import { PlaceCutter } from "./places.ts";
import { lookOf, SNIFF_BYTES } from "./sniff.ts";
import { paced, peek } from "./source.ts";
import { Tally } from "./tally.ts";
import { XmlStream } from "./xml-stream.ts";

/** Everything in a file, usable as a log or not. */
interface Content {
  readonly log: ImportedLog;
  readonly waypoints: readonly Waypoint[];
  readonly routes: readonly Route[];
}

/**
 * The log that the bytes hold. Reading is streamed: memory grows with the points, not with the bytes.
 * What cannot be read is left out, counted and said in `issues`: the sum of their `facts.dropped` is
 * `pointsSeen` less the track's length (`droppedByCode`). Throws `UnusableInput` where no point is left
 * (`empty-file`, `unknown-format`, `xml-not-a-log`, `no-points`), and `Cancelled` when asked to stop.
 */
export async function readLog(
  bytes: ByteSource,
  file: string,
  options: ReadOptions = {},
): Promise<ImportedLog> {
  const { log } = await readContent(bytes, file, options);
  if (log.track.length > 0) return log;
  const facts = { seen: log.pointsSeen, waypoints: log.waypoints.length, routes: log.routes.length };
  throw new UnusableInput([
    { code: "no-points", severity: "error", where: { file, line: 1 }, facts },
    ...log.issues,
  ]);
}

/**
 * The named places and routes of a file, with or without a recorded flight in it: a brief may be nothing else.
 * Throws `UnusableInput` like `readLog`, and `no-places` where there is neither a place nor a route.
 */
export async function readPlaces(
  bytes: ByteSource,
  file: string,
  options: ReadOptions = {},
): Promise<Pick<ImportedLog, "file" | "waypoints" | "routes" | "issues">> {
  const { log } = await readContent(bytes, file, options);
  const { waypoints, routes, issues } = log;
  if (waypoints.length + routes.length > 0) return { file, waypoints, routes, issues };
  const none: Issue = { code: "no-places", severity: "error", where: { file, line: 1 }, facts: {} };
  throw new UnusableInput([none, ...issues]);
}

async function readContent(bytes: ByteSource, file: string, options: ReadOptions): Promise<Content> {
  const { head, whole } = await peek(bytes, SNIFF_BYTES);
  const start = decoderFor(head).decode(head);
  const look = lookOf(head, start);
  const refuse = (code: string, facts: Issue["facts"]): never => {
    throw new UnusableInput([{ code, severity: "error", where: { file, line: 1, column: 1 }, facts }]);
  };
  if (look === "empty") refuse("empty-file", { bytes: head.length });
  if (look !== "xml")
    refuse("unknown-format", { look, begins: look === "binary" ? "" : start.trim().slice(0, 40) });
  return readXml(head, whole, file, options);
}

async function readXml(
  head: Uint8Array,
  whole: AsyncIterable<Uint8Array>,
  file: string,
  options: ReadOptions,
): Promise<Content> {
  const tally = new Tally(file);
  const columns = new GrowingColumns();
  const places = new PlaceCutter(tally);
  const decoder = decoderFor(head);
  let reader: GpxReader | null = null;
  const xml = new XmlStream(tally, (root, at) => {
    if (root === "gpx") reader = new GpxReader(at, columns, places, tally);
    return reader;
  });
  const nowhere = { line: 0, column: 0, point: -1 };
  if (decoder.unknownName !== null) {
    tally.add(
      "unknown-encoding",
      "warning",
      { line: 1, column: 1, point: -1 },
      { facts: { name: decoder.unknownName } },
    );
  }
  const write = (text: string): void => {
    if (text.includes("\ufffd"))
      tally.add("undecodable-bytes", "note", nowhere, { facts: { encoding: decoder.encoding } });
    xml.write(text);
  };
  for await (const piece of paced(whole, file, options)) {
    write(decoder.decode(piece));
    if (xml.stopped || (xml.root !== null && reader === null)) break;
  }
  if (!xml.stopped) write(decoder.end());
  if (reader === null) {
    const where = { file, line: xml.line, column: 1 };
    const root = xml.root;
    const code = root === null ? "unknown-format" : "xml-not-a-log";
    const facts = root === null ? { look: "xml" } : { root: root.slice(0, 40) };
    throw new UnusableInput([{ code, severity: "error", where, facts }, ...tally.issues()]);
  }
  xml.end();
  const { name, pointsSeen } = reader as GpxReader;
  const found = places.finish();
  const track = columns.finish(name === "" ? file : name, "gpx");
  return { log: { file, track, ...found, pointsSeen, issues: tally.issues() }, ...found };
}
