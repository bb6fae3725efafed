/** A brief is read while it is typed: what is wrong is told at its field, steps go back; by construction. */
import { describe, expect, it } from "vitest";
import { readBrief } from "../../../src/brief/index.ts";
import { fieldText, kindOf, NEW_EXERCISE, withField } from "../../../web/maker/field-values.ts";
import { fieldsOf } from "../../../web/maker/fields.ts";
import { redone, startOf, stepped, undone } from "../../../web/maker/history.ts";
import { complaintsAt, draftAt, readMaking, resolvedAt, savedOf } from "../../../web/maker/reading.ts";
import { put, type Values } from "../../../web/maker/values.ts";
import { brief, NOTHING, read, TIME } from "./lesson.ts";

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
