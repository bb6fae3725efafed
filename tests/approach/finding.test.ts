/** What is said of an approach is said to the doubt that its limit has, from one datum, and against the published criteria alone. */
import { describe, expect, it } from "vitest";
import type { ApproachFacts } from "../../src/approach/facts.ts";
import { unstable, unsteady } from "../../src/approach/unstable.ts";
import { approachSentence } from "../../src/report/words/approach.ts";
import { APPROACH_WORDS } from "../../src/report/words/approach-finding.ts";
import { approachTo, beam, FIELD, measured, type Row, straightIn } from "../support/flown-approach.ts";

const centred = () => 0;
const said = (
  findings: readonly { code: string; facts: Record<string, unknown> }[],
  code: string,
): string => {
  const found = findings.find((f) => f.code === code)!;
  return APPROACH_WORDS[code]!(found.facts as never, found as never);
};

describe("limits are heights by the altimeter, 75 ft of which are its own (FAA AIM 7-2-3, from memory)", () => {
  const exercise = approachTo(FIELD, {
    guidance: { kind: "lnav", width: null, antenna: null, station: null, rnp: null },
    glidePath: null,
    minimum: { kind: "descent", altitude: FIELD.elevation + 480 },
    stepDowns: [{ name: "2.5 NM", distance: 2.5, altitude: FIELD.elevation + 880 }],
  });
  /** Took off from the runway before, so that the log's heights are tied to it; then so far below each limit, and a climb. */
  const below = (by: number) => {
    const height = (b: number) =>
      b > 5
        ? 1650
        : b > 2.5
          ? Math.max(880 - by, 1650 - (5 - b) * 533)
          : Math.max(480 - by, 880 - by - (2.5 - b) * 533);
    const down = straightIn(9, centred, height, { roll: false, to: 0 });
    const last = down.at(-1)!;
    const climb = Array.from({ length: 150 }, (_, k) => ({
      t: last.t + 1 + k,
      before: last.before - (k + 1) / 40,
      aside: 0,
      height: 480 - by + 10 * k,
    }));
    const roll: Row[] = Array.from({ length: 60 }, (_, t) => ({ t, before: -0.1, aside: 0, height: 0 }));
    return measured(exercise, [...roll, ...[...down, ...climb].map((r) => ({ ...r, t: r.t + 600 }))]);
  };
  it("75 ft under them, beyond the GPS's doubt and within the altimeter's, is not sure", () => {
    const { facts, findings } = below(75);
    expect(facts.minimum!.doubt95Ft).toBeLessThan(70);
    expect(facts.minimum!.altimeter95Ft).toBeGreaterThan(80);
    for (const code of ["below-step-down", "below-minimum"]) {
      const found = findings.find((f) => f.code === code)!;
      expect(found.facts.sure, code).toBe(false);
      expect(Number(found.facts.doubt95Ft), code).toBeGreaterThan(80);
      expect(said(findings, code)).toContain("tells the altimeter’s height only to ±");
    }
  });
  it("250 ft under them is", () => {
    for (const code of ["below-step-down", "below-minimum"])
      expect(below(250).findings.find((f) => f.code === code)!.facts.sure, code).toBe(true);
  });
  it("the height of the climb away names what it is above", () => {
    expect(said(below(0).findings, "missed-approach")).toMatch(/\d ft above the threshold;/);
  });
});

describe("a climb from below a decision altitude of 200 ft, heights tied to the runway by a take-off before", () => {
  const G = 32.174; // ft/s²
  /** Down the path at 90 kt to `until`, then a pull of 0.1 g to a climb at 600 ft/min; or level on the runway for so long, and the same climb. */
  const flown = (until: number, roll: number | null = null) => {
    const down = straightIn(9, centred, (b) => Math.max(0, Math.min(1650, beam(b))), { roll: false, to: -1 });
    const rows = down.filter((r) => r.height > until || r.before > 1);
    let { t, before, height } = rows.at(-1)!;
    let rate = -478 / 60;
    const on = (seconds: number, next: () => void) => {
      for (let k = 0; k < seconds; k++) {
        next();
        t++;
        before -= 90 / 3600;
        height += rate;
        rows.push({ t, before, aside: 0, height });
      }
    };
    if (roll !== null)
      on(roll, () => {
        [rate, height] = [0, 0];
      });
    on(150, () => {
      rate = Math.min(10, rate + 0.1 * G);
    });
    const start: Row[] = Array.from({ length: 60 }, (_, s) => ({ t: s, before: -0.1, aside: 0, height: 0 }));
    const exercise = approachTo(FIELD);
    const all = [...start, ...rows.map((r) => ({ ...r, t: r.t + 600 }))];
    const { facts, findings } = measured(exercise, all);
    return { facts, findings, lowest: Math.min(...rows.map((r) => r.height)) };
  };
  it.each([165, 120, 70, 45])("begun at %s ft: told by how far it sank, and no touch", (until) => {
    const { facts, findings, lowest } = flown(until);
    expect(facts.outcome).toBe("missed");
    expect(facts.minimum!.marginFt! + 200).toBeGreaterThan(lowest - 8);
    expect(facts.minimum!.marginFt! + 200).toBeLessThan(lowest + 8);
    const { facts: told } = findings.find((f) => f.code === "sank-below-decision")!;
    // the pull is begun at `until`, or at the last second above it; the climb is told a moment into it
    expect(Number(told.climbBelowFt)).toBeGreaterThan(200 - until - 12);
    expect(Number(told.climbBelowFt)).toBeLessThan(200 - lowest + 8);
    if (lowest < 80) expect(findings[0]!.code).toBe("sank-below-decision");
    expect(said(findings, "sank-below-decision")).toContain("below it");
  });
  it("level over the runway for 14 seconds at its height is a touch or a low pass, and says for how long", () => {
    const { facts, findings } = flown(4, 14);
    expect(facts.outcome).toBe("touch-and-go-or-low-pass");
    expect(facts.levelOverRunwayS!).toBeGreaterThan(8);
    expect(facts.levelOverRunwayS!).toBeLessThan(18);
    expect(said(findings, "low-pass")).toContain("level over the runway for");
  });
});

describe("level 30 ft above the threshold, and a climb", () => {
  const ground = (until: number) => {
    const height = (b: number) => Math.max(30, Math.min(1650, beam(b) - 300 * Math.max(0, 2 - b)));
    const down = straightIn(9, centred, height, { roll: false, to: until });
    const last = down.at(-1)!;
    const climb = Array.from({ length: 150 }, (_, k) => ({
      ...{ t: last.t + 1 + k, before: last.before - (k + 1) / 40, aside: 0, height: 30 + 10 * k },
    }));
    const start: Row[] = Array.from({ length: 60 }, (_, t) => ({ t, before: -0.1, aside: 0, height: 0 }));
    const all = [...start, ...[...down, ...climb].map((r) => ({ ...r, t: r.t + 600 }))];
    return measured(approachTo(FIELD), all).findings.find((f) => f.code === "sank-below-decision")!;
  };
  it("from over the threshold, a touch is not ruled out; from half a mile out there is no runway to touch", () => {
    expect(Number(ground(0.1).facts.groundFt)).toBeLessThan(40);
    expect(APPROACH_WORDS["sank-below-decision"]!(ground(0.1).facts, ground(0.1))).toContain("touch");
    expect(ground(0.4).facts.groundFt).toBeUndefined();
  });
});

describe("a headline ends with how the approach ended, and a circuit has no intercept", () => {
  const down = straightIn(9, centred, (b) => Math.max(680, Math.min(1650, beam(b))), { roll: false, to: 2 });
  const last = down.at(-1)!;
  const climb = Array.from({ length: 150 }, (_, k) => ({
    ...{ t: last.t + 1 + k, before: last.before - (k + 1) / 40, aside: 0, height: 680 + 10 * k },
  }));
  it("25 s level 5 ft above the decision altitude: said, with the doubt and no height inside it", () => {
    const to205 = straightIn(9, centred, (b) => Math.max(205, Math.min(1650, beam(b))), {
      roll: false,
      to: -0.15,
    });
    const end = to205.at(-1)!;
    const up = climb.map((r, k) => ({
      ...r,
      t: end.t + 1 + k,
      before: end.before - (k + 1) / 40,
      height: 205 + 10 * k,
    }));
    // 205 ft on the beam lie 0.49 NM before the threshold, 26 s before the climb at 90 kt, less what smoothing rounds
    const { facts, findings } = measured(approachTo(FIELD), [...to205, ...up]);
    const record = { kind: "approach", findings, facts } as unknown as Parameters<typeof approachSentence>[0];
    const headline = approachSentence(record);
    expect(headline).toMatch(
      /, at the decision altitude as far as this log tells \(± \d+ ft\), after 0\.[56] NM flown level in (19|2[0-6]) seconds\.$/,
    );
    expect(headline).not.toContain("below the decision altitude");
    expect(said(findings, "missed-approach")).toContain("NM flown level in");
  });
  it("a climb from 480 ft above the decision altitude is told at once", () => {
    const { facts, findings } = measured(approachTo(FIELD), [...down, ...climb]);
    const record = { kind: "approach", findings, facts } as unknown as Parameters<typeof approachSentence>[0];
    expect(approachSentence(record)).toMatch(
      /Missed approach begun 2\.[01] NM before the threshold, (4[89]|50)0 ft \(± \d+ ft\) above the decision altitude, which it never came down to\.$/,
    );
    expect(said(findings, "missed-approach")).toMatch(
      /above the decision altitude, which it never came down to; climbing/,
    );
  });
  it("begun 350 ft above it, the doubt reaching to where it would be one at it: told so, and not that it never came down", () => {
    const to550 = straightIn(9, centred, (b) => Math.min(1650, beam(b)), { roll: false, to: 1.55 });
    const end = to550.at(-1)!;
    const up = climb.map((r, k) => ({
      ...{ ...r, t: end.t + 1 + k, before: end.before - (k + 1) / 40, height: end.height + 10 * k },
    }));
    const { facts, findings } = measured(approachTo(FIELD), [...to550, ...up]);
    const above = facts.missed!.altitudeFt - facts.minimum!.altitudeFt;
    expect(above).toBeGreaterThan(300);
    expect(above - facts.missed!.altimeter95Ft!).toBeLessThan(300);
    expect(findings.find(({ code }) => code === "missed-approach")!.facts.downToIt).toBe("perhaps");
    expect(said(findings, "missed-approach")).toMatch(/ above the decision altitude; climbing/);
  });
  it("a turn from base over full scale is no overshot intercept", () => {
    const rows: Row[] = [];
    const legs = [
      [180, 150],
      [90, 48],
      [-15, 60], // past the final by 0.2 NM, and back
      [0, 60],
    ] as const;
    let [angle, before, aside] = [180, -0.5, -1.2];
    for (const [to, seconds] of legs)
      for (let k = 0; k < seconds; k++) {
        angle -= Math.max(-3, Math.min(3, angle - to));
        before -= (Math.cos((angle * Math.PI) / 180) * 90) / 3600;
        aside += (Math.sin((angle * Math.PI) / 180) * 90) / 3600;
        rows.push({
          t: rows.length,
          before,
          aside,
          height: Math.max(0, Math.min(1000, beam(Math.max(0, before)))),
        });
      }
    const { facts, findings } = measured(approachTo(FIELD, { finalFix: null, finalFixAltitude: null }), rows);
    expect(facts.joinedFrom).toBe("circuit");
    expect(facts.intercept!.overshootNeedle).toBeGreaterThan(1);
    expect(findings.map(({ code }) => code)).not.toContain("final-overshot");
  });
});

it("an approach flown three times names the first of the others", () => {
  const evidence = { fromUtc: "2026-10-17T01:10:00.000Z", toUtc: "2026-10-17T01:16:00.000Z" };
  const found = { code: "flown-again", facts: { times: 3 }, evidence };
  expect(said([found], "flown-again")).toBe(
    "Flown 3 times on this flight; this is the one that fits best. The first other one was on the final from 01:10 to 01:16 UTC; written into the brief for each time, or with between, it is measured too.",
  );
  const whole = { ...found, facts: { times: 3, last: false, lastWhole: true } };
  expect(said([whole], "flown-again")).toContain(
    "; this is the last that was flown whole. The first other one",
  );
  const last = { ...found, facts: { times: 2, last: true, lastWhole: true } };
  expect(said([last], "flown-again")).toMatch(
    /^Flown 2 times on this flight; this is the last time\. The other /,
  );
});

it("flown three times and asked for twice: three, of which the brief asks for two", () => {
  const evidence = { fromUtc: "2026-10-17T01:10:00.000Z", toUtc: "2026-10-17T01:16:00.000Z" };
  const found = { code: "flown-again", facts: { times: 3, asked: 2 }, evidence };
  expect(said([found], "flown-again")).toContain(
    "Flown 3 times on this flight; the brief asks for 2 of them. The other one was on the final from 01:10",
  );
});

describe("level below a minimum descent altitude on the way to a landing", () => {
  const exercise = approachTo(FIELD, {
    guidance: { kind: "lnav", width: null, antenna: null, station: null, rnp: null },
    glidePath: null,
    minimum: { kind: "descent", altitude: FIELD.elevation + 480 },
  });
  /** Down 620 ft a mile from 5 NM, level at a height from where it is met to a mile before the threshold, and down to 50 ft over it. */
  const levelAt = (ft: number) => (b: number) =>
    b > 1 ? Math.min(1650, Math.max(ft, 1650 - (5 - b) * 620)) : 50 + b * (ft - 50);
  const codes = (ft: number) => measured(exercise, straightIn(9, centred, levelAt(ft))).findings;

  it("has a sentence of its own, with how long and how far below", () => {
    const words = said(codes(360), "level-below-minimum");
    // 1,290 ft at 620 ft a mile: 360 ft from 2.9 NM on, and 1.9 NM at 90 kt are 77 s
    expect(words).toMatch(
      /^Level for 7\d seconds 120 ft below the minimum descent altitude of 900 ft, 2\.\d to 1\.\d NM/,
    );
    expect(words).toContain("by right once the runway is in sight, which no log shows");
  });
  it("is not told where it was level at the minimum, or above it", () => {
    for (const ft of [480, 600])
      expect(codes(ft).map(({ code }) => code)).not.toContain("level-below-minimum");
  });
  it("is told as a minimum gone below, and not as that, where a climb away followed", () => {
    const climbs = (b: number) => (b > 1 ? levelAt(360)(b) : 360 + (1 - b) * 600);
    const { facts, findings } = measured(exercise, straightIn(9, centred, climbs, { roll: false, to: -1.5 }));
    expect(facts.missed).not.toBeNull();
    const told = findings.map(({ code }) => code);
    expect(told).toContain("below-minimum");
    expect(told).not.toContain("level-below-minimum");
  });
});

it("the descent from the minimum is told at the path's own angle", () => {
  const steep = approachTo(FIELD, {
    glidePath: { angle: 3.5, crossing: 50 },
    minimum: { kind: "descent", altitude: FIELD.elevation + 480 },
  });
  // left at 3 NM, where 3.5 degrees would leave it 430 / 371.6 NM before the threshold
  const height = (b: number) => Math.min(1650, b > 3 ? 480 + Math.max(0, b - 3.2) * 650 : 50 + b * 143);
  const { findings } = measured(steep, straightIn(9, centred, height));
  expect(said(findings, "left-minimum-early")).toContain("a descent on 3.5° begins 1.2 NM before it");
});

describe("stable at the gates, by FAA-H-8083-16: 1,000 ft/min from 1,000 ft down, bank under 15° below 500 ft", () => {
  const gate = (heightFt: number, changes: object) => ({
    heightFt,
    utc: "2026-10-17T01:00:00.000Z",
    lateral: { value: 0, doubt95: 0.04 },
    vertical: null,
    verticalFpm: -500,
    vertical95Fpm: 70,
    bankDeg: 0,
    groundSpeedChangeKt: 0,
    trackUnsteadyDeg: 0,
    ...changes,
  });
  const out = (heightFt: number, changes: object) =>
    unstable({
      gates: [gate(heightFt, changes)],
      glidePath: null,
      outcome: "missed",
      runway: { elevationFt: 1000 },
      missed: { lowestFt: 1420 },
    } as unknown as ApproachFacts);
  it.each([
    [1000, { verticalFpm: -1040 }, undefined],
    [1000, { verticalFpm: -1100 }, "rate"],
    [1000, { bankDeg: 20 }, undefined],
    [500, { bankDeg: 20 }, "bank"],
    [500, { bankDeg: -20, verticalFpm: -1100 }, "rate, bank"],
  ])("at %s ft %o: %s", (heightFt, changes, expected) => {
    expect(out(heightFt, changes)[0]?.facts.out).toBe(expected);
  });
  it("and how low it was continued counts from the threshold too: 1,420 ft over one of 1,000", () => {
    expect(said(out(1000, { verticalFpm: -1200 }), "unstable-at-gate")).toBe(
      "Not stable 1,000 ft above the threshold: sinking at 1,200 ft/min. Continued down to 420 ft above it.",
    );
  });
  it.each([
    [
      { groundSpeedChangeKt: -31 },
      "The ground speed fell 31 kt in the 30 seconds before 500 ft above the threshold.",
    ],
    [{ trackUnsteadyDeg: 7.2 }, "The track was unsteady by 7° about 500 ft above the threshold."],
    [
      { groundSpeedChangeKt: 18, trackUnsteadyDeg: 7.2 },
      "The ground speed rose 18 kt in the 30 seconds before 500 ft above the threshold, and the track was unsteady by 7°.",
    ],
  ])("what no text limits and no criterion judges is told, not called unstable: %o", (changes, words) => {
    expect(out(500, changes)).toEqual([]);
    const gates = { gates: [gate(500, changes)] } as unknown as ApproachFacts;
    expect(said(unsteady(gates), "unsteady-at-gate")).toBe(words);
  });
});

describe("the headline is the gravest that is true", () => {
  // 60 kt over the ground from 1.9 NM on, 30 before 500 ft above the threshold
  const slowed = straightIn(9, centred, (b) => Math.min(1650, beam(b))).map((r, _, all) => {
    const from = all.find(({ before }) => before <= 1.9)!.t;
    return r.t <= from ? r : { ...r, t: from + (r.t - from) * 1.5 };
  });
  it("a speed that no text limits leads nothing: how the final was held does, and how it ended", () => {
    const { facts, findings } = measured(approachTo(FIELD), slowed);
    const codes = findings.map(({ code }) => code);
    expect(codes).toContain("unsteady-at-gate");
    expect(codes[0]).toBe("final-within");
    const record = { kind: "approach", findings, facts } as unknown as Parameters<typeof approachSentence>[0];
    expect(approachSentence(record)).toMatch(
      /^The needle stayed within 0\.\d\d of full scale on the final\. .*Landed/,
    );
  });
  it("a needle over full scale leads an approach that was unsteady as well", () => {
    const off = slowed.map((r) => ({ ...r, aside: Math.min(0.5, 0.12 * Math.max(0, 5 - r.before)) }));
    const [lead] = measured(approachTo(FIELD), off).findings;
    expect(["final-within", "final-track-off", "unstable-at-gate"]).toContain(lead!.code);
  });
});
