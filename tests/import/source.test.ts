import { describe, expect, it } from "vitest";
import { Cancelled, readLog } from "../../src/import/index.ts";
import { fixtureBytes } from "./fixtures.ts";

/** A log of so many points, invented, as bytes. */
const longLog = (points: number): Uint8Array => {
  const rows = Array.from({ length: points }, (_, i) => {
    const time = new Date(Date.UTC(2026, 9, 17, 9) + i * 1000).toISOString();
    return `<trkpt lat="35.6" lon="${(172.3 + i * 1e-5).toFixed(6)}"><ele>900</ele><time>${time}</time></trkpt>`;
  });
  return new TextEncoder().encode(`<gpx><trk><trkseg>${rows.join("\n")}</trkseg></trk></gpx>`);
};

describe("by construction: reading as a stream", () => {
  it("tells its progress up to the last byte", async () => {
    const bytes = longLog(30_000);
    const told: number[] = [];
    const { track } = await readLog([bytes], "long", { onProgress: (n) => told.push(n) });
    expect(track.length).toBe(30_000);
    expect(told.length).toBeGreaterThanOrEqual(3);
    expect(told).toEqual([...told].sort((a, b) => a - b));
    expect(told.at(-1)).toBe(bytes.length);
  });

  it("stops when asked to, with an error of its own", async () => {
    const signal = { aborted: false };
    const reading = readLog([longLog(30_000)], "long", { signal, onProgress: () => (signal.aborted = true) });
    await expect(reading).rejects.toThrow(Cancelled);
  });

  it("lets other work in while it reads", async () => {
    let turns = 0;
    const timer = setInterval(() => turns++, 1);
    await readLog([longLog(40_000)], "long", { signal: { aborted: false } });
    clearInterval(timer);
    expect(turns).toBeGreaterThanOrEqual(2);
  });

  it("reads a web stream as it comes from a File, and closes a source that it does not finish", async () => {
    const bytes = fixtureBytes("gpx-1.1-plain.gpx");
    const stream = new Blob([bytes as BlobPart]).stream();
    expect((await readLog(stream as unknown as AsyncIterable<Uint8Array>, "stream")).track.length).toBe(5);
    let closed = false;
    async function* endless() {
      try {
        yield new TextEncoder().encode(`<list>${" ".repeat(4000)}`);
        for (;;) yield new TextEncoder().encode("<item/>");
      } finally {
        closed = true;
      }
    }
    await expect(readLog(endless(), "endless")).rejects.toThrow("xml-not-a-log");
    expect(closed).toBe(true);
  });

  it("skips empty pieces and refuses a source without any", async () => {
    const empty = new Uint8Array();
    expect((await readLog([empty, fixtureBytes("gpx-1.1-plain.gpx"), empty], "plain")).track.length).toBe(5);
    await expect(readLog([], "none")).rejects.toThrow("empty-file");
    await expect(readLog([empty], "none")).rejects.toThrow("empty-file");
  });

  it("stops at a text that never ends", async () => {
    const start = new TextEncoder().encode("<gpx><trk><trkseg><trkpt lat='1' lon='2'/><!--");
    const filler = new Uint8Array(1 << 20).fill(97);
    const { issues, track } = await readLog([start, ...Array.from({ length: 40 }, () => filler)], "long");
    expect(issues.map((i) => i.code)).toContain("xml-too-long");
    expect(track.length).toBe(1);
  });
});
