/** The gate of the hold finder: a small fixed set of what `npm run accuracy -- --holds` flies in hundreds. Seeds from 5000 on are never tuned on. */
import { describe, expect, it } from "vitest";
import { holdAgainst } from "../../src/hold/index.ts";
import { turnFrom } from "../../src/quantity/angle.ts";
import { fly, scenarioNamed } from "../../src/simulator/index.ts";
import { cutTrack, findLegs, smoothTrack } from "../../src/track/index.ts";
import { falseHolds, flySeed, HoldMeter, holdsIn, NO_HOLDS, seedsFrom } from "./finding-meter.ts";

const FIRST_SEED = 5000;
/** Found in this many of the twenty flights each at most; the big run says how many in hundreds. */
const MOST: Readonly<Record<string, number>> = {
  // flown level, without a straight between two corners, they are racetracks: a known runway tells
  "narrow-circuits": 5,
};

describe("findHolds, blind, on simulated holds: any wind to 35 kt, entry, side, leg and skill, three ways of logging", () => {
  it("at the speed of light aircraft", () => {
    const meter = new HoldMeter();
    for (const seed of seedsFrom(FIRST_SEED, 60)) meter.flight("hold-any", seed);
    const r = meter.report();
    expect(r.flights).toBe(60);
    expect(r.more).toBe(0);
    expect(r.found).toBeGreaterThanOrEqual(0.96);
    expect(r.side).toBe(1);
    expect(r.laps).toBeGreaterThanOrEqual(0.95);
    expect(r.entry).toBeGreaterThanOrEqual(0.93);
    expect(r.sure).toBeGreaterThanOrEqual(0.85);
    expect(r.fixMedianNm).toBeLessThan(0.04);
    expect(r.sureCourseMedianDeg).toBeLessThan(1.2);
    expect(r.courseInside).toBeGreaterThanOrEqual(0.85);
    expect(r.leg95S).toBeLessThan(5);
    expect(r.legMedianS).toBeLessThan(1.2);
  });

  it("at the speed of jets", () => {
    const meter = new HoldMeter();
    for (const seed of seedsFrom(FIRST_SEED, 40)) meter.flight("hold-any-fast", seed);
    const r = meter.report();
    expect(r.found).toBeGreaterThanOrEqual(0.95);
    expect(r.side).toBe(1);
    expect(r.laps).toBeGreaterThanOrEqual(0.92);
    expect(r.sureCourseMedianDeg).toBeLessThan(1);
    expect(r.legMedianS).toBeLessThan(1.5);
  });

  it("in a log of plots 25 s apart with points drawn between", () => {
    let side = 0;
    let laps = 0;
    for (const seed of seedsFrom(FIRST_SEED, 30)) {
      const scenario = scenarioNamed("hold-any-fast", { logging: { every: 5, plots: 25 } });
      const { track, truth } = fly(scenario, seed);
      const [hold] = truth.truth.holds;
      const found = holdsIn(track).find((h) => h.laps[0]!.times.start < Date.parse(hold!.t1));
      if (found?.turns === hold!.turn) side++;
      if (found?.laps.length === hold!.laps.length) laps++;
    }
    expect(side).toBeGreaterThanOrEqual(27);
    expect(laps).toBeGreaterThanOrEqual(25);
  });
});

describe("findHolds where nothing was held", () => {
  it.each(NO_HOLDS)("%s", (name) => {
    expect(falseHolds(name, seedsFrom(FIRST_SEED, 20)).found).toBeLessThanOrEqual(MOST[name] ?? 0);
  });

  it("calls every racetrack of an oval circuit doubtful in a log without heights, and none a hold where its runway is known", () => {
    const seeds = seedsFrom(FIRST_SEED, 20);
    const blind = falseHolds("oval-circuits", seeds, { heights: false, hints: {} });
    expect(blind.found).toBeGreaterThan(15);
    expect(blind.maybe).toBe(blind.found);
    const runways = [{ latitude: 35.672, longitude: 172.395 }];
    expect(falseHolds("oval-circuits", seeds, { heights: false, hints: { runways } }).found).toBe(0);
  });
});

describe("what is said of a hold", () => {
  it("has no entry where the log begins in the hold", () => {
    let none = 0;
    for (const seed of seedsFrom(FIRST_SEED, 20)) {
      const { track, truth } = flySeed("hold-any", seed);
      const [hold] = truth.truth.holds;
      if (hold!.laps.length < 3) continue;
      const from = track.time.findIndex((t) => t > Date.parse(hold!.laps[0]!.outboundUtc) + 10_000);
      const [found] = holdsIn(cutTrack(track, { start: from, end: track.length }));
      expect(found?.turns).toBe(hold!.turn);
      if (found?.entry === null) none++;
    }
    expect(none).toBeGreaterThanOrEqual(6);
  });

  it("has laps whose turns and legs follow each other without a gap, in rows and in time", () => {
    for (const seed of seedsFrom(FIRST_SEED, 10))
      for (const hold of holdsIn(flySeed("hold-any", seed).track))
        for (const { outboundTurn, outbound, inboundTurn, inbound, times } of hold.laps) {
          expect([outbound.start, inboundTurn.start, inbound.start]).toEqual([
            outboundTurn.end,
            outbound.end,
            inboundTurn.end,
          ]);
          const order = [times.start, times.outbound, times.inboundTurn, times.inbound, times.end];
          expect([...order].sort((a, b) => a - b)).toEqual(order);
        }
  });

  it.each([6474, 6908])(
    "seed %i, whose fix at the other end is nearly as likely, is read from its own",
    (seed) => {
      const { track, truth } = flySeed("hold-any", seed);
      const [hold] = truth.truth.holds;
      const [found] = holdsIn(track);
      expect([found?.turns, found?.entry, found?.laps.length]).toEqual([
        hold!.turn,
        hold!.entry,
        hold!.laps.length,
      ]);
    },
  );

  it("is nearer to the truth where the fix is known, and is not another hold's", () => {
    const misses: number[] = [];
    for (const seed of seedsFrom(FIRST_SEED, 20)) {
      const { track, truth } = flySeed("hold-any", seed);
      const [hold] = truth.truth.holds;
      const motion = smoothTrack(track)!;
      const legs = findLegs(motion);
      const [latitude, longitude] = hold!.fix;
      const published = { inbound: hold!.inboundTrueDeg, turns: hold!.turn };
      const found = holdAgainst(motion, legs, { ...published, fix: { latitude, longitude } });
      if (found) misses.push(Math.abs(turnFrom(hold!.inboundTrueDeg, found.inbound)));
      const elsewhere = { latitude: latitude + 0.2, longitude };
      expect(holdAgainst(motion, legs, { ...published, fix: elsewhere })).toBeNull();
    }
    expect(misses.length).toBeGreaterThanOrEqual(19);
    expect(misses.sort((a, b) => a - b)[misses.length >> 1]).toBeLessThan(1.2);
  });
});
