import fc from "fast-check";
import { gzipSync, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { droppedByCode, readLog } from "../../src/import/index.ts";
import { Tally } from "../../src/import/tally.ts";
import { MAX_UNPACKED, unpack } from "../../src/import/unpack.ts";
import { UnusableInput } from "../../src/quantity/issue.ts";
import { cleanTrack } from "../../src/track/index.ts";
import { fixtureBytes, fixtureNames } from "./fixtures.ts";

const sum = (counts: Readonly<Record<string, number>>) => Object.values(counts).reduce((a, b) => a + b, 0);

/** Reads and cleans; holds what must hold of any input. Gives the points used, or the refusal's codes. */
async function survives(bytes: Uint8Array, mayTakeMs = 1000): Promise<number | string[]> {
  const start = performance.now();
  try {
    const log = await readLog([bytes], "hostile");
    expect(log.pointsSeen - log.track.length).toBe(sum(droppedByCode(log.issues)));
    const { track, dropped, issues } = cleanTrack(log.track);
    expect(log.track.length - track.length).toBe(sum(dropped));
    for (const column of [track.latitude, track.longitude]) expect(column.every(Number.isFinite)).toBe(true);
    const timed = track.time.some((t) => !Number.isNaN(t));
    if (timed)
      for (let i = 1; i < track.length; i++) expect(track.time[i]!).toBeGreaterThan(track.time[i - 1]!);
    for (const { facts, where } of [...log.issues, ...issues]) {
      for (const value of [...Object.values(facts), ...Object.values(where)]) {
        if (typeof value === "number") expect(Number.isFinite(value)).toBe(true);
      }
    }
    return track.length;
  } catch (error) {
    if (!(error instanceof UnusableInput)) throw error;
    expect(error.issues.length).toBeGreaterThan(0);
    return error.issues.map((i) => i.code);
  } finally {
    expect(performance.now() - start).toBeLessThan(mayTakeMs);
  }
}

/** What a damaged disk, a broken transfer or a bad editor does to a file. */
const damage = fc.array(
  fc.record({
    kind: fc.constantFrom("cut", "double", "flip", "insert", "swap", "shuffle-lines"),
    at: fc.double({ min: 0, max: 1, noNaN: true }),
    length: fc.integer({ min: 1, max: 400 }),
    bytes: fc.uint8Array({ minLength: 1, maxLength: 20 }),
  }),
  { minLength: 1, maxLength: 4 },
);
type Damage = typeof damage extends fc.Arbitrary<infer T> ? T : never;

function damaged(bytes: Uint8Array, harms: Damage): Uint8Array {
  let out = [...bytes];
  for (const { kind, at, length, bytes: more } of harms) {
    const from = Math.floor(at * out.length);
    const part = out.slice(from, from + length);
    if (kind === "cut") out.splice(from, length);
    else if (kind === "double") out.splice(from, 0, ...part);
    else if (kind === "flip") out = out.map((b, i) => (i === from ? b ^ (1 << (length % 8)) : b));
    else if (kind === "insert") out.splice(from, 0, ...more);
    else if (kind === "swap") out.splice(from, length, ...part.reverse());
    else {
      const lines = new TextDecoder("latin1").decode(Uint8Array.from(out)).split("\n");
      const turned = lines.map((_, i) => lines[(i * 7 + length) % lines.length]!);
      out = [...turned.join("\n")].map((c) => c.charCodeAt(0) & 255);
    }
  }
  return Uint8Array.from(out);
}

const word = fc.constantFrom(
  ...[
    "gpx",
    "trk",
    "trkseg",
    "trkpt",
    "wpt",
    "rte",
    "rtept",
    "ele",
    "time",
    "name",
    "extensions",
    "speed",
    "fix",
  ],
  ...[
    "kml",
    "Document",
    "Placemark",
    "Track",
    "gx:Track",
    "gx:coord",
    "when",
    "LineString",
    "coordinates",
    "Point",
  ],
);
const text = fc.oneof(
  fc.constantFrom(
    "35.6",
    "172.3",
    "172.3,35.6,900",
    "172.3 35.6 900",
    "2026-10-17T09:44:10Z",
    "NaN",
    "&",
    "]]>",
    "-1",
  ),
  fc.string({ maxLength: 12 }),
);
interface Tree {
  name: string;
  lat: string;
  text: string;
  children: Tree[];
}
const tree: fc.Memo<Tree> = fc.memo((n) =>
  fc.record({
    name: word,
    lat: text,
    text,
    children: n <= 1 ? fc.constant([]) : fc.array(tree(n - 1), { maxLength: 5 }),
  }),
);
const sourceOf = ({ name, lat, text: words, children }: Tree): string =>
  `<${name} lat="${lat}" lon="172.3">${words}${children.map(sourceOf).join("")}</${name}>`;

/** Ten thousand cases in all, divided by the cost of each kind. */
const RUNS = { bytes: 3000, trees: 3000, damaged: 4000 };

describe("by construction: hostile and damaged input", () => {
  it("survives random bytes, with and without the beginning of a format", async () => {
    const starts = [
      "",
      "<gpx>",
      "<kml>",
      "HFDTE171026\nB",
      "Time,Lat,Lon\n",
      "PK\x03\x04",
      "\x1f\x8b\x08",
      "\xff\xfe<",
    ];
    await fc.assert(
      fc.asyncProperty(fc.constantFrom(...starts), fc.uint8Array({ maxLength: 600 }), async (start, rest) => {
        await survives(Uint8Array.from([...[...start].map((c) => c.charCodeAt(0)), ...rest]));
      }),
      { numRuns: RUNS.bytes },
    );
  });

  it("survives random trees of the formats' own elements", async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom("gpx", "kml"),
        fc.array(tree(4), { maxLength: 4 }),
        async (root, trees) => {
          await survives(new TextEncoder().encode(`<${root}>${trees.map(sourceOf).join("")}</${root}>`));
        },
      ),
      { numRuns: RUNS.trees },
    );
  });

  it("survives every fixture cut, doubled, flipped, mixed and shuffled", async () => {
    const names = fixtureNames().filter((name) => fixtureBytes(name).length < 8000);
    expect(names.length).toBeGreaterThan(120);
    await fc.assert(
      fc.asyncProperty(fc.constantFrom(...names), damage, async (name, harms) => {
        await survives(damaged(fixtureBytes(name), harms));
      }),
      { numRuns: RUNS.damaged },
    );
  });

  it("loses no more than the damaged points to one flipped bit in a plain log", async () => {
    const bytes = fixtureBytes("gpx-1.1-plain.gpx");
    let worst = 5;
    for (let at = 200; at < bytes.length; at++) {
      const harmed = bytes.slice();
      harmed[at]! ^= 4;
      const used = await survives(harmed);
      if (typeof used === "number") worst = Math.min(worst, used);
    }
    expect(worst).toBeGreaterThanOrEqual(1);
  });

  it("is not caught by deep nesting, long names, many attributes or many entities", async () => {
    const encode = (s: string) => new TextEncoder().encode(s);
    expect(await survives(encode(`<gpx>${"<a>".repeat(200_000)}`))).toEqual(["xml-too-deep", "no-points"]);
    await survives(encode(`<gpx><${"n".repeat(500_000)}>`));
    await survives(encode(`<gpx ${Array.from({ length: 20_000 }, (_, i) => `a${i}="1"`).join(" ")}>`));
    await survives(encode(`<gpx><name>${"&amp;".repeat(100_000)}</name>`));
    await survives(encode(`<gpx><name>${"&".repeat(300_000)}</name>`));
    await survives(encode(`<gpx>${"&".repeat(300_000)}`));
    await survives(encode(`<gpx>${"<wpt lat='1' lon='2'><name>x</name></wpt>".repeat(3000)}`), 5000);
    await survives(encode(`HFDTE171026\n${"B".repeat(300_000)}`));
    await survives(encode(`Time,Lat,Lon\n${",".repeat(300_000)}\n`));
    await survives(encode(`Time,Lat,Lon\n${'"'.repeat(60_000)}\n`));
  });

  it("stops unpacking a bomb", async () => {
    // 500 MB of spaces inside a log's element, packed a thousand to one.
    const piece = new Uint8Array(50_000_000).fill(32);
    const bombs = [gzipSync(piece, { level: 9 })];
    expect(bombs[0]!.length).toBeLessThan(100_000);
    const many = Array.from({ length: 10 }, () => bombs[0]!);
    const start = gzipSync(new TextEncoder().encode("<gpx><!-- -->"));
    const joined = new Uint8Array([...start, ...many.flatMap((b) => [...b])]);
    // the reason first
    expect((await survives(joined, 10_000)) as string[]).toEqual(["xml-too-long", "no-points"]);
    const tally = new Tally("bomb");
    let bytes = 0;
    const source = (async function* () {
      yield joined;
    })();
    for await (const piece of unpack("gzip", source, tally).bytes) bytes += piece.length;
    expect(tally.issues().map((i) => i.code)).toEqual(["archive-too-big"]);
    expect(bytes).toBeLessThanOrEqual(MAX_UNPACKED);
    expect(bytes).toBeGreaterThan(0.9 * MAX_UNPACKED);
  });

  it("keeps a name from a file as text, whatever is in it", async () => {
    const log = new TextEncoder().encode(
      '<gpx><trk><name>&lt;img src="x"&gt;</name><trkseg><trkpt lat="1" lon="2"/></trkseg></trk></gpx>',
    );
    const { track } = await readLog([zipSync({ "<b>.gpx": log })], "names.zip");
    expect(track.name).toBe('<img src="x">');
  });
});
