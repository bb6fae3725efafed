/** The track of a missed approach against the course that the brief gives it. */
import { expect, it } from "vitest";
import { approachFactsSchema } from "../../src/approach/facts.ts";
import { gradeApproach, standardNamed } from "../../src/grade/index.ts";
import { direction } from "../../src/quantity/angle.ts";
import {
  approachTo,
  beam,
  FIELD,
  measured,
  type Row,
  secondsOf,
  straightIn,
} from "../support/flown-approach.ts";
import { near } from "../support/near.ts";

const us = standardNamed("instrument-rating-us")!;
const eu = standardNamed("instrument-rating-eu")!;
/** Down the path to 0.6 NM, then up again, so many degrees right of the final from there on. */
const away = (right: number): Row[] =>
  straightIn(
    9,
    (b) => (b < 0.6 ? (0.6 - b) * Math.tan((right * Math.PI) / 180) : 0),
    (b) => (b < 0.6 ? beam(0.6) + (0.6 - b) * 500 : Math.min(1650, beam(b))),
    { roll: false, to: -3 },
  );
/** `course`: of the missed approach, right of the final. */
const flown = (course: number | null, rows: readonly Row[]) => {
  const azimuth = direction(FIELD.course + (course ?? 0));
  const exercise = approachTo(FIELD, {
    missedCourse: course === null ? null : { azimuth, magnetic: null },
  });
  const { facts } = measured(exercise, rows);
  approachFactsSchema.parse(JSON.parse(JSON.stringify(facts)));
  const verdict = (standard: typeof us) =>
    gradeApproach(facts, standard).find((v) => v.criterion === "approach-missed-track") ?? null;
  return { facts, track: facts.missed!.course?.track ?? null, us: verdict(us), eu: verdict(eu) };
};

it("straight ahead as briefed: on its course, and met", () => {
  const { track, facts, us, eu } = flown(0, away(0));
  near(track!.meanErrorDeg, 0, 0.5, "deg");
  near(secondsOf(track!.toUtc) - secondsOf(track!.fromUtc), 30, 1.5, "s");
  near(secondsOf(track!.fromUtc), secondsOf(facts.missed!.startUtc), 1, "s");
  expect([us!.verdict, eu!.verdict]).toEqual(["met", "met"]);
});

it("15 degrees right of it: right positive, and not met; mirrored it is left", () => {
  const [right, left] = [flown(0, away(15)), flown(0, away(-15))];
  near(right.track!.worstErrorDeg, 15, 1, "deg");
  near(left.track!.worstErrorDeg, -15, 1, "deg");
  expect([right.us!.verdict, left.eu!.verdict]).toEqual(["not met", "not met"]);
});

it("8 degrees off are within the 10 of the US test and beyond the 5 of the European", () => {
  const { us, eu } = flown(0, away(8));
  expect([us!.verdict, eu!.verdict]).toEqual(["met", "not met"]);
});

it("a course that takes a turn and was never turned onto is not met, and says so", () => {
  const { track, us } = flown(90, away(0));
  expect([track!.turnedOnto, us!.verdict]).toEqual([false, "not met"]);
  near(track!.meanErrorDeg, -90, 1, "deg");
});

it("without a course in the brief nothing is judged, and that is said", () => {
  const { facts, us } = flown(null, away(0));
  expect(us).toBeNull();
  expect(facts.missed!.course ?? null).toBeNull();
  expect(facts.cannotTell).toContainEqual({ fact: "missedTrack", reason: "no-missed-course" });
});

it("where the log is silent over the climb it cannot be told", () => {
  const silent = away(0).filter(({ before }) => !(before < 0.3 && before > -0.3));
  const { track, us } = flown(0, silent);
  expect([track, us!.verdict, us!.reason]).toEqual([null, "cannot tell", "log-silent"]);
});
