/** By construction: whose a lap is, of two holds that a brief asks for at one fix. Ways to the fix are straight lines by the ruler. */
import { describe, expect, it } from "vitest";
import type { HoldExercise } from "../../src/brief/brief.ts";
import { type AtFix, allOwn, ownShare } from "../../src/debrief/own-laps.ts";
import { courseThrough, positionOn } from "../../src/geodesy/index.ts";
import type { FoundHold } from "../../src/hold/index.ts";
import type { Motion } from "../../src/track/motion.ts";
import { TARNO } from "../support/flown-course.ts";

type Side = "left" | "right";
const asked = (inbound: number, turns: Side) =>
  ({ kind: "hold", fix: TARNO, course: courseThrough(TARNO, inbound), turns }) as unknown as HoldExercise;

/** A lap of four minutes whose last one leads to the fix on a track: straight, or from the middle of it on after a cut. */
const LAP = 240;
const INBOUND = 180;
function flown(tracks: readonly number[], turns: Side, cut: readonly number[] = tracks) {
  const [latitude, longitude] = [
    new Float64Array(tracks.length * LAP),
    new Float64Array(tracks.length * LAP),
  ];
  tracks.forEach((track, lap) => {
    const onto = courseThrough(TARNO, track);
    const middle = positionOn(onto, -30 * 50, 0);
    const before = courseThrough(middle, cut[lap]!);
    for (let second = 0; second < LAP; second++) {
      const toGo = LAP - 1 - second;
      // outbound it does not matter where
      const back = Math.min(toGo, LAP - INBOUND);
      const place = back < 30 ? positionOn(onto, -back * 50, 0) : positionOn(before, -(back - 30) * 50, 0);
      latitude[lap * LAP + second] = place.latitude;
      longitude[lap * LAP + second] = place.longitude;
    }
  });
  const length = latitude.length;
  const time = Float64Array.from({ length }, (_, second) => second * 1000);
  const laps = tracks.map((_, lap) => ({
    complete: true,
    times: {
      start: lap * LAP * 1000,
      inbound: (lap * LAP + INBOUND) * 1000,
      end: (lap * LAP + LAP - 1) * 1000,
    },
  }));
  const motion = { time, latitude, longitude, length } as unknown as Motion;
  const hold = { span: { start: 0, end: length }, entry: "direct", turns, laps, inbound: tracks[0] };
  return { motion, hold: hold as unknown as FoundHold };
}

function own(
  one: HoldExercise,
  other: HoldExercise,
  of: ReturnType<typeof flown>,
  passes: AtFix["passes"] = [],
) {
  const at: AtFix = { exercise: one, others: [other], passes, motion: of.motion };
  return { all: allOwn(at, of.hold), share: ownShare(at, of.hold, [of.hold]) };
}

describe("two holds at one fix", () => {
  const [west, south] = [asked(247, "right"), asked(157, "right")];

  it("a lap is of the one whose course it came in on, and not of the other", () => {
    const lap = flown([240], "right");
    expect(own(west, south, lap).all).toBe(true);
    expect(own(south, west, lap).all).toBe(false);
    const between = flown([210], "right");
    expect(own(west, south, between).all).toBe(true);
    expect(own(south, west, between).all).toBe(false);
  });

  it("a cut to the course in the first half of the way back is none of its track", () => {
    expect(own(west, south, flown([247], "right", [120])).all).toBe(true);
  });

  it("of two on one course it is of the one with its turns", () => {
    const [left, right] = [asked(247, "left"), asked(247, "right")];
    expect(own(left, right, flown([255], "left")).all).toBe(true);
    expect(own(right, left, flown([255], "left")).all).toBe(false);
  });

  it("one that comes to the fix by more than a cut off the course is of neither", () => {
    const north = asked(337, "right");
    expect(own(west, north, flown([190], "right")).all).toBe(false);
    expect(own(north, west, flown([190], "right")).all).toBe(false);
  });

  it("one with the fix flown over in its middle is two", () => {
    const lap = flown([247], "right");
    const pass = (second: number, off: number) => ({ row: second, time: second * 1000, off, wayBack: 0 });
    expect(own(west, south, lap, [pass(100, 0.05)]).all).toBe(false);
    expect(own(west, south, lap, [pass(100, 0.4)]).all).toBe(true);
    expect(own(west, south, lap, [pass(5, 0.05), pass(LAP - 5, 0.05)]).all).toBe(true);
  });

  it("of two laps of which one is its own it has less than of one that is", () => {
    const both = own(west, south, flown([247, 157], "right"));
    expect(both.all).toBe(false);
    expect(both.share).toBeLessThan(own(west, south, flown([247], "right")).share);
  });

  it("of two alike it is more the one whose course is nearer", () => {
    expect(own(west, south, flown([247], "right")).share).toBeGreaterThan(
      own(west, south, flown([270], "right")).share,
    );
  });
});
