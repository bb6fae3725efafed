/** A final whose fix is its VOR: overhead the needle swings by feet, and within a mile nobody judges it (common practice, no source). */
import { describe, expect, it } from "vitest";
import { approachFactsSchema } from "../../src/approach/facts.ts";
import { positionOn } from "../../src/geodesy/index.ts";
import { gradeApproach, standardNamed } from "../../src/grade/index.ts";
import { approachTo, beam, FIELD, measured, straightIn } from "../support/flown-approach.ts";

const US = standardNamed("instrument-rating-us")!;
const plain = approachTo(FIELD);
/** A VOR final of 5 NM with its station so far before the threshold. */
const vorFinal = (before: number) => {
  const station = { ...positionOn(plain.course, -before * 1852), ident: "V", kind: "vor" } as const;
  return approachTo(FIELD, {
    guidance: {
      kind: "vor",
      width: null,
      antenna: null,
      rnp: null,
      station: { ...station, declination: 0, elevation: null },
    },
    glidePath: null,
    minimum: { kind: "descent", altitude: FIELD.elevation + 500 },
  });
};
const verdict = (facts: ReturnType<typeof measured>["facts"], id: string) =>
  gradeApproach(facts, US).find((v) => v.criterion === id)!;
const path = (b: number) => Math.min(1650, beam(b));

describe("by construction: 500 ft beside the VOR that is the final fix, the track along the final", () => {
  const { facts, findings } = measured(
    vorFinal(5),
    straightIn(9, () => 500 / 6076, path),
  );
  it("needle judged a mile from the station and farther, where it shows 0.46 of full scale at most", () => {
    // atan(0.0823 NM / 1 NM) = 4.7 degrees of 10
    expect(Math.abs(facts.needle.max)).toBeGreaterThan(0.44);
    expect(Math.abs(facts.needle.max)).toBeLessThan(0.48);
    expect(verdict(facts, "approach-needle").verdict).toBe("met");
    approachFactsSchema.parse(JSON.parse(JSON.stringify(facts)));
  });
  it("established before the fix, and no needle told over it", () => {
    expect(facts.finalFixPassage).toMatchObject({ needle: null, established: true });
    expect(findings.map((f) => f.code)).not.toContain("joined-inside-final-fix");
  });
  it("what is too far off a mile out is not met", () => {
    const wide = measured(
      vorFinal(5),
      straightIn(9, () => 0.16, path),
    );
    expect(verdict(wide.facts, "approach-needle").verdict).toBe("not met");
  });
});

describe("a VOR on the field", () => {
  const { facts } = measured(
    vorFinal(0),
    straightIn(9, (b) => (b < 0.9 ? 0.05 : 0), path),
  );
  it("nothing of the last mile is judged", () => {
    expect(Math.abs(facts.needle.max)).toBeLessThan(0.1);
  });
  it("no needle is told at a gate within the mile", () => {
    const near = measured(
      vorFinal(1.5),
      straightIn(9, () => 0, path),
    );
    // 500 ft above the threshold on the path is 1.4 NM before it
    expect(near.facts.gates[1]!.lateral).toBeNull();
    expect(verdict(near.facts, "approach-gate-500-needle")).toMatchObject({
      verdict: "cannot tell",
      reason: "near-station",
    });
  });
});
