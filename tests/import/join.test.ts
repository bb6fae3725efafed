import { describe, expect, it } from "vitest";
import { droppedByCode, joinLogs, readLog } from "../../src/import/index.ts";
import { cleanTrack } from "../../src/track/index.ts";
import { fixtureBytes } from "./fixtures.ts";

const START = Date.UTC(2026, 9, 17, 9, 44, 10);
/** Rows of one second from `from` to `to`, as a log of its own, offset north to tell it from others. */
const part = (file: string, from: number, to: number, north = 0, step = 1) => {
  const rows: string[] = [];
  for (let i = from; i < to; i += step) {
    const time = new Date(START + i * 1000).toISOString();
    rows.push(
      `<trkpt lat="${35.6 + north}" lon="${172.3 + i * 5e-4}"><time>${time}</time><hdop>1</hdop></trkpt>`,
    );
  }
  const text = `<gpx><trk><name>${file}</name><trkseg>${rows.join("\n")}</trkseg></trk></gpx>`;
  return readLog([new TextEncoder().encode(text)], file);
};
const seconds = (time: Float64Array) => [...time].map((t) => (t - START) / 1000);

describe("by construction: several files of one flight", () => {
  it("puts files in the order of time, whatever order they are given in", async () => {
    const [a, b] = [await part("a", 0, 100), await part("b", 100, 200)];
    const joined = joinLogs([b, a]);
    expect(seconds(joined.track.time)).toEqual(Array.from({ length: 200 }, (_, i) => i));
    expect([joined.track.segment[99], joined.track.segment[100]]).toEqual([0, 1]);
    expect(joined.file).toBe("b + a");
    expect(joined.pointsSeen).toBe(200);
    expect(cleanTrack(joined.track).track.length).toBe(200);
  });

  it("takes an overlap once and counts the rest", async () => {
    const [a, b] = [await part("a", 0, 100), await part("b", 50, 200, 1e-5)];
    const joined = joinLogs([a, b]);
    expect(joined.track.length).toBe(200);
    expect(droppedByCode(joined.issues)).toEqual({ "recorded-twice": 50 });
    expect(joined.pointsSeen - joined.track.length).toBe(50);
    expect(joined.track.hdop!.every((h) => h === 1)).toBe(true);
  });

  it("fills the gap of one recorder by the other", async () => {
    const whole = await part("whole", 100, 300, 1e-5);
    const gappy = joinLogs([await part("a", 0, 150), await part("a2", 250, 400)]);
    const joined = joinLogs([gappy, whole]);
    const times = seconds(joined.track.time);
    expect(times).toEqual([...times].sort((x, y) => x - y));
    expect(times).toEqual(Array.from({ length: 400 }, (_, i) => i));
    expect([149, 150, 249, 250].map((row) => joined.track.latitude[row]! > 35.600005)).toEqual([
      false,
      true,
      true,
      false,
    ]);
  });

  it("is the file itself for the same file twice", async () => {
    const bytes = fixtureBytes("gpx-1.1-plain.gpx");
    const [one, two] = [await readLog([bytes], "one"), await readLog([bytes], "two")];
    expect([...joinLogs([one, two]).track.longitude]).toEqual([...one.track.longitude]);
    expect(joinLogs([one])).toBe(one);
  });

  it("leaves out points without time and says so, and refuses no logs at all", async () => {
    const untimed = await readLog([fixtureBytes("gpx-no-times.gpx")], "untimed");
    const joined = joinLogs([await part("a", 0, 10), untimed]);
    expect(droppedByCode(joined.issues)).toEqual({ "untimed-not-joined": 5 });
    expect(joined.track.length).toBe(10);
    expect(() => joinLogs([])).toThrow(RangeError);
  });
});
