import { describe, expect, it } from "vitest";
import { readStandard } from "../../src/brief/index.ts";
import { gradeHold, standardNamed } from "../../src/grade/index.ts";
import type { HoldFacts } from "../../src/hold/facts.ts";
import { decidingVerdict, verdictSentence } from "../../src/report/index.ts";
import type { TestStandard } from "../../src/standard/test-standard.ts";
import { TEST_STANDARDS } from "../../src/standard/tolerance.ts";

const us = standardNamed("instrument-rating-us")!;
const eu = standardNamed("instrument-rating-eu")!;

interface Case {
  readonly heading?: number;
  readonly heading95?: number | null;
  readonly flown?: "direct" | "teardrop" | "parallel" | null;
  readonly turns?: "left" | "right";
  readonly flownTurns?: "left" | "right";
  readonly needles?: readonly (number | null)[];
  /** How each lap came onto the inbound course; established where not given. */
  readonly joined?: readonly ("established" | "near-station" | "never")[];
  readonly legOff?: readonly (number | null)[];
  /** What a silence at an end of each leg hides of its time, s; and the length of one that hides whole legs. */
  readonly hidden?: readonly number[];
  readonly unseenS?: number;
  readonly offNm?: number;
  readonly speed?: number | null;
  readonly heights?: readonly [number, number];
  readonly found?: boolean;
  /** What the wind asked for. */
  readonly solved?: HoldFacts["solved"];
}

/** A hold inbound 360 at 3,000 ft; the doubts: heading 3 degrees, needle 0.04, time of a leg 2 s, speed 4 kt. */
function facts(c: Case): HoldFacts {
  const { heading = 350, heading95 = 3, flown = "direct", turns = "right", flownTurns = turns } = c;
  const { needles = [0.1], legOff = [2], speed = 100, heights = [2980, 3020], found = false } = c;
  const utc = "2026-10-17T09:44:00.000Z";
  const laps = Array.from({ length: Math.max(needles.length, legOff.length) }, (_, i) => ({
    inbound: {
      fromUtc: utc,
      ...(c.hidden?.[i] ? { unseen: { most: c.hidden[i], seconds: c.hidden[i] } } : {}),
    },
    outbound: { fromUtc: utc, toUtc: utc },
    groundSpeedKt: 100,
    rollOut: { across95Nm: 0.01 },
    joined: c.joined?.[i] ?? "established",
    tracking:
      needles[i] == null
        ? null
        : { worstNeedle: needles[i], worstUtc: utc, doubt95: 0.04, beyondHalfS: 7, beyondThreeQuarterS: 3 },
    legOff:
      c.offNm === undefined
        ? legOff[i] == null
          ? null
          : { leg: "inbound", seconds: legOff[i], distanceNm: null }
        : { leg: "outbound", seconds: null, distanceNm: c.offNm },
  }));
  return {
    fix: { doubt95Nm: found ? 0.05 : null },
    inboundTrueDeg: 0,
    turns,
    asFlown: found ? null : { turns: flownTurns },
    sure: found ? true : null,
    scale: found ? null : { kind: "angular" },
    leg: c.offNm === undefined ? { by: "time", seconds: 60 } : { by: "distance", distanceNm: 4 },
    legTime95S: 2,
    legsUnseen: c.unseenS === undefined ? null : { fromUtc: utc, toUtc: utc, seconds: c.unseenS },
    entry: { headingTrueDeg: heading, heading95Deg: heading95, flown, utc },
    laps,
    solved: c.solved ?? null,
    altitude: {
      ...{ targetFt: null, lowestFt: heights[0], highestFt: heights[1], change95Ft: 20 },
      ...{ worstFt: heights[1], altimeter95Ft: 200, worstUtc: utc },
    },
    speed: speed === null ? null : { indicatedKt: speed, doubt95Kt: 4, mostKt: 200, citation: "j.2" },
  } as unknown as HoldFacts;
}

const verdict = (id: string, c: Case, standard: TestStandard = us) =>
  gradeHold(facts(c), standard).find(({ criterion }) => criterion === id);

describe("FAA AIM 5-3-8 j, FIG 5-3-4: direct from 70 degrees off one side to 110 off the other, teardrop to 180, parallel between; 5 degrees either way", () => {
  it.each([
    ["right", 109, "direct", "met", -1],
    ["right", 100, "teardrop", "not met", 10],
    ["right", 112, "direct", "met", 2],
    ["right", 115, "direct", "cannot tell", 5],
    ["right", 120, "direct", "not met", 10],
    ["right", 150, "teardrop", "met", -30],
    ["right", 250, "parallel", "met", -40],
    ["right", 250, "teardrop", "not met", 70],
    ["right", 292, "parallel", "met", 2],
    ["left", 251, "direct", "met", -1],
    ["left", 210, "teardrop", "met", -30],
    ["left", 110, "parallel", "met", -40],
    ["left", 110, "direct", "not met", 40],
  ] as const)(
    "%s turns, heading %s off the course, flown %s: %s, %s degrees outside",
    (turns, heading, flown, expected, value) => {
      const found = verdict("hold-entry", { turns, heading, flown })!;
      expect([found.verdict, found.unit, found.limit]).toEqual([expected, "deg", 5]);
      expect(found.value).toBeCloseTo(value);
    },
  );

  it("cannot be told where the heading, or what was flown, is not known, or the turns went the other way", () => {
    expect(verdict("hold-entry", { heading95: null })).toMatchObject({ reason: "wind-not-known" });
    expect(verdict("hold-entry", { flown: null })).toMatchObject({ reason: "entry-not-clear" });
    expect(verdict("hold-entry", { flownTurns: "left" })).toMatchObject({ reason: "wrong-way" });
  });

  it("nor can legs of a racetrack on the other side be held against what was asked", () => {
    for (const [id, offNm] of [["hold-leg-time"], ["hold-leg-length", 0.1]] as const)
      expect(verdict(id, { flownTurns: "left", ...(offNm ? { offNm } : {}) })).toMatchObject({
        verdict: "cannot tell",
        reason: "wrong-way",
      });
  });
});

describe("the procedure as briefed: which side the turns go to", () => {
  it.each([
    ["right", "met"],
    ["left", "not met"],
  ] as const)("turns to the right asked for, flown to the %s: %s", (flownTurns, expected) => {
    const side = verdict("hold-side", { turns: "right", flownTurns })!;
    expect(side).toMatchObject({ verdict: expected, reason: null, value: null, limit: null });
    expect(verdictSentence(side)).toBe(
      `${expected}: turned to the side that the brief gives (the procedure as briefed).`,
    );
  });
  it("is not asked of a hold that no brief names", () => {
    expect(verdict("hold-side", { found: true })).toBeUndefined();
  });
});

describe("what decides a hold", () => {
  const decides = (c: Case) => {
    const { criterion, verdict } = decidingVerdict(gradeHold(facts(c), us))!;
    return `${criterion} ${verdict}`;
  };
  it("is what was held, not a speed limit far off", () => {
    const clean = { speed: 94, needles: [0.1], legOff: [1] };
    expect(decides({ ...clean, heights: [2985, 3015] })).toBe("hold-height-steady met");
    expect(decides({ ...clean, legOff: [3], heights: [2999, 3001] })).toBe("hold-leg-time met");
    expect(decides({ ...clean, needles: [0.4], heights: [2999, 3001] })).toBe("hold-needle met");
    expect(decides({ ...clean, needles: [0], legOff: [0], heights: [3000, 3000] })).toBe("hold-entry met");
  });
  it("is the speed where that is past its limit, or nearer to it than all else", () => {
    expect(decides({ speed: 215 })).toBe("hold-speed not met");
    expect(decides({ speed: 195.5, legOff: [1] })).toBe("hold-speed met");
  });
  it("is the side before all else where it is the wrong one, and never where it is the right one", () => {
    expect(decides({ flownTurns: "left", needles: [2] })).toBe("hold-side not met");
    expect(decides({})).not.toBe("hold-side met");
  });
});

describe("FAA-S-ACS-8C III.B.S4: at most ¾ scale inbound, ±100 ft; Part-FCL appendix 7: half scale", () => {
  it.each([
    [[0.2, -0.7], us, "met"],
    [[0.2, -0.8], us, "not met"],
    [[0.74], us, "cannot tell"],
    [[0.45], eu, "met"],
    [[0.6], eu, "not met"],
  ] as const)("needles of %j: by the worst lap", (needles, standard, expected) => {
    expect(verdict("hold-needle", { needles }, standard)).toMatchObject({ verdict: expected, unit: "share" });
  });
  it("time beyond the limit is that of all laps", () => {
    expect(verdict("hold-needle", { needles: [0.9, 0.8] })?.beyondS).toBe(6);
    expect(verdict("hold-needle", { needles: [0.9, 0.8] }, eu)?.beyondS).toBe(14);
  });
  // FAA-S-ACS-8C III.B.S4 asks for the needle while tracking the course inbound: who was never on it tracked nothing
  it("a lap never established on the inbound course is never met, and says so; past the limit it is not met", () => {
    for (const needles of [
      [0.23, 0.4],
      [0.23, null],
    ])
      expect(verdict("hold-needle", { needles, joined: ["established", "never"] })).toMatchObject({
        ...{ verdict: "cannot tell", reason: "lap-never-established" },
      });
    const off = { needles: [0.23, 0.97], joined: ["established", "never"] } as const;
    expect(verdict("hold-needle", off)).toMatchObject({ verdict: "not met", value: 0.97 });
    expect(verdict("hold-needle", { needles: [null], joined: ["never"] })?.reason).toBe(
      "lap-never-established",
    );
  });
  it("of how many laps it is told, where one was joined within a mile of the station", () => {
    const found = verdict("hold-needle", { needles: [0.23, null], joined: ["established", "near-station"] })!;
    expect(found).toMatchObject({ verdict: "met", laps: { judged: 1, flown: 2 } });
    expect(verdictSentence(found)).toMatch(
      /^met: needle on the inbound course, worst, in 1 of 2 laps, 0\.23 /,
    );
  });
  it("legs that were flown within a mile of the station only cannot be told", () => {
    expect(verdict("hold-needle", { needles: [null] })).toMatchObject({ reason: "joined-near-station" });
  });
  it.each([
    [[2960, 3040], "met"],
    [[2850, 3100], "not met"],
  ] as const)("heights %j: %s", (heights, expected) => {
    expect(verdict("hold-height-steady", { heights })?.verdict).toBe(expected);
  });
});

describe("common practice, no source: a leg within 10 s of its time, or 0.3 NM of its length", () => {
  it.each([
    [[5, -7], "met"],
    [[5, -14], "not met"],
    [[11], "cannot tell"],
  ] as const)("legs off by %j s: %s", (legOff, expected) => {
    expect(verdict("hold-leg-time", { legOff })).toMatchObject({ verdict: expected, limit: 10, unit: "s" });
  });
  it("the worst leg is named, with its lap and its side", () => {
    const found = verdict("hold-leg-time", { legOff: [5, -14, 8] })!;
    expect(found.leg).toEqual({ lap: 2, leg: "inbound", off: "short" });
    expect(verdictSentence(found)).toContain("the inbound leg of lap 2, too short, 14 ± 2 s");
  });
  it.each([
    [[5, 2], [0, 3], "met", null],
    [[5, 2], [0, 9], "cannot tell", "leg-end-silent"],
    [[5, -14], [0, 9], "cannot tell", "leg-end-silent"],
    [[14, -14], [0, 9], "not met", null],
    [[5, -30], [0, 9], "not met", null],
  ] as const)("legs off by %j s with silences of %j s at an end: %s", (legOff, hidden, expected, reason) => {
    expect(verdict("hold-leg-time", { legOff, hidden })).toMatchObject({ verdict: expected, reason });
  });
  it("with whole legs in a silence nothing is met, though what was seen may be not met", () => {
    const silent = { reason: "log-silent", silentS: 40, verdict: "cannot tell" };
    expect(verdict("hold-leg-time", { legOff: [2], unseenS: 40 })).toMatchObject(silent);
    expect(verdict("hold-leg-time", { legOff: [-30], unseenS: 40 })?.verdict).toBe("not met");
  });
  it("nor is the needle, the height, or an entry before the silence ends", () => {
    const silent = { reason: "log-silent", silentS: 40, verdict: "cannot tell" };
    expect(verdict("hold-needle", { needles: [0.2], unseenS: 40 })).toMatchObject(silent);
    expect(verdict("hold-height-steady", { unseenS: 40 })).toMatchObject(silent);
    expect(verdict("hold-needle", { needles: [0.2, 1.4], unseenS: 40 })?.verdict).toBe("not met");
    expect(verdict("hold-height-steady", { heights: [2800, 3100], unseenS: 40 })?.verdict).toBe("not met");
    expect(verdict("hold-entry", { unseenS: 40 })).toMatchObject({ reason: "log-silent-there" });
  });
  it("no leg flown to its end cannot be told", () => {
    expect(verdict("hold-leg-time", { legOff: [null] })).toMatchObject({ reason: "no-whole-leg" });
  });
  it("nor can one be off a time that no racetrack has in that wind", () => {
    const none = { none: "inbound-too-short", leastInboundS: 98 } as const;
    expect(verdict("hold-leg-time", { legOff: [null], solved: none })).toMatchObject({
      verdict: "cannot tell",
      reason: "no-racetrack",
    });
  });
  it("a leg by distance is held to its length, not to a time", () => {
    expect(verdict("hold-leg-length", { offNm: 0.1 })?.verdict).toBe("met");
    expect(verdict("hold-leg-length", { offNm: -0.6 })?.verdict).toBe("not met");
    expect(verdict("hold-leg-time", { offNm: 0.1 })).toBeUndefined();
  });
});

describe("a school that does not say whose holding rules count", () => {
  const school = (holding: string) =>
    readStandard(
      `standard: 1\nid: a\ntitle: A\ncitation: A 1\nhold: { leg_s: 10, speed: true${holding} }\n`,
      "school.yaml",
    );
  it("is judged by no rules of another's: no time, and the reason; no speed", () => {
    expect(verdict("hold-leg-time", { legOff: [30] }, school(""))).toMatchObject({
      verdict: "cannot tell",
      reason: "holding-rules-not-named",
    });
    expect(verdict("hold-speed", { speed: 250 }, school(""))).toBeUndefined();
  });
  it("and by those that it names", () => {
    expect(verdict("hold-leg-time", { legOff: [30] }, school(", holding: us"))?.verdict).toBe("not met");
    expect(verdict("hold-speed", { speed: 250 }, school(", holding: us"))?.verdict).toBe("not met");
  });
});

describe("FAA AIM 5-3-8 j.2: 200 kt to 6,000 ft", () => {
  it.each([
    [150, "met"],
    [198, "cannot tell"],
    [210, "not met"],
  ] as const)("%s kt, ± 4: %s", (speed, expected) => {
    expect(verdict("hold-speed", { speed })).toMatchObject({
      verdict: expected,
      limit: 200,
      citation: "j.2",
    });
  });
});

describe("by construction", () => {
  it("a hold that was not flown has one line that says so", () => {
    const verdicts = gradeHold(null, us);
    expect(verdicts.map((v) => [v.criterion, v.verdict])).toEqual([["hold-entry", "not flown"]]);
  });
  it("a hold that no brief asked for is held to no course and no leg", () => {
    const ids = gradeHold(facts({ found: true }), us).map(({ criterion }) => criterion);
    expect(ids).toEqual(["hold-entry", "hold-speed", "hold-height-steady"]);
  });
  it("every limit of a hold names where it is written, or that it is nowhere", () => {
    for (const { hold } of TEST_STANDARDS)
      for (const limit of [hold.needle, hold.altitude, hold.entry, hold.legTime, hold.legDistance])
        expect(limit!.citation).not.toBe("");
  });
});
