import { describe, expect, it } from "vitest";
import { readStandard } from "../../src/brief/index.ts";
import { UnusableInput } from "../../src/quantity/issue.ts";

const TEXT = `standard: 1
id: valley-school
title: Valley school, instrument phase
citation: Training order 7, 3.2
course: { needle: 0.5, altitude_ft: 80 }
arc: { distance_nm: 0.5 }
`;

const codes = (text: string): string[] => {
  try {
    readStandard(text, "school.yaml");
  } catch (error) {
    if (error instanceof UnusableInput) return error.issues.map((i) => `${i.code} ${i.where.line}`);
    throw error;
  }
  return [];
};

describe("a school's own standard, by construction", () => {
  it("its limits are read, each cited to where the school wrote it; what it leaves out has no limit", () => {
    const standard = readStandard(TEXT, "school.yaml");
    expect(standard).toMatchObject({ id: "valley-school", title: "Valley school, instrument phase" });
    expect(standard.course.needle).toEqual({
      limit: 0.5,
      edge: "within",
      citation: "Training order 7, 3.2",
    });
    expect(standard.course.altitude?.limit).toBe(80);
    expect(standard.arc.distance?.limit).toBe(0.5);
    expect(standard.hold).toEqual({
      ...{
        needle: null,
        altitude: null,
        entry: null,
        legTime: null,
        legDistance: null,
        rules: null,
        speed: false,
      },
    });
  });

  it("whose holding rules count is the school's to say", () => {
    const text = `${TEXT}hold: { leg_s: 15, speed: true, holding: icao }\n`;
    expect(readStandard(text, "school.yaml").hold).toMatchObject({ rules: "icao", speed: true });
    expect(codes(text.replace("icao", "ours"))).toEqual(["brief-not-allowed 7"]);
  });

  it("limits of descents and approaches are read", () => {
    const text = `${TEXT}descent: { altitude_ft: 80 }\napproach: { needle: 0.5, glide_path: 0.4, gate_sink_fpm: 800, minimum_above_ft: 60, minimum_below_ft: 0, decision_above_ft: 50, missed_track_deg: 8 }\n`;
    const { approach, descent } = readStandard(text, "school.yaml");
    expect(descent.altitude?.limit).toBe(80);
    expect([approach.needle?.limit, approach.glidePath?.limit, approach.gates.sink?.limit]).toEqual([
      ...[0.5, 0.4, 800],
    ]);
    expect([approach.minimumDescent.above?.limit, approach.minimumDescent.below?.limit]).toEqual([60, 0]);
    expect(approach.decision).toMatchObject({ above: { limit: 50 }, below: null });
    expect(approach.missedTrack?.limit).toBe(8);
    expect([approach.fixAltitude, approach.gates.needle]).toEqual([null, null]);
  });

  it.each([
    [TEXT.replace("needle", "neddle"), "brief-unknown-key 5"],
    [TEXT.replace("0.5, alt", "-1, alt"), "brief-out-of-range 5"],
    [TEXT.replace("title:", "# title:"), "brief-missing-key 1"],
    [TEXT.replace("80", "eighty"), "brief-wrong-type 5"],
  ])("is refused whole where anything in it is wrong, with the place: case %#", (text, expected) => {
    expect(codes(text)).toEqual([expected]);
  });
});
