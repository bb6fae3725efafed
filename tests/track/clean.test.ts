import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { cleanTrack } from "../../src/track/index.ts";
import { flight, type Row, trackOf } from "./logs.ts";

const codes = (rows: Row[]) => cleanTrack(trackOf(rows)).issues.map((i) => i.code);

describe("by construction: flights with known faults", () => {
  it.each([
    ["a trainer each second", 90, 1],
    ["a trainer five times a second", 90, 0.2],
    ["a trainer each five seconds", 120, 5],
    ["a jet each second", 480, 1],
    ["a jet each 30 seconds", 480, 30],
    ["standing", 0, 1],
    ["a walk", 3, 1],
  ])("leaves all of %s, with 10 m of noise", (_, knots, intervalS) => {
    let seed = 1;
    const noise = () => {
      seed = (seed * 48271) % 2147483647; // Park and Miller 1988, minimal standard
      return ((seed / 2147483647 - 0.5) * 2 * 10) / 111_000;
    };
    const rows = flight(600, knots, intervalS).map((r) => ({
      ...r,
      latitude: r.latitude + noise(),
      longitude: r.longitude + noise(),
    }));
    const track = trackOf(rows);
    const cleaned = cleanTrack(track);
    expect(cleaned.dropped).toEqual({});
    expect(cleaned.track).toBe(track);
  });

  it("leaves out just the wrong points among many, in any mixture, and moves none", () => {
    const fault = fc.record({
      at: fc.integer({ min: 20, max: 198 }),
      kind: fc.constantFrom("jump", "zero", "range", "back"),
    });
    fc.assert(
      fc.property(fc.uniqueArray(fault, { maxLength: 12, selector: (f) => f.at }), (faults) => {
        const good = flight(200);
        const rows = good.map((r) => ({ ...r }));
        for (const { at, kind } of faults) {
          const row = rows[at]!;
          if (kind === "jump") row.latitude += 0.5;
          else if (kind === "zero") row.latitude = row.longitude = 0;
          else if (kind === "range") row.latitude = 91;
          else row.time -= 3_600_000;
        }
        const { track, dropped } = cleanTrack(trackOf(rows));
        const bad = new Set(faults.map((f) => f.at));
        expect([...track.line]).toEqual(good.map((_, i) => i + 1).filter((line) => !bad.has(line - 1)));
        expect(Object.values(dropped).reduce((a, b) => a + b, 0)).toBe(bad.size);
        track.line.forEach((line, i) => {
          const row = good[line - 1]!;
          expect([track.time[i], track.latitude[i], track.longitude[i]]).toEqual([
            row.time,
            row.latitude,
            row.longitude,
          ]);
          expect(track.hdop![i]).toBe((line - 1) / 10);
        });
      }),
      { numRuns: 200 },
    );
  });

  it("loses one point to one wrong date, late or early, not the rest of the flight", () => {
    for (const shift of [86_400_000, -86_400_000, 1500, -1500]) {
      const rows = flight(100);
      rows[40]!.time += shift;
      const { track, dropped } = cleanTrack(trackOf(rows));
      expect(track.length).toBe(99);
      expect(dropped).toEqual({ "time-going-back": 1 });
    }
  });

  it("keeps the first of points with one time", () => {
    const rows = flight(10);
    rows[4]!.time = rows[5]!.time = rows[3]!.time;
    const { track, dropped } = cleanTrack(trackOf(rows));
    expect([...track.line]).toEqual([1, 2, 3, 4, 7, 8, 9, 10]);
    expect(dropped).toEqual({ "duplicate-time": 2 });
  });

  it("leaves out a false start before the first good fix, and keeps two long runs apart", () => {
    const start = flight(100).map((r, i) => (i < 5 ? { ...r, latitude: 36.6 } : r));
    expect(cleanTrack(trackOf(start)).dropped).toEqual({ "impossible-jump": 5 });
    const step = flight(100).map((r, i) => (i < 50 ? { ...r, latitude: 36.6 } : r));
    const { track, dropped, issues } = cleanTrack(trackOf(step));
    expect(dropped).toEqual({});
    expect(issues.map((i) => [i.code, i.where.point])).toEqual([["position-step", 50]]);
    expect([track.segment[49], track.segment[50], track.segment[99]]).toEqual([0, 1, 1]);
  });

  it("accepts a long way after a long silence, and notes the gap", () => {
    const rows = flight(400).filter((_, i) => i < 50 || i > 350);
    const { dropped, issues } = cleanTrack(trackOf(rows));
    expect(dropped).toEqual({});
    expect(issues).toEqual([
      {
        code: "gap-in-log",
        severity: "note",
        where: { line: 51, point: 50 },
        facts: { limitS: 15, longestS: 302, count: 1, lines: "51" },
      },
    ]);
  });

  it("crosses the antimeridian, a pole's neighbourhood and zero-zero without a fault", () => {
    const shift = (longitude: number, latitude: number) =>
      flight(200).map((r) => ({
        ...r,
        latitude: r.latitude - 35.6 + latitude,
        longitude: ((r.longitude - 172.3 + longitude + 540) % 360) - 180,
      }));
    expect(codes(shift(179.95, 35.6))).toEqual([]);
    expect(codes(shift(0, 89.5))).toEqual([]);
    const overZero = shift(-0.05, 0).map((r, i) => (i === 90 ? { ...r, longitude: 0 } : r));
    expect(codes(overZero)).toEqual([]);
  });

  it("passes a log without times as geometry", () => {
    const rows = flight(20).map((r) => ({ ...r, time: Number.NaN }));
    rows[3]!.latitude = 99;
    const { track, dropped, issues } = cleanTrack(trackOf(rows));
    expect(track.length).toBe(19);
    expect(dropped).toEqual({ "out-of-range": 1 });
    expect(issues.map((i) => i.code)).toEqual(["out-of-range", "no-times"]);
  });

  it("sets a few stray times aside, and drops a few untimed points", () => {
    const few = flight(100).map((r, i) => (i % 20 === 0 ? r : { ...r, time: Number.NaN }));
    const asGeometry = cleanTrack(trackOf(few));
    expect(asGeometry.track.length).toBe(100);
    expect([...asGeometry.track.time].every(Number.isNaN)).toBe(true);
    expect(asGeometry.issues.map((i) => [i.code, i.facts.count])).toEqual([["too-few-times", 5]]);
    const most = flight(100).map((r, i) => (i % 20 === 0 ? { ...r, time: Number.NaN } : r));
    expect(cleanTrack(trackOf(most)).dropped).toEqual({ "point-without-time": 5 });
  });

  it("says when nothing is left, and takes an empty track", () => {
    const rows = flight(3).map((r) => ({ ...r, latitude: Number.NaN }));
    const { track, issues } = cleanTrack(trackOf(rows));
    expect(track.length).toBe(0);
    expect(issues[0]!.code).toBe("no-usable-points");
    expect(codes([])).toEqual(["no-usable-points"]);
  });

  it("does not change the track that it is given", () => {
    const rows = flight(100);
    rows[50]!.latitude = 36;
    const track = trackOf(rows);
    const before = structuredClone(track);
    cleanTrack(track);
    expect(track).toEqual(before);
  });
});

describe("by construction: heights, freezes and standing", () => {
  const heightCodes = (rows: Row[]) => {
    const { issues, track, dropped } = cleanTrack(trackOf(rows));
    expect(dropped).toEqual({});
    expect(track.length).toBe(rows.length);
    return {
      codes: issues.map((i) => i.code),
      unknown: [...track.altitude].flatMap((h, i) => (Number.isNaN(h) ? [i] : [])),
    };
  };

  it("sets aside a spike in height and keeps the point", () => {
    const rows = flight(60);
    rows[30]!.altitude = 5000;
    expect(heightCodes(rows)).toEqual({ codes: ["height-jump"], unknown: [30] });
  });

  it("sets aside heights that no aircraft has, timed or not", () => {
    const rows = flight(60);
    rows[30]!.altitude = -32768;
    rows[31]!.altitude = 327_680;
    expect(heightCodes(rows)).toEqual({ codes: ["impossible-height"], unknown: [30, 31] });
    const untimed = rows.map((r) => ({ ...r, time: Number.NaN }));
    expect(heightCodes(untimed)).toEqual({ codes: ["impossible-height", "no-times"], unknown: [30, 31] });
  });

  it("leaves steep climbs, descents of 8,000 ft/min, noise and a lasting step in height alone", () => {
    for (const fpm of [3000, -8000, 8000]) {
      const rows = flight(60).map((r, i) => ({ ...r, altitude: 12_000 + (fpm / 60) * i + (i % 2) * 100 }));
      expect(heightCodes(rows)).toEqual({ codes: [], unknown: [] });
    }
    const step = flight(80).map((r, i) => ({ ...r, altitude: i < 40 ? 3000 : 3400 }));
    expect(heightCodes(step)).toEqual({ codes: [], unknown: [] });
  });

  it.each([[1], [2], [0.2], [5]])(
    "leaves out a freeze of ten points at %s s, keeping its first",
    (intervalS) => {
      const good = flight(100, 100, intervalS);
      const rows = good.map((r, i) => (i > 40 && i <= 50 ? { ...r, longitude: good[40]!.longitude } : r));
      const { track, dropped } = cleanTrack(trackOf(rows));
      expect(dropped).toEqual({ "frozen-position": 10 });
      expect(track.line[40]).toBe(41);
      expect(track.line[41]).toBe(52);
    },
  );

  it("leaves out a position frozen until the log's end, and one frozen before the first true fix", () => {
    const good = flight(100);
    const end = good.map((r, i) => (i > 60 ? { ...r, longitude: good[60]!.longitude } : r));
    expect(cleanTrack(trackOf(end)).dropped).toEqual({ "frozen-position": 39 });
    const start = good.map((r, i) => (i < 40 ? { ...r, longitude: good[40]!.longitude } : r));
    const { track, dropped } = cleanTrack(trackOf(start));
    expect(dropped).toEqual({ "frozen-position": 40 });
    expect(track.line[0]).toBe(41);
  });

  it("leaves a stop on the ground alone", () => {
    // Rolls at 20 kt, stands for half a minute at exactly one place, rolls on.
    const rolling = flight(130, 20);
    const rows = rolling.map((r, i) => ({
      ...r,
      longitude: rolling[i < 60 ? i : Math.max(60, i - 30)]!.longitude,
    }));
    expect(codes(rows)).toEqual([]);
  });

  it("leaves out standing before and after, but not a short stop, nor a log that never moves", () => {
    const stand = (seconds: number, at: Row, from: number): Row[] =>
      Array.from({ length: seconds }, (_, i) => ({
        ...at,
        latitude: at.latitude + (i % 3) * 5e-5,
        time: from + i * 1000,
      }));
    const fly = flight(600);
    const first = fly[0]!;
    const last = fly[599]!;
    const rows = (before: number, after: number) => [
      ...stand(before, first, first.time - before * 1000),
      ...fly,
      ...stand(after, last, last.time + 1000),
    ];
    // 75 m are left within 2 s at 100 kt; 30 s before that stay.
    const { dropped, track } = cleanTrack(trackOf(rows(300, 200)));
    expect(Object.keys(dropped)).toEqual(["ground-noise"]);
    expect(track.length).toBeGreaterThanOrEqual(600 + 2 * 27);
    expect(track.length).toBeLessThanOrEqual(600 + 2 * 31);
    expect(cleanTrack(trackOf(rows(100, 100))).dropped).toEqual({});
    expect(cleanTrack(trackOf(stand(600, first, first.time))).dropped).toEqual({});
  });
});
