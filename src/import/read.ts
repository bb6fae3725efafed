/** Reads a log of any known format, told by its content, from bytes to columns. */
import { type Issue, UnusableInput } from "../quantity/issue.ts";
import { readArchive } from "./archive.ts";
import { CsvReader } from "./csv.ts";
import { decoderFor } from "./decode.ts";
import { GpxReader } from "./gpx.ts";
import { IgcReader } from "./igc.ts";
import type { ByteSource, ImportedLog, ReadOptions } from "./imported.ts";
import { KmlReader } from "./kml.ts";
import { Lines } from "./lines.ts";
import type { LineLogReader, XmlLogReader } from "./log-reader.ts";
import { lookOf, SNIFF_BYTES } from "./sniff.ts";
import { paced, peek } from "./source.ts";
import { Tally } from "./tally.ts";
import { XmlStream } from "./xml-stream.ts";

/**
 * The log that the bytes hold. Reading is streamed: memory grows with the points, not with the bytes.
 * What cannot be read is left out, counted and said in `issues`: the sum of their `facts.dropped` is
 * `pointsSeen` less the track's length (`droppedByCode`). Throws `UnusableInput` where no point is left
 * (`empty-file`, `unknown-format`, `xml-not-a-log`, `no-headings`, `no-points`), and `Cancelled` when asked to stop.
 */
export async function readLog(
  bytes: ByteSource,
  file: string,
  options: ReadOptions = {},
): Promise<ImportedLog> {
  const log = await readContent(bytes, file, options, hasPoints);
  if (hasPoints(log)) return log;
  // Where the columns of a table are not known, nothing was looked for.
  if (log.issues.some(({ code }) => code === "no-headings")) throw new UnusableInput(log.issues);
  const facts = { seen: log.pointsSeen, waypoints: log.waypoints.length, routes: log.routes.length };
  // what stopped the reading is why no point was found
  const isReason = ({ severity }: Issue) => severity === "error";
  throw new UnusableInput([
    ...log.issues.filter(isReason),
    { code: "no-points", severity: "error", where: { file, line: 1 }, facts },
    ...log.issues.filter((issue) => !isReason(issue)),
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
  const { waypoints, routes, issues } = await readContent(bytes, file, options, hasPlaces);
  if (hasPlaces({ waypoints, routes })) return { file, waypoints, routes, issues };
  const none: Issue = { code: "no-places", severity: "error", where: { file, line: 1 }, facts: {} };
  throw new UnusableInput([none, ...issues]);
}

type Wanted = (log: ImportedLog) => boolean;
const hasPoints: Wanted = (log) => log.track.length > 0;
const hasPlaces = ({ waypoints, routes }: Pick<ImportedLog, "waypoints" | "routes">): boolean =>
  waypoints.length + routes.length > 0;

async function readContent(
  bytes: ByteSource,
  file: string,
  options: ReadOptions,
  isWanted: Wanted,
  inArchive = false,
): Promise<ImportedLog> {
  const { head, whole } = await peek(bytes, SNIFF_BYTES);
  const start = decoderFor(head).decode(head);
  const look = lookOf(head, start, options.csvColumns !== undefined);
  const refuse = (code: string, facts: Issue["facts"]): never => {
    throw new UnusableInput([{ code, severity: "error", where: { file, line: 1, column: 1 }, facts }]);
  };
  if (look === "web-page") refuse("web-page", {});
  if (look === "empty") refuse("empty-file", { bytes: head.length });
  if ((look === "zip" || look === "gzip") && !inArchive) {
    const { onProgress: _, ...inner } = options; // progress counts the packed bytes
    const readEntry = (entry: AsyncIterable<Uint8Array>) => readContent(entry, file, inner, isWanted, true);
    return readArchive(look, paced(whole, file, options), file, readEntry, isWanted);
  }
  if (look === "igc") return readLines(head, whole, file, options, (tally) => new IgcReader(tally));
  if (look === "csv") {
    return readLines(head, whole, file, options, (tally) => new CsvReader(tally, options.csvColumns));
  }
  if (look !== "xml")
    refuse("unknown-format", { look, begins: look === "text" ? start.trim().slice(0, 40) : "" });
  return readXml(head, whole, file, options);
}

/** Text of the whole file, piece by piece; what of its encoding is wrong is told. */
async function* decoded(
  head: Uint8Array,
  whole: AsyncIterable<Uint8Array>,
  file: string,
  options: ReadOptions,
  tally: Tally,
): AsyncGenerator<string> {
  const decoder = decoderFor(head);
  if (decoder.unknownName !== null) {
    const facts = { name: decoder.unknownName };
    tally.add("unknown-encoding", "warning", { line: 1, column: 1, point: -1 }, { facts });
  }
  const checked = (text: string): string => {
    if (text.includes("\ufffd")) {
      const facts = { encoding: decoder.encoding };
      tally.add("undecodable-bytes", "note", { line: 0, column: 0, point: -1 }, { facts });
    }
    return text;
  };
  for await (const piece of paced(whole, file, options)) yield checked(decoder.decode(piece));
  yield checked(decoder.end());
}

async function readLines(
  head: Uint8Array,
  whole: AsyncIterable<Uint8Array>,
  file: string,
  options: ReadOptions,
  readerFor: (tally: Tally) => LineLogReader,
): Promise<ImportedLog> {
  const tally = new Tally(file);
  const reader = readerFor(tally);
  const lines = new Lines((text, line) => reader.readLine(text, line));
  for await (const text of decoded(head, whole, file, options, tally)) lines.write(text);
  lines.end();
  if (lines.cut > 0)
    tally.add("line-too-long", "warning", { line: 0, column: 0, point: -1 }, { facts: { lines: lines.cut } });
  const found = await reader.finish(file);
  return { file, ...found, issues: tally.issues() };
}

async function readXml(
  head: Uint8Array,
  whole: AsyncIterable<Uint8Array>,
  file: string,
  options: ReadOptions,
): Promise<ImportedLog> {
  const tally = new Tally(file);
  let reader: XmlLogReader | null = null;
  const xml = new XmlStream(tally, (root, at) => {
    reader = root === "gpx" ? new GpxReader(at, tally) : root === "kml" ? new KmlReader(at, tally) : null;
    return reader;
  });
  for await (const text of decoded(head, whole, file, options, tally)) {
    xml.write(text);
    if (xml.stopped || (xml.root !== null && reader === null)) break;
  }
  if (reader === null) {
    const where = { file, line: xml.line, column: 1 };
    const root = xml.root;
    const code = root === null ? "unknown-format" : "xml-not-a-log";
    const facts = root === null ? { look: "xml" } : { root: root.slice(0, 40) };
    throw new UnusableInput([{ code, severity: "error", where, facts }, ...tally.issues()]);
  }
  xml.end();
  const found = (reader as XmlLogReader).finish(file);
  return { file, ...found, issues: tally.issues() };
}
