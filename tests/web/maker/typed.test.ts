/** What is typed in the maker of a brief becomes a written brief; by construction. */
import { describe, expect, it } from "vitest";
import { readBrief } from "../../../src/brief/index.ts";
import { fieldText, kindOf, NEW_EXERCISE, withField } from "../../../web/maker/field-values.ts";
import { fieldsOf } from "../../../web/maker/fields.ts";
import { redone, startOf, stepped, undone } from "../../../web/maker/history.ts";
import { complaintsAt, draftAt, readMaking, resolvedAt, savedOf } from "../../../web/maker/reading.ts";
import { at, put, typedNumber, typedPlace, type Values } from "../../../web/maker/values.ts";
import { typedWinds, windsText, windsTyped } from "../../../web/maker/winds.ts";
import { writtenValues } from "../../../web/maker/written.ts";

const NOTHING = { points: [], runways: [], near: null };
const TIME = Date.UTC(2026, 9, 17, 1);
const HEAD = {
  brief: 1,
  title: "Lesson 6",
  fixes: {
    TARNO: { lat: 35.6, lon: 172.3, kind: "vor", declination: "2.5" },
    BELVO: { at: "35.668, 172.069" },
  },
};
const brief = (...exercises: Values[]): Values => ({ ...HEAD, exercises });
const read = (values: Values) => readMaking(values, NOTHING, TIME);

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
    "35.672, 172.395",
    "35.672 172.395",
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

  it("takes a runway from its two ends, or from its threshold and course", () => {
    const runway = (end: string) => ({
      approach: {
        runway: { ident: "22", threshold: "35.672, 172.395", end, elevation_ft: "420" },
        guidance: "localizer",
      },
    });
    const ends = read(brief(runway("35.6619, 172.3840"))).draft?.exercises[0];
    expect(ends).toMatchObject({ runway: { end: { latitude: 35.6619, longitude: 172.384 } } });
    const course = resolvedAt(read(brief(runway("221.5T"))), 0, TIME);
    expect(course?.kind === "approach" && course.course.azimuth).toBeCloseTo(221.5, 6);
    const magnetic = resolvedAt(read(brief(runway("219"))), 0, TIME);
    expect(magnetic?.kind === "approach" && magnetic.magnetic).toBeCloseTo(219, 6);
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

describe("reading as it is typed", () => {
  it("says what is wrong at its field, and the rest works", () => {
    const reading = read(
      brief({ course: "400", to: "TARNO" }, { hold: "BELVO", inbound: "247", turns: "right" }),
    );
    expect(complaintsAt(reading, ["exercises", 0, "course"])[0]).toContain("400");
    expect(complaintsAt(reading, ["exercises", 1], true)).toEqual([]);
    expect(draftAt(reading, 0)).toBeNull();
    expect(draftAt(reading, 1)?.kind).toBe("hold");
    expect(reading.usable).toContain("hold: BELVO");
    expect(reading.usable).not.toContain("400");
    expect(reading.yaml).toContain("400");
  });

  it("saves only what can be read again, and counts what waits for its fields", () => {
    const half = brief({ course: "218", to: "TARNO" }, { course: "", to: "" }, { hold: "BELVO" });
    const saved = savedOf(read(half), half)!;
    expect(saved.behind).toBe(2);
    const again = readBrief(saved.yaml, "brief.yaml");
    expect(again.exercises.map(({ title }) => title)).toEqual(["Course 218°M to TARNO"]);
    expect(again.issues).toEqual([]);
    const none = brief({ course: "", to: "" });
    expect(savedOf(read(none), none)).toBeNull();
    const whole = brief({ course: "218", to: "TARNO" });
    expect(savedOf(read(whole), whole)!.yaml).toBe(read(whole).yaml);
  });

  it("leaves a wrong aircraft and a wrong fix out of what is worked with, and keeps them as typed", () => {
    const values = { ...brief({ course: "218", to: "TARNO" }), aircraft: { tas_kt: "fast" } };
    const wrong = put(values, ["fixes", "BELVO", "at"], "somewhere") as Values;
    const reading = read(wrong);
    expect(reading.usable).not.toMatch(/fast|somewhere/);
    expect(reading.yaml).toMatch(/tas_kt: fast[\s\S]*lat: somewhere/);
    expect(complaintsAt(reading, ["aircraft", "tas_kt"])).toHaveLength(1);
  });

  it("writes out the fixes that lists know", () => {
    const point = {
      ident: "KESTI",
      latitude: 35.785,
      longitude: 172.318,
      kind: "waypoint",
      declination: null,
      elevation: null,
    } as const;
    const reading = readMaking(brief({ leg: ["TARNO", "KESTI"] }), { ...NOTHING, points: [point] }, TIME);
    expect(reading.usable).toContain("KESTI: { lat: 35.785, lon: 172.318 }");
  });

  it("shows a magnetic course as true with the station's declination, and a true one as it is", () => {
    const reading = read(brief({ course: "218", to: "TARNO" }, { course: "218T", to: "TARNO" }));
    const [magnetic, written] = [0, 1].map((i) => resolvedAt(reading, i, TIME));
    expect(magnetic?.kind === "course" && [magnetic.course.azimuth, magnetic.variation.from]).toEqual([
      220.5,
      "station",
    ]);
    expect(written?.kind === "course" && [written.course.azimuth, written.variation.from]).toEqual([
      218,
      "written-true",
    ]);
  });
});

describe("fields", () => {
  it.each(["course", "leg", "arc", "hold", "descent", "approach"] as const)(
    "of a new %s: typed, they come back",
    (kind) => {
      let exercise = NEW_EXERCISE[kind];
      expect(kindOf(exercise)).toBe(kind);
      for (const [i, field] of fieldsOf(kind).entries()) {
        const text = field.choices ? field.choices.at(-1)![0] : `${i + 1}`;
        exercise = withField(exercise, field, text);
        expect(fieldText(exercise, field)).toBe(text);
      }
      expect(kindOf(exercise)).toBe(kind);
    },
  );

  it("a course changes between to and from with its fix", () => {
    const form = fieldsOf("course").find(({ label }) => label === "Flown")!;
    expect(withField({ course: "218", to: "TARNO" }, form, "from")).toEqual({ course: "218", from: "TARNO" });
  });
});

describe("steps back", () => {
  const typed = (texts: readonly [string, number][]) =>
    texts.reduce((history, [text, ms]) => stepped(history, { text }, "text", ms), startOf({}));

  it("takes letters typed in one go as one step, and a pause as the next", () => {
    const history = typed([
      ["2", 0],
      ["21", 300],
      ["218", 600],
      ["219", 5000],
    ]);
    expect(undone(history).now).toEqual({ text: "218" });
    expect(undone(undone(history)).now).toEqual({});
    expect(undone(undone(undone(history))).now).toEqual({});
    expect(redone(undone(history)).now).toEqual({ text: "219" });
  });
});
