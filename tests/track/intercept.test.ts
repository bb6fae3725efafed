import { describe, expect, it } from "vitest";
import { type AgainstCourse, measureIntercept } from "../../src/track/index.ts";

/** NM a second at 120 kt. */
const SPEED = 1 / 30;

/** A 30° cut from the left at 2 NM a minute that reaches the course in row 60; then tracks off it, degrees right, second by second, turned at once or at a rate. */
function joinedThen(off: (seconds: number) => number): AgainstCourse {
  const length = 240;
  const column = (of: (i: number) => number) => Float64Array.from({ length }, (_, i) => of(i));
  const trackErrorDeg = column((i) => (i < 60 ? 30 : off(i - 60)));
  const crossTrackNm = new Float64Array(length);
  const step = (i: number) => SPEED * Math.sin((trackErrorDeg[i]! * Math.PI) / 180);
  for (let i = 1; i < length; i++) crossTrackNm[i] = crossTrackNm[i - 1]! + step(i - 1);
  const there = crossTrackNm[60]!;
  for (let i = 0; i < length; i++) crossTrackNm[i]! -= there;
  return {
    length,
    timed: true,
    timeMs: column((i) => i * 1000),
    crossTrackNm,
    needle: crossTrackNm,
    trackErrorDeg,
    turnRate: column((i) => (i === 0 ? 0 : trackErrorDeg[i]! - trackErrorDeg[i - 1]!)),
    gapBefore: new Uint8Array(length),
  };
}

const overshoot = (off: (seconds: number) => number) => measureIntercept(joinedThen(off), 60)!.overshootNm;
/** Turned from 30° at 3° a second to a track, which is then held. */
const turnedTo = (track: number) => (s: number) => Math.max(track, 30 - 3 * s);

describe("by construction: how far an intercept went past its course", () => {
  it("is the farthest before coming back", () => {
    // 20 turns of a second from 30° to -30°: the sines of 30, 27, ... 3
    const past =
      SPEED *
      Array.from({ length: 10 }, (_, k) => Math.sin(((30 - 3 * k) * Math.PI) / 180)).reduce((a, b) => a + b);
    expect(overshoot((s) => (s < 20 ? 30 - 3 * s : s < 60 ? -30 : 0))).toBeCloseTo(past, 6);
  });
  it("is what the cut went past before the turn back began, however steadily", () => {
    const late = overshoot((s) => (s < 15 ? 30 : turnedTo(-20)(s - 15)));
    expect(late).toBeGreaterThan(15 * SPEED * 0.5);
    expect(late).toBeLessThan(15 * SPEED * 0.5 + 0.1);
  });
  it("is not where the track led away after a good roll-out: a drift of 6° is no overshoot", () => {
    const good = overshoot(turnedTo(0));
    expect(overshoot(turnedTo(6))).toBeLessThan(good + 0.02);
    expect(overshoot((s) => (s < 20 ? turnedTo(0)(s) : 6))).toBeCloseTo(good, 3);
  });
  it("is not what the track wanders later than a minute after joining", () => {
    // 20° is no roll-out of a cut of 30°: the minute ends it
    expect(overshoot(() => 20)).toBeCloseTo(60 * SPEED * Math.sin((20 * Math.PI) / 180), 6);
  });
  it("is not ended by a wobble of the receiver", () => {
    const steady = joinedThen((s) => (s < 15 ? 30 : turnedTo(-20)(s - 15)));
    const wobbling = {
      ...steady,
      crossTrackNm: steady.crossTrackNm.map((x, i) => x - (i === 66 ? 0.003 : 0)),
    };
    expect(measureIntercept(wobbling, 60)!.overshootNm).toBe(measureIntercept(steady, 60)!.overshootNm);
  });
  it("is none where the course was never reached before moving off again", () => {
    const short = joinedThen((s) => (s < 30 ? -1 : 3));
    const aside = { ...short, crossTrackNm: short.crossTrackNm.map((x) => x - 0.01) };
    expect(measureIntercept(aside, 60)!.overshootNm).toBe(0);
  });
});
