/** A touch-and-go is a landing, and nothing of a missed approach is told of it; where neither speed nor height tell, that is said. */
import { describe, expect, it } from "vitest";
import { gradeApproach, standardNamed } from "../../src/grade/index.ts";
import { APPROACH_WORDS } from "../../src/report/words/approach-finding.ts";
import {
  approachTo,
  beam,
  FIELD,
  measured,
  type Row,
  secondsOf,
  straightIn,
} from "../support/flown-approach.ts";

/** Knots and feet a second from where rows end, along the final, second by second. */
function on(rows: readonly Row[], seconds: readonly (readonly [knots: number, height: number])[]): Row[] {
  let { t, before } = rows.at(-1)!;
  return [
    ...rows,
    ...seconds.map(([knots, height]) => {
      before -= knots / 3600;
      return { t: ++t, before, aside: 0, height };
    }),
  ];
}
const each = (count: number, at: (k: number) => readonly [number, number]) =>
  Array.from({ length: count }, (_, k) => at(k));
/** Down the path at 65 kt until so high, with no roll before it: the datum of the log stays unknown. */
const down = (until: number) =>
  straightIn(
    8,
    () => 0,
    (b) => Math.min(1650, beam(Math.max(b, 0)) - 50 * Number(b <= 0)),
    {
      knots: 65,
      roll: false,
      to: -0.2,
    },
  ).filter(({ height, before }) => height > until || before > 1);
const climb = (from: number, knots = 65) => each(120, (k) => [knots, from + 10 * k]);
/** A phone's height over a roll, ft: strays by 30 in seconds. */
const strays = (k: number): number => 15 - 15 * Math.cos(k / 3);

const exercise = approachTo(FIELD);
const lower = approachTo(FIELD, {
  glidePath: null,
  minimum: { kind: "descent", altitude: FIELD.elevation + 450 },
});
const us = standardNamed("instrument-rating-us")!;
const eu = standardNamed("instrument-rating-eu")!;

describe("by construction: over the threshold at 65 kt, slowed to 44 on the runway, 65 again, and a climb", () => {
  const roll = [
    ...each(6, (k): [number, number] => [64 - 2 * k, 20 - 4 * k]), // the flare
    ...each(6, (k): [number, number] => [52 - 1.6 * k, strays(k)]),
    ...each(9, (k): [number, number] => [44 + 2.4 * k, strays(6 + k)]),
  ];
  const rows = on(on(down(25), roll), climb(5));
  it.each([0, -40, 60])("is a touch-and-go, though the log stands %s ft off the runway", (shift) => {
    const { facts, findings } = measured(exercise, rows, shift);
    expect(facts.height!.anchored).toBe("log");
    expect([facts.outcome, facts.missed, facts.brokeOff]).toEqual(["touch-and-go", null, null]);
    expect(facts.minimum).toMatchObject({ lowestFt: null, marginFt: null });
    expect(Math.abs(facts.touchAndGo!.slowestKt - 44)).toBeLessThan(3);
    // the roll ends 21 s after the flare began, 27 s or so after the last row before it
    const climbing = rows.at(-120)!.t;
    expect(Math.abs(secondsOf(facts.touchAndGo!.climbUtc) - climbing)).toBeLessThan(8);
    expect(facts.segments.map(({ kind }) => kind).slice(-3)).toEqual(["final", "landing", "climb-out"]);
    const codes = findings.map(({ code }) => code);
    expect(codes).toContain("touch-and-go");
    for (const code of ["missed-approach", "low-pass", "sank-below-decision", "below-minimum"])
      expect(codes).not.toContain(code);
    const found = findings.find(({ code }) => code === "touch-and-go")!;
    expect(APPROACH_WORDS[found.code]!(found.facts, found)).toMatch(
      /^Touch-and-go, over the threshold at \d+ ft, 6\d kt over the ground; slowed to 4\d kt on the runway 0\.\d NM past the threshold, climbing again 0\.\d NM past the threshold\.$/,
    );
  });
  it("and no height of it is held against a minimum", () => {
    const minimum = (asked: typeof exercise) =>
      gradeApproach(measured(asked, rows).facts, us)
        .filter(({ criterion }) => /^approach-(minimum|decision)/.test(criterion))
        .map(({ verdict, reason }) => [verdict, reason]);
    expect(minimum(exercise)).toEqual([]);
    expect(minimum(lower)).toEqual([
      ["cannot tell", "left-for-landing"],
      ["cannot tell", "left-for-landing"],
    ]);
  });
});

describe("without a speed that only a roll leaves", () => {
  it("a pass along the runway at 5 ft cannot be told from a touch, and no decision is judged by it", () => {
    const pass = each(16, (k): [number, number] => [65, Math.max(5, 20 - 4 * k)]);
    const { facts, findings } = measured(exercise, on(on(down(25), pass), climb(15)));
    expect([facts.outcome, facts.touchAndGo]).toEqual(["touch-and-go-or-low-pass", null]);
    const found = findings.find(({ code }) => code === "low-pass")!;
    expect(APPROACH_WORDS[found.code]!(found.facts, found)).toContain(
      "Whether that was a landing or a go-around cannot be told",
    );
    const verdicts = gradeApproach(facts, eu).filter(({ criterion }) => /decision/.test(criterion));
    expect(verdicts.length).toBeGreaterThan(0);
    for (const { verdict, reason } of verdicts)
      expect([verdict, reason]).toEqual(["cannot tell", "maybe-touched"]);
  });
  it("a go-around from 50 ft over the runway is a missed approach, of which a touch is not ruled out", () => {
    const round = each(5, (k): [number, number] => [63 - k, 45 - 3 * k]);
    const { facts, findings } = measured(exercise, on(on(down(52), round), climb(35)));
    expect([facts.outcome, facts.touchAndGo]).toEqual(["missed", null]);
    const found = findings.find(({ code }) => code === "sank-below-decision")!;
    expect(APPROACH_WORDS[found.code]!(found.facts, found)).toContain("a touch is not ruled out");
  });
  // 92 kt over 1.3 is an ordinary climb speed: by itself it shows no wheels on the ground
  it.each([300, 500])(
    "a final at 92 kt slowed to 70 in a climb at %s ft/min from 45 ft over the runway is no touch",
    (rate) => {
      const fast = straightIn(
        8,
        () => 0,
        (b) => Math.min(1650, beam(Math.max(b, 0), 3, 60)),
        {
          ...{ knots: 92, roll: false, to: 0 },
        },
      );
      const round = each(6, (k): [number, number] => [92 - 2 * k, Math.max(45, 60 - 4 * k)]);
      const away = each(120, (k): [number, number] => [Math.max(70, 82 - 3 * k), 45 + (k * rate) / 60]);
      const { facts, findings } = measured(exercise, on(on(fast, round), away));
      expect([facts.outcome, facts.touchAndGo]).toEqual(["missed", null]);
      expect(findings.map(({ code }) => code)).not.toContain("touch-and-go");
    },
  );
  it("nor is one that floats level at 45 ft, slowed only in its last seconds there: a touch or a low pass", () => {
    const fast = straightIn(
      8,
      () => 0,
      (b) => Math.min(1650, beam(Math.max(b, 0), 3, 60)),
      {
        ...{ knots: 92, roll: false, to: 0 },
      },
    );
    const float = each(14, (k): [number, number] => [92 - 1.6 * k, Math.max(45, 60 - 4 * k)]);
    const { facts } = measured(exercise, on(on(fast, float), climb(45, 70)));
    expect([facts.outcome, facts.touchAndGo]).toEqual(["touch-and-go-or-low-pass", null]);
  });
  it("slowed as much 180 ft above the runway, no wheel was on it", () => {
    const slow = [
      ...each(10, (k): [number, number] => [64 - 2 * k, 180]),
      ...each(10, (k): [number, number] => [44 + 2 * k, 180]),
    ];
    const high = straightIn(
      8,
      () => 0,
      (b) => Math.max(180, Math.min(1650, beam(Math.max(b, 0)))),
      {
        knots: 65,
        roll: false,
        to: -0.05,
      },
    );
    expect(measured(exercise, on(on(high, slow), climb(180))).facts.outcome).toBe("missed");
  });
});
