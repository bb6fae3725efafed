/** How fast logs are read, against a bare pass over the bytes, the XML parser alone, and the reference libraries. */
import { gpx } from "@tmcw/togeojson";
import { DOMParser } from "@xmldom/xmldom";
import { SaxesParser } from "saxes";
import { readLog } from "../../src/import/index.ts";
import { cleanTrack } from "../../src/track/index.ts";
import type { Line } from "./time.ts";

interface Measured {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  readonly note: string;
  /** The least that is wanted, where something is. */
  readonly least?: number;
}

/** An invented flight of so many points, a second apart, as a GPX 1.1 file. */
export function gpxOf(points: number): Uint8Array {
  const start = Date.UTC(2026, 9, 17);
  const rows = ['<?xml version="1.0"?>\n<gpx version="1.1"><trk><name>Bench</name><trkseg>\n'];
  for (let i = 0; i < points; i++) {
    const latitude = (35.6 + 0.3 * Math.sin(i / 900)).toFixed(7);
    const longitude = (172.3 + 0.4 * Math.cos(i / 900)).toFixed(7);
    const ele = (900 + 20 * Math.sin(i / 60)).toFixed(1);
    const time = new Date(start + i * 1000).toISOString().replace(".000Z", "Z");
    rows.push(
      `   <trkpt lat="${latitude}" lon="${longitude}"><ele>${ele}</ele><time>${time}</time><hdop>0.9</hdop></trkpt>\n`,
    );
  }
  rows.push("</trkseg></trk></gpx>\n");
  return new TextEncoder().encode(rows.join(""));
}

const seconds = async (work: () => unknown): Promise<number> => {
  const start = performance.now();
  await work();
  return (performance.now() - start) / 1000;
};
/** The best of some runs: on a shared machine the others are somebody else's time. */
const best = async (work: () => unknown, runs = 3): Promise<number> => {
  let least = Number.POSITIVE_INFINITY;
  for (let run = 0; run < runs; run++) least = Math.min(least, await seconds(work));
  return least;
};

function saxesAlone(text: string): void {
  const parser = new SaxesParser();
  let events = 0;
  for (const event of ["opentag", "closetag", "text"] as const) parser.on(event, () => events++);
  for (let at = 0; at < text.length; at += 1 << 18) parser.write(text.slice(at, at + (1 << 18)));
  parser.close();
}

function barePass(bytes: Uint8Array): number {
  let sum = 0;
  for (let i = 0; i < bytes.length; i++) sum = (sum + bytes[i]!) | 0;
  return sum;
}

/** So few points for the reference: at 100,000 it needs 15 seconds and 1.5 GB. Its cost a byte does not fall with size. */
const REFERENCE_POINTS = 5000;

/** A million points as a stream of a hundred pieces, so that the file itself is never in memory. */
async function readMillion(): Promise<{ readonly speed: number; readonly above: number }> {
  const text = new TextDecoder().decode(gpxOf(10_000));
  const encoder = new TextEncoder();
  const piece = encoder.encode(text.slice(text.indexOf("   <trkpt"), text.indexOf("</trkseg>")));
  const base = process.memoryUsage().rss;
  let peak = base;
  let total = 0;
  async function* stream() {
    yield encoder.encode("<gpx><trk><trkseg>\n");
    for (let k = 0; k < 100; k++) {
      total += piece.length;
      yield piece;
      peak = Math.max(peak, process.memoryUsage().rss);
    }
    yield encoder.encode("</trkseg></trk></gpx>");
  }
  const spent = await seconds(async () => {
    const { track } = await readLog(stream(), "million.gpx");
    if (track.length !== 1_000_000) throw new RangeError(`invalid length: ${track.length}`);
  });
  return { speed: total / 1e6 / spent, above: (Math.max(peak, process.memoryUsage().rss) - base) / 1e6 };
}

async function measured(): Promise<Measured[]> {
  const bytes = gpxOf(100_000);
  const text = new TextDecoder().decode(bytes);
  const megabytes = bytes.length / 1e6;
  const small = gpxOf(10_000);
  const bare = megabytes / (await best(() => barePass(bytes)));
  const saxes = megabytes / (await best(() => saxesAlone(text)));
  const ours = megabytes / (await best(() => readLog([bytes], "bench.gpx")));
  const oursSmall = small.length / 1e6 / (await best(() => readLog([small], "bench.gpx")));
  const referenceBytes = gpxOf(REFERENCE_POINTS);
  const referenceText = new TextDecoder().decode(referenceBytes);
  const reference =
    referenceBytes.length /
    1e6 /
    (await best(() => gpx(new DOMParser().parseFromString(referenceText, "text/xml")), 1));
  const { track } = await readLog([bytes], "bench.gpx");
  const cleaning = await best(() => cleanTrack(track));
  const million = await readMillion();
  const line = (name: string, value: number, unit: string, note: string, least?: number): Measured => ({
    name,
    value,
    unit,
    note,
    ...(least === undefined ? {} : { least }),
  });
  return [
    line("read 100,000 points of GPX", ours, "MB/s", `${megabytes.toFixed(1)} MB; wanted: 20 or more`, 20),
    line(
      "the same of saxes alone",
      ours / saxes,
      "times",
      `saxes emits events at ${saxes.toFixed(0)} MB/s; wanted: 0.5`,
      0.5,
    ),
    line("the same of a bare pass over the bytes", ours / bare, "times", `bare pass ${bare.toFixed(0)} MB/s`),
    line(
      "the same of xmldom + togeojson",
      ours / reference,
      "times",
      `reference ${reference.toFixed(2)} MB/s at ${REFERENCE_POINTS} points; wanted: 20`,
      20,
    ),
    line("cost a point, 100,000 against 10,000", oursSmall / ours, "times", "1 = does not grow"),
    line("cost a point, 1,000,000 against 10,000", oursSmall / million.speed, "times", "1 = does not grow"),
    line(
      "room under 400 MB above baseline, 1,000,000 points",
      400 - million.above,
      "MB",
      "peak of the process",
      0,
    ),
    line("clean 100,000 points", cleaning * 1000, "ms", "all rules"),
  ];
}

export default async function bench(): Promise<Line[]> {
  return (await measured()).map(({ name, value, unit, note, least }) => ({
    text: `${name}: ${value.toPrecision(3)} ${unit} (${note})`,
    ...(least === undefined ? {} : { ok: value >= least }),
  }));
}
