import { describe, expect, it } from "vitest";
import { readBrief, resolveBrief } from "../../src/brief/index.ts";
import { courseThrough, positionOn } from "../../src/geodesy/index.ts";
import type { Position } from "../../src/geodesy/position.ts";
import { type FlownPath, matchExercises } from "../../src/match/index.ts";
import { type FlownPathWithTruth, flyPath } from "../support/flown-path.ts";
import { near } from "../support/near.ts";

const START = Date.UTC(2026, 9, 17, 9, 40);
const TARNO = { latitude: 35.6, longitude: 172.3 };
const BELVO = { latitude: 35.7, longitude: 172.3 };

const briefOf = (...exercises: string[]) =>
  resolveBrief(
    readBrief(
      `brief: 1
fixes:
  TARNO: { lat: 35.6, lon: 172.3, kind: vor, declination: 0 }
  BELVO: { lat: 35.7, lon: 172.3 }
  KESTI: { lat: 35.7, lon: 172.5 }
  MORSU: { lat: 35.7, lon: 172.34 }
exercises:
${exercises.map((e) => `  - { ${e} }`).join("\n")}
`,
      "test.yaml",
    ),
    { time: START },
  );

/** A place so far along (and right of) a true course through a fix. */
const at = (fix: Position, course: number, alongNm: number, acrossNm = 0) =>
  positionOn(courseThrough(fix, course), alongNm * 1852, acrossNm * 1852);

const timed = ({ straights: _, ...path }: FlownPathWithTruth): FlownPath => path;
const untimed = ({ latitude, longitude }: FlownPath): FlownPath => ({
  time: null,
  latitude,
  longitude,
  trackAngle: null,
  legs: null,
});

function expectSpan(span: { start: number; end: number } | null, start: number, end: number, within: number) {
  expect(span).not.toBeNull();
  near(span!.start, start, within, "s", "start");
  near(span!.end, end, within, "s", "end");
}

/** Both ways to see a path: with times, turns and tracks, and as bare positions (there a turn's edge is blurred by half a chord, 4 s). */
const WAYS = [
  { way: "timed", see: timed, within: 3 },
  { way: "untimed", see: (p: FlownPathWithTruth) => untimed(timed(p)), within: 6 },
];

describe.each(WAYS)("by construction: the short final of a tight circuit, $way", ({ see }) => {
  const threshold = BELVO;
  const end = at(threshold, 220, 0.7);
  const place = ({ latitude, longitude }: Position) => `[${latitude.toFixed(6)}, ${longitude.toFixed(6)}]`;
  const brief = resolveBrief(
    readBrief(
      `brief: 1
exercises:
  - approach:
      runway: { ident: "22", threshold: ${place(threshold)}, end: ${place(end)}, elevation_ft: 420 }
      guidance: centre-line
`,
      "test.yaml",
    ),
    { time: START },
  );
  /** Downwind, base, and a final of so many miles on which so much is flown before turning off. */
  const circuit = (final: number, flown: number) =>
    matchExercises(
      brief,
      see(
        flyPath(at(threshold, 220, 1, -1), START, [
          { track: 40, nm: 1 + final },
          { track: 310, nm: 1 },
          { track: 220, nm: flown },
          { track: 130, nm: 1 },
        ]),
      ),
    )[0]!.span;

  it("of 0.8 NM to the runway is matched, and what followed with it", () => {
    expect(circuit(0.8, 2)).not.toBeNull();
  });
  it("so little of it that did not lead to the runway is none", () => {
    expect(circuit(2, 0.8)).toBeNull();
  });
});

describe.each(WAYS)("by construction: a leg beside the final course to a threshold, $way", ({ see }) => {
  const end = at(BELVO, 220, 0.7);
  const place = ({ latitude, longitude }: Position) => `[${latitude.toFixed(6)}, ${longitude.toFixed(6)}]`;
  const brief = resolveBrief(
    readBrief(
      `brief: 1\nexercises:\n  - approach: { runway: { ident: "22", threshold: ${place(BELVO)}, end: ${place(end)}, elevation_ft: 420 }, guidance: localizer }\n`,
      "test.yaml",
    ),
    { time: START },
  );
  /** 6 NM along the final, so far beside it and losing so much a mile, to 2,000 ft abeam the threshold. */
  const beside = (acrossNm: number, feetPerNm: number | null) => {
    const path = see(flyPath(at(BELVO, 220, -6, acrossNm), START, [{ track: 220, nm: 6.5 }]));
    const { length } = path.latitude;
    const heightAt = (i: number) => 2000 + feetPerNm! * 6.5 * (1 - i / length);
    const altitude = Float64Array.from({ length }, (_, i) => heightAt(i));
    return matchExercises(brief, feetPerNm === null ? path : { ...path, altitude })[0]!.span;
  };

  it.each([1, -2.8])("level, %d NM beside it all along, as on a downwind leg, is no approach", (acrossNm) => {
    expect(beside(acrossNm, 0)).toBeNull();
    expect(beside(acrossNm, -200)).toBeNull();
  });
  it("coming down on the usual path of 318 ft/NM it is one, however far off", () => {
    expect(beside(1, 318)).not.toBeNull();
  });
  it("level on the course, as at a minimum, it is one; so where no height tells", () => {
    expect(beside(0.1, 0)).not.toBeNull();
    expect(beside(1, null)).not.toBeNull();
    expect(beside(1, Number.NaN)).not.toBeNull();
  });
});

describe.each(WAYS)("by construction: a path flown by ruler, $way", ({ see, within }) => {
  it("a course to a fix is matched from roll-out to the fix, not to where it goes on", () => {
    const path = flyPath(at(TARNO, 218, -12, -3), START, [
      { track: 308, nm: 2.47 },
      { track: 218, nm: 14 },
      { track: 300, nm: 4 },
    ]);
    const [match] = matchExercises(briefOf("course: 218, to: TARNO"), see(path));
    // The first straight closes at 90° and is the intercept; 12 NM less the turn's radius are left to the fix.
    const toFix = Math.round(((12 - 0.53) / 100) * 3600);
    expectSpan(match!.span, 0, path.straights[1]!.start + toFix, within);
    expect(match!.confidence).toBeGreaterThan(0.8);
  });

  it("a course from a fix is matched from the fix to the turn away", () => {
    const path = flyPath(at(TARNO, 305, -4), START, [
      { track: 305, nm: 12 },
      { track: 35, nm: 5 },
    ]);
    const [match] = matchExercises(briefOf("course: 305, from: TARNO"), see(path));
    expectSpan(match!.span, 144, path.straights[0]!.end, within);
    expect(match!.confidence).toBeGreaterThan(0.9);
  });

  it("an intercept of 60° belongs to the course that it leads onto", () => {
    const path = flyPath(at(TARNO, 218, -14, 5), START, [
      { track: 308, nm: 1 },
      { track: 158, nm: 8, turn: "left" },
      { track: 218, nm: 5 },
    ]);
    const [match] = matchExercises(briefOf("course: 218, to: TARNO"), see(path));
    expect(Math.abs(match!.span!.start - path.straights[1]!.start)).toBeLessThanOrEqual(within);
    expect(match!.span!.end).toBeGreaterThan(path.straights[1]!.end + 60);
  });

  it("a short leg of 2 NM between longer ones", () => {
    // 35.7 N: 0.04° of longitude are 1.95 NM.
    const path = flyPath(at(BELVO, 0, -8), START, [
      { track: 0, nm: 7.47 },
      { track: 90, nm: 0.9 },
      { track: 180, nm: 6 },
    ]);
    const matches = matchExercises(briefOf("leg: [TARNO, BELVO]", "leg: [BELVO, MORSU]"), see(path));
    expectSpan(matches[1]!.span, path.straights[1]!.start, path.straights[1]!.end, within);
    expect(matches[0]!.span!.end).toBeLessThanOrEqual(matches[1]!.span!.start + 1);
  });

  it.each([
    { label: "12° off all along", place: at(TARNO, 218, -10, 2.13), track: 230 - 24 },
    { label: "2 NM left, parallel", place: at(TARNO, 218, -10, -2), track: 218 },
    { label: "2 NM right, parallel", place: at(TARNO, 218, -10, 2), track: 218 },
  ])("a badly flown course is still that course, with less confidence: $label", ({ place, track }) => {
    const path = flyPath(place, START, [{ track, nm: 9.8 }]);
    const [match] = matchExercises(briefOf("course: 218, to: TARNO"), see(path));
    expectSpan(match!.span, 0, path.time.length, 2 * within);
    expect(match!.confidence).toBeLessThan(0.75);
    expect(match!.confidence).toBeGreaterThan(0.1);
  });

  it("a chased needle with swings of 40° does not cut the course to pieces", () => {
    const path = flyPath(at(TARNO, 218, -10), START, [{ track: 218, nm: 9.8 }], 40);
    const [match] = matchExercises(briefOf("course: 218, to: TARNO"), see(path));
    expectSpan(match!.span, 0, path.time.length, 15);
  });

  it("a course flown the other way is never matched", () => {
    const path = flyPath(at(TARNO, 218, 1), START, [{ track: 38, nm: 14 }]);
    const matches = matchExercises(briefOf("course: 218, to: TARNO", "leg: [BELVO, TARNO]"), see(path));
    for (const match of matches) expect(match).toMatchObject({ span: null, confidence: 0, by: "geometry" });
  });

  it("a course flown on the wrong side of its fix is not matched", () => {
    const path = flyPath(at(TARNO, 305, -12), START, [{ track: 305, nm: 11.9 }]);
    const [match] = matchExercises(briefOf("course: 305, from: TARNO"), see(path));
    expect(match!.span).toBeNull();
  });

  it("an exercise that was not flown is null, and those about it keep their places", () => {
    const path = flyPath(at(TARNO, 218, -10), START, [
      { track: 218, nm: 10 },
      { track: 305, nm: 10 },
    ]);
    const brief = briefOf(
      "course: 218, to: TARNO",
      "leg: [BELVO, KESTI]",
      "course: 90, from: TARNO",
      "course: 305, from: TARNO",
    );
    const matches = matchExercises(brief, see(path));
    expect(matches.map((m) => m.span !== null)).toEqual([true, false, false, true]);
    expect(matches.map((m) => m.exercise)).toEqual([0, 1, 2, 3]);
  });

  it("the order of the brief decides between passes over the same course", () => {
    // Inbound, outbound on the reverse, and inbound again.
    const path = flyPath(at(TARNO, 218, -10), START, [
      { track: 218, nm: 10 },
      { track: 308, nm: 0.2, turn: "right" },
      { track: 38, nm: 10, turn: "right" },
      { track: 128, nm: 0.2, turn: "right" },
      { track: 218, nm: 10, turn: "right" },
    ]);
    const [first, , third] = path.straights.filter((_, i) => i % 2 === 0);
    const three = briefOf("course: 218, to: TARNO", "course: 38, from: TARNO", "course: 218, to: TARNO");
    const matches = matchExercises(three, see(path));
    const middles = matches.map((m) => (m.span!.start + m.span!.end) / 2);
    near(middles[0]!, (first!.start + first!.end) / 2, 15, "s");
    near(middles[2]!, (third!.start + third!.end) / 2, 40, "s");
    expect(matches[0]!.span!.end).toBeLessThanOrEqual(matches[1]!.span!.start);
    expect(matches[1]!.span!.end).toBeLessThanOrEqual(matches[2]!.span!.start);

    // After the outbound course only the second pass is left; it has no rival there.
    const after = matchExercises(briefOf("course: 38, from: TARNO", "course: 218, to: TARNO"), see(path));
    expect(after[1]!.span!.start).toBeGreaterThan(after[0]!.span!.end - 1);
    // Alone, the two passes are rivals, and the doubt shows.
    const [alone] = matchExercises(briefOf("course: 218, to: TARNO"), see(path));
    expect(alone!.confidence).toBeLessThan(0.6);
    expect(matches[0]!.confidence).toBeGreaterThan(0.7);
  });
});

describe("windows of the brief", () => {
  const path = flyPath(at(TARNO, 218, -10), START, [
    { track: 218, nm: 10 },
    { track: 305, nm: 10 },
  ]);

  it("a window is taken as given, from its first second up to its end", () => {
    const [match] = matchExercises(
      briefOf("course: 218, to: TARNO, between: ['09:41', '09:42:30']"),
      timed(path),
    );
    expect(match).toEqual({ exercise: 0, span: { start: 60, end: 150 }, by: "between", confidence: 1 });
  });

  it("a window that runs past the flight is clipped to it", () => {
    const [match] = matchExercises(
      briefOf("course: 305, from: TARNO, between: ['09:50', '11:00']"),
      timed(path),
    );
    expect(match!.span).toEqual({ start: 600, end: path.time.length });
  });

  it("a window outside the flight gives no span", () => {
    const [match] = matchExercises(
      briefOf("course: 218, to: TARNO, between: ['13:00', '13:10']"),
      timed(path),
    );
    expect(match).toEqual({ exercise: 0, span: null, by: "between", confidence: 0 });
  });

  it("a run in the window of one exercise is not given to another", () => {
    const brief = briefOf("course: 218, to: TARNO, between: ['09:40', '09:46']", "course: 218, to: TARNO");
    const matches = matchExercises(brief, timed(path));
    expect(matches[0]!.by).toBe("between");
    expect(matches[1]!.span).toBeNull();
  });

  it("a hold is found by its window alone", () => {
    const brief = briefOf(
      "hold: TARNO, inbound: 218, between: ['09:41', '09:44']",
      "hold: TARNO, inbound: 218",
    );
    const matches = matchExercises(brief, timed(path));
    expect(matches[0]!.span).toEqual({ start: 60, end: 240 });
    expect(matches[1]).toMatchObject({ span: null, confidence: 0 });
  });

  it("without times a window is no help and geometry decides", () => {
    const draft = briefOf("course: 305, from: TARNO, between: ['09:41', '09:42']");
    const [match] = matchExercises(draft, untimed(timed(path)));
    expect(match!.by).toBe("geometry");
    expect(match!.span!.start).toBeGreaterThan(300);
  });
});

describe("odd paths", () => {
  it.each([0, 1, 2])("a path of %i rows matches nothing and does not throw", (rows) => {
    const brief = briefOf("course: 218, to: TARNO", "leg: [TARNO, BELVO]");
    const path = untimed({ ...timed(flyPath(TARNO, START, [{ track: 0, nm: 1 }])) });
    const short = {
      ...path,
      latitude: path.latitude.slice(0, rows),
      longitude: path.longitude.slice(0, rows),
    };
    expect(matchExercises(brief, short).map((m) => m.span)).toEqual([null, null]);
  });

  it("an aircraft that stands still is on no course", () => {
    const path: FlownPath = {
      ...untimed(timed(flyPath(TARNO, START, [{ track: 0, nm: 1 }]))),
      latitude: new Float64Array(500).fill(35.5),
      longitude: new Float64Array(500).fill(172.3),
    };
    expect(matchExercises(briefOf("course: 360, to: TARNO"), path)[0]!.span).toBeNull();
  });

  it("the antimeridian is no border", () => {
    const fix = "{ lat: 10, lon: 180, declination: 0 }";
    const text = `brief: 1\nfixes:\n  BELVO: ${fix}\nexercises:\n  - { course: 90, to: BELVO }\n`;
    const brief = resolveBrief(readBrief(text, "t.yaml"), { time: START });
    const path = flyPath(at({ latitude: 10, longitude: 180 }, 90, -10), START, [{ track: 90, nm: 15 }]);
    const [match] = matchExercises(brief, timed(path));
    expectSpan(match!.span, 0, 360, 3);
    expect(path.longitude.at(-1)!).toBeLessThan(0);
  });
});
