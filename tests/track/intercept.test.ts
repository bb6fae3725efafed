import { describe, expect, it } from "vitest";
import { type AgainstCourse, measureIntercept } from "../../src/track/index.ts";

/** A 30° cut from the left at 2 NM a minute, joined in row 60; after it `past` tells by the second where the aircraft is, NM right. */
function joinedThen(past: (seconds: number) => number): AgainstCourse {
  const length = 240;
  const column = (of: (i: number) => number) => Float64Array.from({ length }, (_, i) => of(i));
  const crossTrackNm = column((i) => (i <= 60 ? (i - 60) / 60 : past(i - 60)));
  return {
    length,
    timed: true,
    timeMs: column((i) => i * 1000),
    crossTrackNm,
    needle: crossTrackNm,
    trackErrorDeg: column((i) => (i < 60 ? 30 : 0)),
    turnRate: column(() => 0),
    gapBefore: new Uint8Array(length),
  };
}

const overshoot = (past: (seconds: number) => number) => measureIntercept(joinedThen(past), 60)?.overshootNm;

describe("by construction: how far an intercept went past its course", () => {
  it("is the farthest before coming back", () => {
    expect(overshoot((s) => Math.max(0, 0.1 - Math.abs(s - 20) / 200))).toBeCloseTo(0.1, 3);
  });
  it("is not what the track wanders later than a minute after joining", () => {
    expect(overshoot((s) => (s > 45 ? (s - 45) / 1000 : 0))).toBeCloseTo(0.015, 6);
  });
  it("is not ended by a wobble of the receiver", () => {
    expect(overshoot((s) => s / 1000 - (s === 10 ? 0.003 : 0))).toBeCloseTo(0.06, 6);
  });
  it("is none where the course was never reached before moving off again", () => {
    expect(overshoot((s) => (s < 30 ? -s / 1000 : (s - 30) / 500))).toBe(0);
  });
});
