/** What led onto a final, by ruler: a racetrack about a beacon on the field is no circuit. */
import { describe, expect, it } from "vitest";
import { approachTo, beam, FIELD, measured, tracks } from "../support/flown-approach.ts";

/** Along the final to the field, all round by a turn to the right each time, and in; so high above the field on the way. */
const racetrack = (begins: number, height: (t: number) => number, outbound: number) =>
  tracks(
    begins,
    0,
    [
      [0, begins * 40],
      [180, 60 + outbound],
      [360, 60 + outbound + 40],
    ],
    ({ t, before }) => (t < begins * 40 + 200 ? height(t) : Math.min(height(t), beam(Math.max(0, before)))),
  );

/** On the way outbound by then. */
const OUTBOUND = 200;

describe("by construction: the turn outbound over the field", () => {
  it("from over a beacon on the field, at a height kept: a lap of a racetrack, no circuit", () => {
    const { facts } = measured(
      approachTo(FIELD),
      racetrack(3, () => 1500, 120),
      0,
      OUTBOUND,
    );
    expect(facts.joinedFrom).toBe("hold");
  });
  it("climbed out from the runway: a circuit", () => {
    // over the threshold 120 s after the start, some 20 ft up, and climbing 500 ft a minute from there on
    const height = (t: number) =>
      t < 120 ? Math.max(20, 900 - 7.4 * t) : Math.min(1000, 20 + (t - 120) * 8.4);
    const { facts } = measured(approachTo(FIELD), racetrack(3, height, 100), 0, OUTBOUND);
    expect(facts.joinedFrom).toBe("circuit");
  });
});

describe("by construction: ways round that are no lap of a hold", () => {
  const joined = (rows: ReturnType<typeof tracks>) =>
    measured(approachTo(FIELD), rows, 0, 60).facts.joinedFrom;
  it("vectors from along the final 5 miles beside it, downwind, base and a cut of 30 degrees: no lap", () => {
    const rows = tracks(6, 5.5, [
      [0, 60],
      [180, 60 + 200],
      [270, 30 + 60],
      [330, 20 + 40],
      [360, 300],
    ]);
    expect(joined(rows)).not.toBe("hold");
  });
  it("one turn all the way round on the final, to lose time: no lap, which has an outbound leg", () => {
    const rows = tracks(11, 0, [
      [0, 60],
      [360, 120 + 300],
    ]);
    expect(joined(rows)).not.toBe("hold");
  });
  it("the same with a minute outbound, from along the final: a lap", () => {
    const rows = tracks(9, 0, [
      [0, 60],
      [180, 60 + 60],
      [360, 60 + 320],
    ]);
    expect(joined(rows)).toBe("hold");
  });
});

describe("by construction: a way round that has a base leg is a box, and no course reversal", () => {
  const joined = (rows: ReturnType<typeof tracks>) =>
    measured(approachTo(FIELD, { finalFix: null, finalFixAltitude: null }), rows, 0, 60).facts.joinedFrom;

  it("outbound beside the final, 20 seconds square to it, and in", () => {
    const box = tracks(6, 1.45, [
      [180, 90],
      [270, 30 + 20],
      [360, 300],
    ]);
    expect(joined(box)).toBe("vectors");
  });
  it("outbound beside the final and back by two half turns with a breath between them: reversed", () => {
    const breath = tracks(6, 1.02, [
      [180, 90],
      [270, 30 + 3],
      [360, 300],
    ]);
    expect(joined(breath)).toBe("procedure-turn");
  });
  it("outbound aside of it by 20 degrees and in by one turn of 230, as a teardrop: reversed", () => {
    const teardrop = tracks(5, 0, [
      [160, 86],
      [390, 77 + 5],
      [360, 240],
    ]);
    expect(joined(teardrop)).toBe("procedure-turn");
  });
});
