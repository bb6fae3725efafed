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

/** Seconds that the processor worked, collecting garbage too: what else the machine does does not count. */
const processorSeconds = (): number => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1e6;
};

/** Processor seconds of each work's best run; they take turns. */
async function bestOfEach(runs: number, ...works: readonly (() => unknown)[]): Promise<number[]> {
  const least = works.map(() => Number.POSITIVE_INFINITY);
  for (let run = 0; run < runs; run++) {
    for (const [i, work] of works.entries()) {
      const start = processorSeconds();
      await work();
      least[i] = Math.min(least[i]!, processorSeconds() - start);
    }
  }
  return least;
}

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

const TEN_THOUSAND = 10_000;

/** So many times ten thousand points as a stream, so that the file itself is never in memory; `peak` sees each piece. */
function streamed(times: number): (peak?: () => void) => Promise<void> {
  const text = new TextDecoder().decode(gpxOf(TEN_THOUSAND));
  const encoder = new TextEncoder();
  const piece = encoder.encode(text.slice(text.indexOf("   <trkpt"), text.indexOf("</trkseg>")));
  return async (peak = () => undefined) => {
    async function* stream() {
      yield encoder.encode("<gpx><trk><trkseg>\n");
      for (let k = 0; k < times; k++) {
        yield piece;
        peak();
      }
      yield encoder.encode("</trkseg></trk></gpx>");
    }
    const { track } = await readLog(stream(), "streamed.gpx");
    if (track.length !== times * TEN_THOUSAND) throw new RangeError(`invalid length: ${track.length}`);
    peak();
  };
}

/** Megabytes above what the process had before; measured first, before anything has grown it. */
async function roomOfMillion(): Promise<number> {
  const read = streamed(100);
  const base = process.memoryUsage().rss;
  let most = base;
  await read(() => {
    most = Math.max(most, process.memoryUsage().rss);
  });
  return (most - base) / 1e6;
}

async function measured(): Promise<Measured[]> {
  const above = await roomOfMillion();
  const bytes = gpxOf(100_000);
  const text = new TextDecoder().decode(bytes);
  const megabytes = bytes.length / 1e6;
  const read = () => readLog([bytes], "bench.gpx");
  const [bare, saxes, ours] = (await bestOfEach(
    9,
    () => barePass(bytes),
    () => saxesAlone(text),
    read,
  )) as [number, number, number];
  const [small, hundred, million] = (await bestOfEach(5, streamed(1), streamed(10), streamed(100))) as [
    number,
    number,
    number,
  ];
  // It takes 6 seconds and 1.5 GB a run.
  const [reference] = (await bestOfEach(2, () => gpx(new DOMParser().parseFromString(text, "text/xml")))) as [
    number,
  ];
  const { track } = await read();
  const [cleaning] = (await bestOfEach(3, () => cleanTrack(track))) as [number];
  const line = (name: string, value: number, unit: string, note: string, least?: number): Measured => ({
    name,
    value,
    unit,
    note,
    ...(least === undefined ? {} : { least }),
  });
  return [
    line(
      "read 100,000 points of GPX",
      megabytes / ours,
      "MB/s",
      `${megabytes.toFixed(1)} MB; wanted: 20 or more`,
      20,
    ),
    line(
      "the same of saxes alone",
      saxes / ours,
      "times",
      `saxes emits events at ${(megabytes / saxes).toFixed(0)} MB/s; wanted: 0.5`,
      0.5,
    ),
    line(
      "the same of a bare pass over the bytes",
      bare / ours,
      "times",
      `bare pass ${(megabytes / bare).toFixed(0)} MB/s`,
    ),
    line(
      "the same of xmldom + togeojson on the same text",
      reference / ours,
      "times",
      `reference ${(megabytes / reference).toFixed(2)} MB/s; wanted: 20`,
      20,
    ),
    line("speed at 100,000 points against 10,000", (10 * small) / hundred, "times", GROWTH, LEAST_KEPT),
    line("speed at 1,000,000 points against 10,000", (100 * small) / million, "times", GROWTH, LEAST_KEPT),
    line(
      "room under 400 MB above baseline, 1,000,000 points",
      400 - above,
      "MB",
      "peak of a process that did nothing before",
      0,
    ),
    line("clean 100,000 points", cleaning * 1000, "ms", "all rules"),
  ];
}

/** 1 = the cost of a point does not grow; a million points no longer fit the processor's caches, which costs a tenth. */
const LEAST_KEPT = 0.8;
const GROWTH = `1 = the cost of a point does not grow; wanted: ${LEAST_KEPT}`;

export default async function bench(): Promise<Line[]> {
  return (await measured()).map(({ name, value, unit, note, least }) => ({
    text: `${name}: ${value.toPrecision(3)} ${unit} (${note})`,
    ...(least === undefined ? {} : { ok: value >= least }),
  }));
}
