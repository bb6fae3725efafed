/** What a silence of the log may hide of an approach: at a gate, and of the lowest height above the minimum. */
import { expect, it } from "vitest";
import { approachFactsSchema } from "../../src/approach/facts.ts";
import { gradeApproach, standardNamed } from "../../src/grade/index.ts";
import { approachTo, beam, FIELD, measured, type Row, straightIn } from "../support/flown-approach.ts";
import { near } from "../support/near.ts";

const us = standardNamed("instrument-rating-us")!;
/** Level 60 ft above a minimum of 500 ft over the threshold from 2 NM on, and a climb away from 0.5 NM. */
const exercise = approachTo(FIELD, {
  glidePath: null,
  minimum: { kind: "descent", altitude: FIELD.elevation + 500 },
});
const level = straightIn(
  9,
  () => 0,
  (b) => (b < 0.5 ? 560 + (0.5 - b) * 600 : Math.max(560, Math.min(1650, beam(b)))),
  { roll: false, to: -1.5 },
);
const without = (rows: readonly Row[], from: number, to: number) =>
  rows.filter(({ before }) => !(before < from && before > to));
const lowest = (rows: readonly Row[]) => {
  const { facts } = measured(exercise, rows);
  approachFactsSchema.parse(JSON.parse(JSON.stringify(facts)));
  // judged as if the altimeter had been read to 10 ft
  const known = { ...facts, minimum: { ...facts.minimum!, altimeter95Ft: 10 } };
  const below = gradeApproach(known, us).find((v) => v.criterion === "approach-minimum-below")!;
  return { minimum: facts.minimum!, below };
};

it("logged each second, the lowest is what was seen, and above the minimum", () => {
  const { minimum, below } = lowest(level);
  near(minimum.marginFt!, 60, 5, "ft");
  expect([minimum.unseen ?? null, below.verdict]).toEqual([null, "met"]);
});

it("40 s of silence at the minimum may hide a descent of 500 ft/min and back: it cannot be told", () => {
  const { minimum, below } = lowest(without(level, 1.6, 0.6));
  near(minimum.marginFt!, 60, 5, "ft");
  // 500 ft/min reached in 5 s: 41 s leave 8.33 ft/s times 20.5 less 5 s
  near(minimum.unseen!.most, 8.333 * (41 / 2 - 5) - 60, 12, "ft");
  near(minimum.unseen!.seconds!, 41, 1.5, "s");
  expect([below.verdict, below.reason, below.silentS]).toEqual([
    "cannot tell",
    "log-silent",
    minimum.unseen!.seconds,
  ]);
});

it("the same silence high on the final hides nothing of the minimum", () => {
  const { minimum, below } = lowest(without(level, 4.8, 3.8));
  expect([minimum.unseen ?? null, below.verdict]).toEqual([null, "met"]);
});

it("a gate that was passed in a silence has its doubt from it, and the verdict says so", () => {
  const rows = straightIn(9, () => 0, beam);
  const gateOf = (shown: readonly Row[]) => {
    const { facts } = measured(approachTo(FIELD), shown);
    const verdicts = gradeApproach(facts, {
      ...us,
      approach: {
        ...us.approach,
        gates: {
          needle: { limit: 0.5, edge: "within", citation: "" },
          sink: { limit: 1000, edge: "within", citation: "" },
        },
      },
    });
    return {
      gate: facts.gates.find(({ heightFt }) => heightFt === 1000)!,
      verdict: verdicts.find((v) => v.criterion === "approach-gate-1000-needle")!,
    };
  };
  const seen = gateOf(rows);
  expect([seen.gate.silentS ?? null, seen.verdict.verdict]).toEqual([null, "met"]);
  const silent = gateOf(without(rows, 3.5, 2.5));
  near(silent.gate.silentS!, 41, 1.5, "s");
  near(seen.gate.groundSpeedKt!, 90, 1, "kt");
  expect([silent.gate.groundSpeedKt, silent.gate.groundSpeedChangeKt]).toEqual([null, null]);
  // 20 degrees off and back at 90 kt for 20 s each way make over a tenth of a mile: more than half a scale
  expect(silent.gate.lateral!.doubt95).toBeGreaterThan(0.5);
  expect([silent.verdict.verdict, silent.verdict.reason]).toEqual(["cannot tell", "log-silent"]);
});

it("over the final fix in a silence, the height has the doubt of what the silence may hide", () => {
  const rows = straightIn(9, () => 0, beam);
  const passageOf = (shown: readonly Row[]) => measured(approachTo(FIELD), shown).facts.finalFixPassage!;
  const [seen, silent] = [passageOf(rows), passageOf(without(rows, 5.5, 4.5))];
  // 500 ft/min reached in 5 s: 42 s leave 8.33 ft/s times 21 less 5 s
  near(silent.altitude95Ft! - seen.altitude95Ft!, 8.333 * (42 / 2 - 5), 8, "ft");
  near(silent.altimeter95Ft! - seen.altimeter95Ft!, 8.333 * (42 / 2 - 5), 8, "ft");
});

/** Off a height and back within some seconds, at 500 ft/min (or what the aircraft did beside the silence), reached in 5 s. */
const strayed = (s: number, fpm = 500) => (fpm / 60) * (s / 2 - 5);

it("a threshold passed in a silence: its height has the doubt of that, and no ground speed is told", () => {
  const rows = straightIn(9, () => 0, beam);
  const [seen, silent] = [rows, without(rows, 0.6, -0.4)].map((shown) => measured(approachTo(FIELD), shown));
  expect([seen!.facts.landing!.silence, seen!.facts.landing!.threshold95Ft]).toEqual([undefined, undefined]);
  near(seen!.facts.landing!.groundSpeedKt!, 90, 1, "kt");
  const landing = silent!.facts.landing!;
  approachFactsSchema.parse(JSON.parse(JSON.stringify(silent!.facts)));
  // a nautical mile at 90 kt, and the roll's slowing
  near(landing.silence!.fromNm, 0.6, 0.03, "NM");
  near(landing.silence!.toNm, -0.4, 0.03, "NM");
  expect(landing.groundSpeedKt).toBeNull();
  expect(landing.threshold95Ft!).toBeGreaterThan(strayed(landing.silence!.seconds));
  expect(Math.abs(landing.thresholdFt! - 50)).toBeLessThan(landing.threshold95Ft!);
  expect(silent!.findings.map((f) => f.code)).toContain("gap-in-exercise");
});

it("a decision altitude passed in a silence is told between which distances, and the needle until then has its bound", () => {
  const rows = straightIn(9, () => 0, beam);
  const { facts } = measured(approachTo(FIELD), without(rows, 1.0, 0.2));
  const { minimum } = facts;
  expect([minimum!.passedUtc, minimum!.passedNm]).toEqual([null, null]);
  near(minimum!.passedIn!.fromNm, 1, 0.03, "NM");
  near(minimum!.passedIn!.toNm, 0.2, 0.03, "NM");
  // 200 ft over the threshold lies half a mile before it on 3 degrees
  near(facts.judged.toNm, 1, 0.03, "NM");
  expect(facts.judged.ends).toBe("log-silent");
  expect(facts.needle.unseen!.most).toBeGreaterThan(0.5);
  const needle = gradeApproach(facts, us).find((v) => v.criterion === "approach-needle")!;
  expect([needle.verdict, needle.reason]).toEqual(["cannot tell", "log-silent"]);
});

it("what was off only after a minimum that was passed in a silence is not judged", () => {
  // on the final to the minimum half a mile out; at the runway itself 0.06 NM aside, most of a scale
  const rows = straightIn(9, (b) => (b < 0.2 ? 0.06 : 0), beam);
  const { facts } = measured(approachTo(FIELD), without(rows, 1.0, 0.15));
  near(facts.needle.max, 0, 0.1, "of full scale");
});

it("a climb begun in a silence is told between which distances, its height with what that hides, its rate by what was seen", () => {
  // down to 200 ft at half a mile, and up at 600 ft a mile, 900 ft/min at 90 kt
  const rows = straightIn(
    9,
    () => 0,
    (b) => (b < 0.5 ? beam(0.5) + (0.5 - b) * 600 : beam(b)),
    { roll: false, to: -3 },
  );
  const [seen, silent] = [rows, without(rows, 0.9, 0.1)].map(
    (shown) => measured(approachTo(FIELD), shown).facts.missed!,
  );
  near(seen!.distanceNm, 0.5, 0.1, "NM");
  expect(seen!.silence).toBeUndefined();
  near(silent!.silence!.fromNm, 0.9, 0.03, "NM");
  near(silent!.silence!.toNm, 0.1, 0.03, "NM");
  near(silent!.climbFpm, 900, 30, "ft/min");
  // straight between 334 ft and 449 ft, while it was at 208 ft
  expect(Math.abs(silent!.altitudeFt - FIELD.elevation - beam(0.5))).toBeLessThan(silent!.altimeter95Ft!);
  near(silent!.altimeter95Ft! - seen!.altimeter95Ft!, strayed(silent!.silence!.seconds, 900), 25, "ft");
});

it("a step-down passed in a silence is not told from between the points", () => {
  const steps = approachTo(FIELD, {
    stepDowns: [{ name: "STEP", distance: 3, altitude: FIELD.elevation + 900 }],
  });
  const rows = straightIn(9, () => 0, beam);
  const stepOf = (shown: readonly Row[]) => measured(steps, shown).facts.stepDowns[0]!;
  near(stepOf(rows).passedFt!, FIELD.elevation + beam(3), 5, "ft");
  const silent = stepOf(without(rows, 3.5, 2.5));
  expect(silent.passedFt).toBeNull();
  near(silent.silence!.seconds, 41, 1.5, "s");
  near(silent.lowestFt!, FIELD.elevation + beam(3.5), 12, "ft");
});

/** Level 350 ft above a step-down 3 NM out, then dived below it before it is passed. */
const dived = straightIn(
  9,
  () => 0,
  (b) =>
    b > 3.45
      ? Math.min(1650, 1250 + (b - 3.45) * 300)
      : b > 3.25
        ? 1250 - (3.45 - b) * 2500
        : b > 2.4
          ? 750
          : Math.max(0, Math.min(450, 750 - (2.4 - b) * 350)),
);
const stepped = approachTo(FIELD, {
  glidePath: null,
  minimum: { kind: "descent", altitude: FIELD.elevation + 400 },
  stepDowns: [{ name: "STEP", distance: 3, altitude: FIELD.elevation + 900 }],
});
const stepVerdict = (rows: readonly Row[]) => {
  const { facts } = measured(stepped, rows);
  approachFactsSchema.parse(JSON.parse(JSON.stringify(facts)));
  const verdict = gradeApproach(facts, us).find((v) => v.criterion === "approach-step-down")!;
  return { step: facts.stepDowns[0]!, verdict };
};

it("a dive below a step-down is not met; in a silence before it, it cannot be told", () => {
  const seen = stepVerdict(dived);
  near(seen.step.marginFt!, -150, 8, "ft");
  expect(seen.verdict.verdict).toBe("not met");
  expect(seen.verdict.worstUtc).toBe(seen.step.lowestUtc);
  const silent = stepVerdict(without(dived, 3.5, 2.9));
  expect(silent.step.marginFt!).toBeGreaterThan(300);
  // the first point after it is 150 ft below
  near(silent.step.unseen!.most, 150, 12, "ft");
  expect([silent.verdict.verdict, silent.verdict.reason]).toEqual(["cannot tell", "log-silent"]);
  expect(silent.step.passedUtc).toBeNull();
});

it.each([
  ["no minimum", null],
  ["a decision altitude", { kind: "decision", altitude: FIELD.elevation + 200 } as const],
])(
  "with %s, 500 ft passed down and up in a silence cannot be told; a climb from 800 ft never came there",
  (_, minimum) => {
    const at500 = (height: (b: number) => number, from: number, to: number) => {
      const rows = straightIn(9, () => 0, height, { roll: false, to: -3 });
      const { facts } = measured(approachTo(FIELD, { minimum }), without(rows, from, to));
      expect(facts.outcome).toBe("missed");
      return gradeApproach(facts, us).filter((v) => v.criterion.startsWith("approach-gate-500-"));
    };
    const from = (b0: number) => (b: number) =>
      b < b0 ? beam(b0) + (b0 - b) * 600 : Math.min(1650, beam(b));
    // down to 464 ft in 65 s without a point
    const silent = at500(from(1.3), 2.2, 0.6);
    expect(silent.map(({ verdict, reason }) => [verdict, reason])).toEqual(
      silent.map(() => ["cannot tell", "gate-not-passed"]),
    );
    const high = at500(from(2.4), 0, 0);
    expect(high.map(({ verdict }) => verdict)).toEqual(high.map(() => "not flown"));
  },
);

it("how near it came to a gate counts the points of a coarse log, and what lies between them", () => {
  // down the beam to 530 ft over the threshold at 1.5 NM, and up at 600 ft a mile
  const height = (b: number) => (b < 1.5 ? beam(1.5) + (1.5 - b) * 600 : Math.min(1650, beam(b)));
  const rows = straightIn(9, () => 0, height, { roll: false, to: -3 });
  const nearest = (shown: readonly Row[]) =>
    measured(approachTo(FIELD), shown).facts.gates.find(({ heightFt }) => heightFt === 500)!.nearestFt!;
  near(nearest(rows), beam(1.5) - 500, 12, "ft");
  // a point each 10 s, one of them the lowest: 300 s at 90 kt are 7.5 NM; half-way between two it is 40 ft higher
  near(nearest(rows.filter(({ t }) => t % 10 === 0)), beam(1.5) - 500, 15, "ft");
  // half a minute without a point about the lowest: half-way between its ends, less what 600 ft/min does in it
  const silent = nearest(without(rows, 1.875, 1.125));
  expect(silent).toBeLessThan(beam(1.5) - 500 + 120 - strayed(31, 500) + 20);
});

it("a glide path has the bound of a silence before the first row that is judged, from the fix on", () => {
  const rows = straightIn(9, () => 0, beam);
  const unseen = (shown: readonly Row[]) => measured(approachTo(FIELD), shown).facts.glidePath!.needle.unseen;
  expect(unseen(rows) ?? null).toBeNull();
  // the fix at 5 NM was passed half a mile before the log speaks again: 20 s of leaving, twice that with coming back
  const found = unseen(without(rows, 5.5, 4.5))!;
  near(found.seconds!, 20, 1.5, "s");
  const fullScaleFt = 0.7 * (Math.PI / 180) * ((4.5 * 1852) / 0.3048 + 50 / Math.tan((3 * Math.PI) / 180));
  near(found.most, strayed(40) / fullScaleFt, 0.05, "of full scale");
});

it("after the last row a slow aircraft takes longer down to 200 ft than a fast one", () => {
  const unseen = (knots: number) => {
    const rows = straightIn(9, () => 0, beam, { knots });
    return measured(approachTo(FIELD), without(rows, 1.6, -0.1)).facts.glidePath!.needle.unseen!;
  };
  // from 1.6 NM, 561 ft, to 200 ft on 3 degrees: 361 ft at 318 ft/NM
  for (const knots of [50, 90]) near(unseen(knots).seconds!, (361 / 318 / knots) * 3600, 4, "s");
});
