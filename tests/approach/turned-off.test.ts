/** The last of a final is judged to where the turn away begins, or to the threshold: neither that turn nor the flare is part of it. */
import { describe, expect, it } from "vitest";
import type { ApproachExercise } from "../../src/brief/brief.ts";
import { approachTo, beam, FIELD, measured, type Row, straightIn } from "../support/flown-approach.ts";

const centred = () => 0;
const down = (b: number) => Math.min(1650, beam(Math.max(0, b)));
const needle = (kind: "localizer" | "lnav"): ApproachExercise["guidance"] => ({
  ...{ kind, width: null, station: null, rnp: null },
  antenna: kind === "localizer" ? 8000 : null,
});

/** Down the beam to so many miles, then a turn of 3 degrees a second to a track off the final, and level for a minute. */
function turnedOff(kind: "localizer" | "lnav", at: number, to: number) {
  const rows = straightIn(9, centred, down, { roll: false, to: at });
  let { t, before, aside, height } = rows.at(-1)!;
  const begun = before;
  let angle = 0;
  for (let k = 0; k < 60; k++) {
    angle += Math.max(-3, Math.min(3, to - angle));
    before -= (Math.cos((angle * Math.PI) / 180) * 90) / 3600;
    aside += (Math.sin((angle * Math.PI) / 180) * 90) / 3600;
    rows.push({ t: ++t, before, aside, height });
  }
  return { begun, ...measured(approachTo(FIELD, { guidance: needle(kind), minimum: null }), rows) };
}

describe("by construction: turned off the final 300 ft above the threshold, and nearer to it", () => {
  const cases = (["localizer", "lnav"] as const).flatMap((kind) =>
    [
      [0.78, 30],
      [0.78, -45],
      [0.78, 90],
      // so near that the needle has no room to go over full scale before the threshold is abeam
      [0.3, 30],
      [0.2, -45],
    ].map(([at, to]) => [kind, at!, to!] as const),
  );
  it.each(cases)("%s, %s NM before the threshold by %s°: judged to the turn, within 2 s", (kind, at, to) => {
    const { begun, facts, findings } = turnedOff(kind, at, to);
    expect([facts.outcome, facts.judged.ends]).toEqual(["left-final", "broke-off"]);
    expect(facts.brokeOff!.side).toBe(to > 0 ? "right" : "left");
    expect(Math.abs(facts.judged.toNm - begun)).toBeLessThan(0.05); // 2 s at 90 kt
    expect(Math.abs(facts.needle.max)).toBeLessThan(0.02);
    expect(Math.abs(facts.trackAngleError!.maxDeg)).toBeLessThan(2);
    expect(Math.abs(facts.glidePath!.needle.max)).toBeLessThan(0.05);
    for (const { after } of facts.gates) {
      expect(after!.mostBankDeg).toBeLessThan(6); // of 14 in the turn
      expect(Math.abs(after!.lateral!)).toBeLessThan(0.02);
      expect(Math.abs(after!.vertical!)).toBeLessThan(0.05);
    }
    expect(findings.map(({ code }) => code)).not.toContain("final-track-off");
  });
  it("20° off without a turn back is a final badly held, and judged to the threshold", () => {
    const { facts } = turnedOff("lnav", 0.78, 20);
    expect([facts.brokeOff, facts.judged.ends]).toEqual([null, "threshold"]);
    expect(Math.abs(facts.needle.max)).toBeGreaterThan(0.5);
  });
  it("a turn begun some seconds after 500 ft says nothing of the gate", () => {
    // 500 ft above the threshold lie 1.40 NM before it on this path
    const { facts, findings } = turnedOff("localizer", 1.32, 45);
    const gate = facts.gates.find(({ heightFt }) => heightFt === 500)!;
    expect(gate.utc).not.toBeNull();
    expect(Math.abs(gate.bankDeg!)).toBeLessThan(6);
    expect(gate.trackUnsteadyDeg!).toBeLessThan(2);
    expect(Math.abs(gate.verticalFpm! + 480)).toBeLessThan(60);
    for (const code of ["unstable-at-gate", "unsteady-at-gate"])
      expect(findings.map((f) => f.code)).not.toContain(code);
  });
});

describe("by construction: a long landing, 24 seconds afloat from 90 kt down to 54, and a turn-off", () => {
  const rows: Row[] = straightIn(9, centred, down, { roll: false, to: 0.02 });
  const over = rows.at(-1)!;
  let { t, before } = over;
  for (let k = 0, knots = 90, aside = 0; k < 60; k++) {
    knots = k < 24 ? 90 - 1.5 * k : Math.max(8, knots - 3);
    before -= knots / 3600;
    aside += knots < 12 ? 0.001 : 0;
    rows.push({ t: ++t, before, aside, height: Math.max(k < 24 ? 8 : 0, 50 - 6 * k) });
  }
  it.each([0, 60, -40])(
    "with heights %s ft off ends at the threshold, and no flare is a fault of its path",
    (shift) => {
      const { facts, findings } = measured(approachTo(FIELD, { minimum: null }), rows, shift);
      expect([facts.outcome, facts.judged.ends]).toEqual(["landed", "threshold"]);
      expect(facts.judged.toNm).toBeGreaterThanOrEqual(0);
      expect(facts.judged.toNm).toBeLessThan(0.025); // a second of 90 kt
      for (const { after } of facts.gates) {
        expect(after!.groundSpeedRangeKt).toBeLessThan(3);
        expect(Math.abs(after!.vertical!)).toBeLessThan(0.25);
      }
      expect(findings.map(({ code }) => code).filter((code) => /^un|-off$/.test(code))).toEqual([]);
    },
  );
});
