/** What is typed in the maker of a brief becomes a written brief; by construction. */
import geographiclib from "geographiclib-geodesic";
import { describe, expect, it } from "vitest";
import { directionNote, runwayNote } from "../../../web/maker/direction-note.ts";
import { feetNote, heightComplaint } from "../../../web/maker/feet.ts";
import { fieldText } from "../../../web/maker/field-values.ts";
import { fieldsOf } from "../../../web/maker/fields.ts";
import { complaintsAt, draftAt, resolvedAt } from "../../../web/maker/reading.ts";
import { endComplaint } from "../../../web/maker/runway-line.ts";
import { typedSteps } from "../../../web/maker/steps.ts";
import { at, placeNote, put, typedNumber, typedPlace, type Values } from "../../../web/maker/values.ts";
import { typedWinds, windsText, windsTyped } from "../../../web/maker/winds.ts";
import { writtenValues } from "../../../web/maker/written.ts";
import { brief, read, TIME } from "./lesson.ts";

describe("values as typed", () => {
  it.each([
    ["100", 100],
    ["97,5", 97.5],
    ["1,800", 1800],
    ["1 800", 1800],
    [" -3.25 ", -3.25],
    ["041", 41],
    ["218T", "218T"],
    ["12 or so", "12 or so"],
  ])("%s is read as %s", (text, number) => expect(typedNumber(text)).toBe(number));

  it.each([
    ["decision_ft", "1500 ft", 1500],
    ["decision_ft", "1,500ft MSL", 1500],
    ["elevation_ft", "420 feet", 420],
    ["tas_kt", "100 KTAS", 100],
    ["tas_kt", "100 kt", 100],
    ["radius_nm", "10 NM", 10],
    ["before_nm", "2,5 nm", 2.5],
    ["glide_path_deg", "3°", 3],
    ["declination", "-2.5°", -2.5],
    // thousands as any country parts them (ISO 80000-1, 7.3.1, from memory: a space; others common practice, no source)
    ["altitude_ft", "4.500", 4500],
    ["altitude_ft", "4,500", 4500],
    ["altitude_ft", "4'500", 4500],
    ["altitude_ft", "4’500 ft", 4500],
    ["altitude_ft", "4 500", 4500],
    ["altitude_ft", "4\u202f500 ft", 4500],
    ["minimum_ft", "12.500", 12500],
    ["elevation_ft", "1.200", 1200],
    ["elevation_ft", "12.5", 12.5],
    // what may be thousands or not is no height
    ["altitude_ft", "4.5", "4.5"],
    ["altitude_ft", "4,5", "4,5"],
    ["to_ft", "0.500", "0.500"],
    ["to_ft", "4.50", "4.50"],
    // nothing else is in thousands
    ["radius_nm", "12.500", 12.5],
    ["radius_nm", "12,500", 12.5],
    ["declination", "2,500", 2.5],
    // another field's unit is a slip
    ["decision_ft", "450 m", "450 m"],
    ["decision_ft", "100 kt", "100 kt"],
    ["tas_kt", "185 km/h", "185 km/h"],
    ["course", "218T", "218T"],
  ])("%s typed as %s is read as %s", (key, text, number) => expect(typedNumber(text, key)).toBe(number));

  it("a height of 4.5 is not flown as 4.5 ft: the field asks, and its exercise waits", () => {
    expect(heightComplaint("4.5")).toMatch(/^4\.5 ft\? Write whole feet/);
    expect(heightComplaint("4.500")).toBeNull();
    expect(feetNote("4.500")).toBe("4,500 ft");
    expect(feetNote("4500")).toBeNull();
    const course = { course: "218", to: "TARNO" };
    expect(draftAt(read(brief({ ...course, altitude_ft: "4.5" })), 0)).toBeNull();
    expect(draftAt(read(brief({ ...course, altitude_ft: "4.500" })), 0)?.altitude).toBe(4500);
  });

  it.each([
    ["LUMDO 2400, 2 NM 900", ["LUMDO", 2400], [2, 900]],
    ["LUMDO 2,400, 2 NM 900", ["LUMDO", 2400], [2, 900]],
    ["LUMDO 2.400; 2.5 NM 1'900 ft", ["LUMDO", 2400], [2.5, 1900]],
    ["LUMDO 2 400,2 NM 900", ["LUMDO", 2400], [2, 900]],
  ])("step-downs as in %s", (text, ...steps) => {
    const told = typedSteps(text)?.map(({ fix, before_nm, not_below_ft }) => [
      fix ?? before_nm,
      not_below_ft,
    ]);
    expect(told).toEqual(steps);
  });
  it("a step-down to 2.4 ft is none", () => expect(typedSteps("LUMDO 2.4")).toBeNull());
  it("a wind at 3.000 is at three thousand feet", () => {
    expect(typedWinds("195/20 at 3.000, 210/25 at 6'000 ft")?.map((w) => w.altitude_ft)).toEqual([
      3000, 6000,
    ]);
    expect(typedWinds("195/20 at 3.0")).toBeNull();
  });

  it("two minimums: the complaint names the fields as the page does", () => {
    const runway = { threshold: "35.672, 172.395", end: "35.6619, 172.3840", elevation_ft: "420 ft" };
    const both = { approach: { runway, guidance: "lnav", decision_ft: "620 ft", minimum_ft: "800 ft" } };
    const [words, ...others] = complaintsAt(read(brief(both)), ["exercises", 0, "approach", "minimum_ft"]);
    expect(words).toMatch(/Keep one of Decision altitude and Minimum descent altitude\.$/);
    expect(others).toEqual([]);
  });

  it.each([
    ["-33,9 150,2", -33.9, 150.2],
    ["-33,9; 150,2", -33.9, 150.2],
    ["-33,9, 150,2", -33.9, 150.2],
    ["33,9S 150,2E", -33.9, 150.2],
    ["-33,9 150", -33.9, 150],
    ["-33.9,150.2", -33.9, 150.2],
    ["33°54'S, 150°12'E", -33.9, 150.2],
  ])("%s, with decimal commas or without, is %d, %d", (text, latitude, longitude) => {
    expect(typedPlace(text)![0]).toBeCloseTo(latitude, 9);
    expect(typedPlace(text)![1]).toBeCloseTo(longitude, 9);
  });
  it("a place that was not typed in plain degrees is told in them", () => {
    expect(placeNote("-33,9 150,2")).toBe("-33.9, 150.2");
    expect(placeNote("33°54'S 150°12'E")).toBe("-33.9, 150.2");
    for (const plain of ["-33.9, 150.2", "-33.9 150.2", "-33,9 15", ""]) expect(placeNote(plain)).toBeNull();
  });
  it.each(["-33,9 15", "33,9 15,2,4", "-33,9 200"])(
    "%s is refused: it can be read in two ways, or in none",
    (text) => expect(typedPlace(text)).toBeNull(),
  );

  it.each([
    "35.672, 172.395",
    "35.672 172.395",
    "35,672 172,395",
    "35.672;172.395",
    "N35°40.32' E172°23.7'",
    "35°40.32'N 172°23.7'E",
    "35°40'19.2\"N, 172°23'42\"E",
  ])("%s is a place", (text) => {
    const [latitude, longitude] = typedPlace(text)!;
    expect(latitude).toBeCloseTo(35.672, 6);
    expect(longitude).toBeCloseTo(172.395, 6);
  });
  it.each(["", "35.672", "95, 172", "TARNO"])("%s is none", (text) => expect(typedPlace(text)).toBeNull());

  it("puts a value at a path and touches nothing else", () => {
    const before = brief({ course: "218", to: "TARNO" });
    const after = put(before, ["exercises", 0, "course"], "219") as Values;
    expect(at(after, ["exercises", 0])).toEqual({ course: "219", to: "TARNO" });
    expect(at(before, ["exercises", 0, "course"])).toBe("218");
    expect(after.fixes).toBe(before.fixes);
    expect(put({ a: { b: 1 } }, ["a", "b"], undefined)).toEqual({ a: {} });
  });
});

describe("a typed brief as it is written", () => {
  it("turns numbers and places, and leaves empty fields out", () => {
    const values = {
      ...brief({ hold: "TARNO", inbound: "247T", turns: "left", leg: "", altitude_ft: "4,000" }),
      aircraft: { tas_kt: "" },
    };
    expect(writtenValues(values, TIME)).toEqual({
      brief: 1,
      title: "Lesson 6",
      fixes: {
        TARNO: { lat: 35.6, lon: 172.3, kind: "vor", declination: 2.5 },
        BELVO: { lat: 35.668, lon: 172.069 },
      },
      exercises: [{ hold: "TARNO", inbound: "247T", turns: "left", altitude_ft: 4000 }],
    });
  });

  it("takes a runway from its two ends, or from its threshold, course and length", () => {
    const runway = (end: string) => ({
      approach: {
        runway: { ident: "22", threshold: "35.672, 172.395", end, elevation_ft: "420" },
        guidance: "localizer",
      },
    });
    const ends = read(brief(runway("35.6619, 172.3840"))).draft?.exercises[0];
    expect(ends).toMatchObject({ runway: { end: { latitude: 35.6619, longitude: 172.384 } } });
    const course = resolvedAt(read(brief(runway("221.5T 2600"))), 0, TIME);
    expect(course?.kind === "approach" && course.course.azimuth).toBeCloseTo(221.5, 6);
    const magnetic = resolvedAt(read(brief(runway("219 2600 ft"))), 0, TIME);
    expect(magnetic?.kind === "approach" && magnetic.magnetic).toBeCloseTo(219, 6);
    const { threshold, end } = course?.kind === "approach" ? course.runway : (null as never);
    const { s12 } = geographiclib.Geodesic.WGS84.Inverse(
      threshold.latitude,
      threshold.longitude,
      end.latitude,
      end.longitude,
    );
    expect(s12).toBeCloseTo(2600 * 0.3048, 3); // the international foot
    // without a length it is no runway yet: none is taken for it
    for (const bare of ["221.5T", "219", "219M"]) {
      expect(draftAt(read(brief(runway(bare))), 0)).toBeNull();
      expect(endComplaint(bare)).toMatch(/length in feet/);
    }
    for (const whole of ["221.5T 2600", "219/2600", "219, 2600 ft", "35.6619, 172.3840"])
      expect(endComplaint(whole)).toBeNull();
  });

  it("says under each direction of an approach what that one comes to, and which way the runway runs", () => {
    // WMM2025 has some 2.5° east near 35.6 N 172.3 E in October 2026
    const approach = (end: string, missed_course: string) => ({
      approach: {
        runway: { ident: "22", threshold: "35.672, 172.395", end, elevation_ft: "420" },
        guidance: "localizer",
        missed_course,
      },
    });
    const field = (label: string) => fieldsOf("approach").find((one) => one.label === label)!;
    const note = (label: string, end: string, missed: string) =>
      directionNote(resolvedAt(read(brief(approach(end, missed))), 0, TIME), field(label));
    expect(note("Missed approach course", "218T 4500", "250")).toMatch(/^252\.[4-6]°T, variation 2\.[4-6]°E/);
    expect(note("Missed approach course", "218T 4500", "250T")).toMatch(/^250°T/);
    expect(note("Final course", "218T 4500", "250")).toMatch(/^218°T/);
    expect(runwayNote(approach("218 4500", ""), TIME)).toMatch(
      /^runs 220\.[4-6]°T, variation 2\.[4-6]°E by WMM2025$/,
    );
    expect(runwayNote(approach("218T 4500", ""), TIME)).toMatch(/^runs 218°T/);
    // due west along the parallel, by construction
    expect(runwayNote(approach("35.672, 172.385", ""), TIME)).toMatch(/^runs 270°T/);
    expect(runwayNote(approach("218", ""), TIME)).toBeNull();
  });

  it("takes step-downs in one line, and shows them so again", () => {
    const approach = (step_downs: unknown) => ({
      approach: {
        runway: { threshold: "35.672, 172.395", end: "35.6619, 172.3840", elevation_ft: "420" },
        guidance: "lnav",
        step_downs,
      },
    });
    const field = fieldsOf("approach").find(({ label }) => label === "Step-downs")!;
    const typed = read(brief(approach("2 NM 900, 4.5 nm 1600 ft"))).draft?.exercises[0];
    expect(typed).toMatchObject({
      stepDowns: [
        { distance: 4.5, altitude: 1600 },
        { distance: 2, altitude: 900 },
      ],
    });
    const written = at(writtenValues(brief(approach("BELVO 2400, 2 NM 900")), TIME), [
      "exercises",
      0,
    ]) as Values;
    expect(fieldText(written, field)).toBe("BELVO 2400, 2 NM 900");
    expect(field.complaint!("at 900")).toBeNull(); // a fix of that name: the reader says that there is none
    expect(field.complaint!("900")).toContain("LUMDO 2400");
  });

  it("takes forecast winds in one line, keeps their doubt, and shows them so again", () => {
    const one = [{ altitude_ft: 3000, from_true: 195, kt: 20, doubt_kt: 6, source: "tower" }];
    expect(windsText(one)).toBe("195/20 at 3000");
    expect(typedWinds("200/25 at 3,000, 010T/30", one)).toEqual([
      { altitude_ft: 3000, from_true: 200, kt: 25, doubt_kt: 6, source: "tower" },
      { from_true: 10, kt: 30, source: "forecast" },
    ]);
    expect(windsText(windsTyped("195/20 ", windsTyped("195/2", one)))).toBe("195/20 ");
    expect(typedWinds("400/20")).toBeNull();
    expect(typedWinds("strong")).toBeNull();
    const reading = read({
      ...brief({ course: "218", to: "TARNO" }),
      wind: windsTyped("195/20 at 3000", []),
    });
    expect(reading.draft?.winds).toEqual([
      { from: 195, speed: 20, doubt: 8, altitude: 3000, source: "forecast" },
    ]);
    expect(
      read({ ...brief({ course: "218", to: "TARNO" }), wind: windsTyped("strong", one) }).usable,
    ).toContain("218");
  });

  it("keeps what this page does not know as it stands", () => {
    const odd = {
      ...brief({ course: 218, to: "TARNO" }),
      aircraft: { tas_kt: 100, category: "A" },
      $schema: "x",
    };
    expect(writtenValues(odd, TIME)).toMatchObject({
      aircraft: { tas_kt: 100, category: "A" },
      $schema: "x",
    });
  });
});
