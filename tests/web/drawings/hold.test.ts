/** Hands and scales of the drawings of holds, on an invented hold flown second by second. */
import { describe, expect, it } from "vitest";
import { factorRows, timeRows } from "../../../web/drawings/AskedFlown.tsx";
import {
  apart,
  farEnd,
  flownLines,
  holdFrame,
  outboundMiddle,
  placeIn,
} from "../../../web/drawings/holdGeometry.ts";
import { worstRollOut } from "../../../web/drawings/holdLaps.ts";
import { holdMoment } from "../../../web/drawings/holdMoment.ts";
import { rollOuts } from "../../../web/drawings/RollOutMark.tsx";
import { fixedScales, PX_PER_MM } from "../../../web/drawings/scale.ts";
import { near } from "../../support/near.ts";
import { inventHold, THREE_LAPS } from "./invented-hold.ts";

const { exercise, series } = inventHold(THREE_LAPS);
const facts = exercise.facts!;
const HOME = { zoom: 1, x: 0, y: 0 };
const ROOM = { turns: "right", columnPx: 720, fixedMm: 30, abovePx: 100 } as const;

describe("plan of a hold", () => {
  it("is course-up: before the fix lies below it, right of the inbound course lies to its right", () => {
    const frame = holdFrame([series], ROOM);
    const place = placeIn(frame, HOME);
    const [fixX, fixY] = place(0, 0);
    expect(place(-1, 0)[1]).toBeGreaterThan(fixY);
    expect(place(0, 1)[0]).toBeGreaterThan(fixX);
    // the look: 1 NM = 30 mm
    near(place(-1, 0)[1] - fixY, 30 * PX_PER_MM, 1e-9, "px");
  });

  it("keeps the fixed scale while it fits, takes round smaller steps where it does not, and holds every point", () => {
    expect(fixedScales(false).mmPerMileOfHold).toBe(30);
    expect(holdFrame([series], ROOM).mmPerMile).toBe(30);
    const fast = inventHold({ ...THREE_LAPS, tas: 250, legS: 90 }).series;
    const frame = holdFrame([fast], ROOM);
    expect([20, 15, 10, 7.5]).toContain(frame.mmPerMile);
    const place = placeIn(frame, HOME);
    for (let i = 0; i < fast.alongNm.length; i++) {
      const [x, y] = place(fast.alongNm[i]!, fast.crossTrackNm[i]!);
      expect(x >= 0 && x <= frame.width && y >= 0 && y <= frame.height).toBe(true);
    }
  });

  it("has its names on the side where nobody should fly: left of the fix for right turns, right of it for left turns", () => {
    const left = inventHold({ ...THREE_LAPS, turns: "left", wind: { from: 300, speed: 10 } }).series;
    const right = holdFrame([series], ROOM);
    const mirrored = holdFrame([left], { ...ROOM, turns: "left" });
    expect(right.fixX).toBeGreaterThan(100);
    expect(mirrored.width - mirrored.fixX).toBeGreaterThan(100);
  });

  it("draws each lap as a line of its own that joins the next, and the entry apart", () => {
    const { laps, others } = flownLines(series);
    expect(laps).toHaveLength(3);
    expect(others).toHaveLength(1);
    expect(laps[0]!.alongNm[laps[0]!.alongNm.length - 1]).toBe(laps[1]!.alongNm[0]);
    for (const lap of laps) {
      const [along, across] = farEnd(lap);
      expect(along).toBe(Math.min(...Array.from(lap.alongNm)));
      expect(across).toBeGreaterThan(0); // right turns
      const { at, before } = outboundMiddle(lap)!;
      expect(at[0]).toBeLessThan(before[0]); // outbound goes down the page
    }
  });

  it("moves numbers apart without changing their order", () => {
    expect(apart([10, 12, 40], 13)).toEqual([10, 23, 40]);
    expect(apart([12, 10, 11], 13)).toEqual([36, 10, 23]);
  });

  it("dimensions the lap that missed most: the first, flown parallel", () => {
    expect(worstRollOut(facts)).toBe(0);
    expect(worstRollOut({ laps: facts.laps.map((lap) => ({ ...lap, rollOut: null })) })).toBe(-1);
    expect(rollOuts(facts).map(({ lap }) => lap)).toEqual([1, 2, 3]);
  });
});

describe("flown against asked", () => {
  it("gives the factors and times of the document, both times by the clock", () => {
    const solved = facts.laps[0]!.solved;
    if (!solved || "none" in solved) return expect.fail("not solved");
    expect(factorRows(facts).map(({ flown }) => flown)).toEqual([1.1, 2.4, 3.8]);
    expect(factorRows(facts)[0]!.asked).toBe(solved.factor);
    expect(timeRows(facts).map(({ flown }) => flown)).toEqual([62, 58, 47]);
    expect(timeRows(facts)[0]!.asked).toBe(
      Math.min(solved.outboundS, solved.outboundFromAbeamS ?? Number.POSITIVE_INFINITY),
    );
  });

  it("asks for nothing where nothing closes", () => {
    const none = facts.laps.map((lap) => ({
      ...lap,
      solved: { none: "does-not-close" } as const,
      doubt: null,
    }));
    expect(factorRows({ laps: none })[0]!.asked).toBeNull();
    expect(timeRows({ laps: none })[0]!.asked).toBeNull();
  });
});

describe("a moment of a hold", () => {
  const rowAt = (utc: string, later: number) =>
    Math.round((Date.parse(utc) - series.timeMs[0]!) / 1000) + later;

  it("counts the time in the leg by the timing rule, and the correction off the leg’s own direction", () => {
    const { outbound, inbound } = facts.laps[0]!;
    const out = holdMoment(facts, series, rowAt(outbound.fromUtc, 20));
    expect(out).toMatchObject({ lap: 1, part: "outbound", seconds: 20 });
    near(out.correctionDeg!, outbound.correctionDeg!, 1e-6, "degrees");
    const back = holdMoment(facts, series, rowAt(inbound!.toUtc, -5));
    expect(back.part).toBe("inbound");
    // steered onto the course by then, so about what holds it
    near(back.correctionDeg!, inbound!.correctionDeg!, 4, "degrees");
    near(back.distanceNm, 5 * (series.groundSpeedKt[0]! / 3600), 0.1, "NM");
  });

  it("says entry before the first pass, and no leg in a turn", () => {
    expect(holdMoment(facts, series, 0)).toMatchObject({ lap: null, part: "entry", seconds: null });
    expect(holdMoment(facts, series, rowAt(facts.laps[0]!.startUtc, 10))).toMatchObject({
      lap: 1,
      part: "turn",
      correctionDeg: null,
    });
  });
});
