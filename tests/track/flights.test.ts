import { describe, expect, it } from "vitest";
import { cutTrack, findFlights } from "../../src/track/index.ts";
import { flight, type Row, trackOf } from "./logs.ts";

/** Later in time, going on where `after` ended or from another place. */
const later = (rows: Row[], after: Row[], minutes: number, from = after.at(-1)!): Row[] => {
  const [first] = rows;
  const start = after.at(-1)!.time + minutes * 60_000;
  return rows.map((r) => ({
    ...r,
    time: r.time - first!.time + start,
    longitude: r.longitude - first!.longitude + from.longitude,
  }));
};
const spans = (rows: Row[]) => findFlights(trackOf(rows)).map((f) => [f.span.start, f.span.end]);

describe("by construction: two flights in one log", () => {
  const landed = [...flight(600), ...later(flight(90, 5), flight(600), 1 / 60)];

  it("cuts at a long silence on the ground, at the same field or another day", () => {
    for (const minutes of [10, 45, 1440]) {
      const rows = [...landed, ...later(flight(300), landed, minutes)];
      expect(spans(rows)).toEqual([
        [0, 690],
        [690, 990],
      ]);
    }
  });

  it("does not cut a short silence, nor one in flight", () => {
    expect(spans([...landed, ...later(flight(300), landed, 9)])).toEqual([[0, 990]]);
    // The recorder fails for 20 minutes at 100 kt: it goes on 33 NM farther.
    const cruise = flight(600);
    const far = { ...cruise.at(-1)!, longitude: cruise.at(-1)!.longitude + (100 / 3) * (1.852 / 90.4) };
    expect(spans([...cruise, ...later(flight(300), cruise, 20, far)])).toEqual([[0, 900]]);
    // It flies a round of 20 minutes unrecorded and passes the same place: fast on both sides.
    expect(spans([...cruise, ...later(flight(300), cruise, 20)])).toEqual([[0, 900]]);
  });

  it("takes a log without times for one flight, an empty one for none", () => {
    expect(spans(flight(20).map((r) => ({ ...r, time: Number.NaN })))).toEqual([[0, 20]]);
    expect(spans([])).toEqual([]);
  });

  it("tells a stay on the ground by how far it came, and gives each flight as a track", () => {
    const rows = [...landed, ...later(flight(100, 0), landed, 60)];
    const track = trackOf(rows);
    const [flown, stood] = findFlights(track);
    expect(flown!.farthest).toBeGreaterThan(16); // 600 s at 100 kt
    expect(stood!.farthest).toBe(0);
    const cut = cutTrack(track, stood!.span);
    expect(cut.length).toBe(100);
    expect(cut.line[0]).toBe(691);
    expect(cut.time.length).toBe(100);
  });
});
