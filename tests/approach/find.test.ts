/** Finals found without a brief: to which runway, when, and where there is none. */
import { describe, expect, it } from "vitest";
import { findApproaches, measureApproach } from "../../src/approach/index.ts";
import type { Runway } from "../../src/brief/brief.ts";
import { destination } from "../../src/geodesy/index.ts";
import { fly, SCENARIOS } from "../../src/simulator/index.ts";
import { smoothTrack } from "../../src/track/index.ts";
import { truthRows } from "../support/csv.ts";
import { approachTo, beam, FIELD, straightIn, trackOf } from "../support/flown-approach.ts";

const { runway } = approachTo(FIELD);
const reversed: Runway = { ...runway, ident: "04", threshold: runway.end, end: runway.threshold };
const beside = (metres: number, ident: string): Runway => ({
  ...runway,
  ident,
  threshold: destination(runway.threshold, FIELD.course + 90, metres),
  end: destination(runway.end, FIELD.course + 90, metres),
});
const flown = (name: string, seed = 1) => smoothTrack(fly(SCENARIOS[name]!, seed).track)!;

/** The open list's runways, both directions (OurAirports, ODbL 1.0; see tests/truth/runways.csv). */
const world = truthRows("runways.csv").flatMap((r): Runway[] => {
  const [a, b] = [
    { latitude: Number(r[2]), longitude: Number(r[3]) },
    { latitude: Number(r[6]), longitude: Number(r[7]) },
  ];
  return [
    { ident: `${r[0]} ${r[1]}`, threshold: a, end: b, elevation: Number(r[4]) },
    { ident: `${r[0]} ${r[5]}`, threshold: b, end: a, elevation: Number(r[8]) },
  ];
});

describe("by simulation: approaches to runway 22", () => {
  it.each(Object.keys(SCENARIOS).filter((n) => n.startsWith("approach-")))(
    "%s: one final, to 22 and not to 04, among 480 runways of the world",
    (name) => {
      const found = findApproaches(flown(name), [reversed, runway, ...world]);
      expect(found.map((f) => f.exercise.runway.ident)).toEqual(["22"]);
    },
  );
  it("an hour of training has its two low approaches, in flown order", () => {
    const found = findApproaches(flown("hour-of-training"), [runway, reversed]);
    expect(found.map((f) => f.exercise.runway.ident)).toEqual(["22", "22"]);
    expect(found[0]!.span.end).toBeLessThanOrEqual(found[1]!.span.end);
  });
  it.each(["calm-and-tidy", "hold-direct", "cross-country", "procedure-turn"])("%s has none", (name) => {
    expect(findApproaches(flown(name), [runway, reversed])).toEqual([]);
  });
});

describe("by construction", () => {
  const motion = (rows: ReturnType<typeof straightIn>) => smoothTrack(trackOf(approachTo(FIELD), rows))!;
  const tidy = motion(
    straightIn(
      8,
      () => 0,
      (b) => Math.min(1650, beam(b)),
    ),
  );
  it("of two parallel runways 300 m apart the one that was flown to, whichever is named first", () => {
    const [left, right] = [beside(-300, "22L"), beside(300, "22R")];
    expect(findApproaches(tidy, [left, runway, right]).map((f) => f.exercise.runway.ident)).toEqual(["22"]);
    expect(findApproaches(tidy, [right, runway]).map((f) => f.exercise.runway.ident)).toEqual(["22"]);
  });
  it("level over the runway at 2,500 ft is no approach", () => {
    expect(
      findApproaches(
        motion(
          straightIn(
            8,
            () => 0,
            () => 2500,
            { roll: false, to: -4 },
          ),
        ),
        [runway],
      ),
    ).toEqual([]);
  });
  it("what is offered can be measured, and says that needle and path are supposed", () => {
    const [found] = findApproaches(tidy, [runway]);
    const { exercise, span } = found!;
    const { facts } = measureApproach({ exercise, path: tidy, span, motion: tidy, wind: null });
    expect(facts.guidance).toMatchObject({ kind: "centre-line", supposed: true });
    expect(facts.glidePath).toMatchObject({ angleDeg: 3, supposed: true });
    expect([facts.outcome, facts.finalFix, facts.minimum]).toEqual(["landed", null, null]);
  });
});

describe("by simulation: finals out of a circuit", () => {
  it.each(["rectangular-circuits", "narrow-circuits"])("%s: said to be that, and no hold", (name) => {
    // the first is joined from afar
    const measured = Array.from({ length: 4 }, (_, k) => flown(name, 5000 + k)).flatMap((motion) =>
      findApproaches(motion, [runway])
        .slice(1)
        .map(
          ({ exercise, span }) => measureApproach({ exercise, path: motion, span, motion, wind: null }).facts,
        ),
    );
    const later = measured.map(({ joinedFrom }) => joinedFrom);
    // 1,000 ft are left on the downwind or base leg there, which is no gate of the final
    for (const { gates } of measured)
      for (const { lateral } of gates) expect(Math.abs(lateral?.value ?? 0)).toBeLessThan(6);
    expect(later.filter((joined) => joined === "circuit").length).toBeGreaterThanOrEqual(4);
    expect(later).not.toContain("hold");
    expect(later).not.toContain("procedure-turn");
  });
});
