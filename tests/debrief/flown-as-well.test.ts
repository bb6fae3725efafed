/** A course or a leg that was left by a full turn and rejoined: both parts are told, with their times; and a leg flown from its end to its beginning is told so. */
import { expect, it } from "vitest";
import { destination } from "../../src/geodesy/index.ts";
import { standardNamed } from "../../src/grade/index.ts";
import { exerciseSentence, findingSentence } from "../../src/report/index.ts";
import { debriefOf, gpxText, type LoggedPoint } from "../support/debriefed.ts";

const TARNO = { latitude: 35.6, longitude: 172.3 };
const NM = 1852;
const WESTO = destination(TARNO, 270, 20 * NM);
const brief = (exercise: string) => `brief: 1
fixes:
  TARNO: { lat: 35.6, lon: 172.3, kind: vor, declination: 0 }
  WESTO: { lat: ${WESTO.latitude}, lon: ${WESTO.longitude} }
exercises:
  - { ${exercise} }
`;

/** At 100 kt from a place, tracks each held for so many seconds after a turn of so many degrees at 3° a second; a degree is a third of a second. */
function flown(
  begin: typeof TARNO,
  track: number,
  parts: readonly (readonly [turn: number, seconds: number])[],
): LoggedPoint[] {
  const points: LoggedPoint[] = [];
  let [place, seconds, to] = [begin, 0, track];
  const second = (turn: number) => {
    points.push({ ...place, seconds: seconds++ });
    to += turn;
    place = destination(place, to, (100 * NM) / 3600);
  };
  for (const [turn, straight] of parts) {
    for (let k = 0; k < Math.abs(turn) / 3; k++) second(Math.sign(turn) * 3);
    for (let k = 0; k < straight; k++) second(0);
  }
  return points;
}

async function told(points: readonly LoggedPoint[], exercise: string) {
  const standard = standardNamed("instrument-rating-us")!;
  const { document } = await debriefOf(gpxText(points), brief(exercise), { standard });
  const [course] = document.exercises;
  return {
    course: course!,
    sentence: exerciseSentence(course!),
    as: course!.findings.filter(({ code }) => code === "flown-as-well"),
    words: course!.findings.map((f) => findingSentence(f, course!)).join(" "),
  };
}
const second = (utc: string | null) => (Date.parse(utc!) - Date.UTC(2026, 9, 17, 1)) / 1000;

// 330 s on the course, 120 s once round, on along it: 8 s more or less for the edges of a smoothed turn
const once = flown(destination(WESTO, 90, 0.2 * NM), 90, [
  [0, 330],
  [360, 0],
  [0, 270],
]);

it.each(["course: 090T, to: TARNO", "leg: [WESTO, TARNO], scale: rnav-1"])(
  "by construction: %s, once round in it: both parts are told",
  async (exercise) => {
    const { course, as, words } = await told(once, exercise);
    expect(as).toHaveLength(1);
    const parts = [
      [second(course.startUtc), second(course.endUtc)],
      [second(as[0]!.evidence.fromUtc), second(as[0]!.evidence.toUtc)],
    ].sort((a, b) => a[0]! - b[0]!);
    for (const [seen, truth] of [
      [parts[0]![1]!, 330],
      [parts[1]![0]!, 450],
    ] as const)
      expect(Math.abs(seen - truth)).toBeLessThan(9);
    expect(words).toMatch(
      /It was flown (before that|later) too, from 01:0\d to 01:\d\d UTC, which is not judged/,
    );
  },
);

it("by construction: flown once, nothing is said of another time", async () => {
  const { as } = await told(flown(WESTO, 90, [[0, 600]]), "leg: [WESTO, TARNO], scale: rnav-1");
  expect(as).toEqual([]);
});

it("by construction: a leg flown backwards is told so, when, and stays not flown", async () => {
  const points = flown(TARNO, 270, [
    [0, 700],
    [90, 100],
  ]);
  const { course, sentence } = await told(points, "leg: [WESTO, TARNO], scale: rnav-1");
  expect(course.findings[0]!.code).toBe("flown-other-way");
  expect(second(course.findings[0]!.evidence.fromUtc)).toBeLessThan(20);
  expect(new Set(course.verdicts.map(({ verdict }) => verdict))).toEqual(new Set(["not flown"]));
  expect(sentence).toMatch(
    /^It was flown the other way round, 01:00 to 01:1\d UTC, from TARNO to WESTO; as the brief gives it, it was not flown/,
  );
});

it("by construction: a leg beside which another course was flown the other way, 10 NM off, is none", async () => {
  const points = flown(destination(TARNO, 0, 10 * NM), 270, [[0, 700]]);
  const { course } = await told(points, "leg: [WESTO, TARNO], scale: rnav-1");
  expect(course.findings.map(({ code }) => code)).not.toContain("flown-other-way");
});
