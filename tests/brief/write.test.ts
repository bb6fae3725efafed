/** What is written of a brief reads back the same: by construction, over drawn briefs (fast-check) and the samples. */
import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type BriefDraft, briefText, briefToYaml, readBrief } from "../../src/brief/index.ts";

/** All that the brief means; not where it was written. */
function meant({ title, aircraft, standard, winds, fixes, exercises, issues }: BriefDraft) {
  return {
    ...{ title, aircraft, standard, winds, fixes },
    exercises: exercises.map(({ where: _, ...exercise }) => exercise),
    issues: issues.map(({ code }) => code),
  };
}

const IDENTS = [
  "TARNO",
  "BELVO",
  "KESTI",
  "Point 1",
  "no",
  "0x1F",
  "N: 1",
  "#7",
  "'Ö’",
  "~",
  "12:30",
] as const;
const ident = fc.constantFrom(...IDENTS);
const altitude = fc.option(fc.integer({ min: -1000, max: 20_000 }), { nil: undefined });
const direction = fc.oneof(
  fc.integer({ min: 0, max: 360 }),
  fc.integer({ min: 0, max: 3599 }).map((tenths) => tenths / 10),
  fc.integer({ min: 0, max: 35_999 }).map((hundredths) => `${(hundredths / 100).toFixed(2)}T`),
);
const clock = fc
  .tuple(fc.integer({ min: 0, max: 23 }), fc.integer({ min: 0, max: 59 }))
  .map(([h, m]) => `${String(h).padStart(2, "0")}:${String(m).padStart(2, "0")}`);
const between = fc.option(
  fc.tuple(clock, clock).filter(([a, b]) => {
    const minutes = (t: string) => Number(t.slice(0, 2)) * 60 + Number(t.slice(3));
    const length = (minutes(b) - minutes(a) + 1440) % 1440;
    return length > 0 && length <= 720;
  }),
  { nil: undefined },
);
const any = { altitude_ft: altitude, between };
const maybe = <T>(of: fc.Arbitrary<T>) => fc.option(of, { nil: undefined });
const scale = maybe(fc.constantFrom("vor", "rnav-5", "rnav-2", "rnav-1", "rnav-0.3", "localizer"));
const turns = maybe(fc.constantFrom("right", "left"));
const two = fc.uniqueArray(ident, { minLength: 2, maxLength: 2 });

const approach = fc.record({
  ...any,
  approach: fc
    .record({
      runway: fc.constant({
        ident: "22",
        threshold: [35.672, 172.395],
        end: [35.6619, 172.384],
        elevation_ft: 420,
      }),
      guidance: fc.constantFrom("localizer", "vor", "lnav", "lpv", "lnav-vnav", "rnp", "centre-line"),
      width_deg: maybe(fc.constantFrom(4.2, 6)),
      antenna_ft: maybe(fc.constantFrom(5200)),
      rnp_nm: maybe(fc.constantFrom(0.3)),
      course: maybe(direction),
      final_fix: maybe(fc.constant("LUMDO")),
      final_fix_ft: maybe(fc.constant(2400)),
      glide_path_deg: maybe(fc.constantFrom(3, 3.25)),
      threshold_crossing_ft: maybe(fc.constant(48)),
      minimum: fc.constantFrom({}, { decision_ft: 620 }, { minimum_ft: 900 }),
      step_downs: maybe(
        fc.array(
          fc.oneof(
            fc.record({ fix: fc.constant("LUMDO"), not_below_ft: fc.constant(2400) }),
            fc.record({ before_nm: fc.constantFrom(1.5, 2, 3.25), not_below_ft: fc.constant(900) }),
          ),
          { maxLength: 3 },
        ),
      ),
      missed_point_nm: maybe(fc.constantFrom(0, 0.7)),
      missed_to: maybe(ident),
      missed_course: maybe(direction),
    })
    .map(({ minimum, ...rest }) => ({
      ...rest,
      ...minimum,
      ...(rest.guidance === "vor" ? { station: "TARNO" } : {}),
    })),
});
const exercise = fc.oneof(
  fc.record({ course: direction, to: ident, scale, ...any }),
  fc.record({ course: direction, from: ident, scale, ...any }),
  fc.record({ leg: two, scale: maybe(fc.constantFrom("rnav-1", "rnav-0.3")), ...any }),
  fc.record({
    hold: ident,
    inbound: direction,
    turns,
    leg: maybe(fc.constantFrom("1 min", "90 s", "4 NM", "1.5 min", "3.3 NM", "61.7 s")),
    ...any,
  }),
  fc.record({
    arc: ident,
    radius_nm: fc.constantFrom(10, 7.5),
    from_radial: fc.integer({ min: 0, max: 179 }),
    to_radial: fc.integer({ min: 180, max: 359 }).map((d) => `${d}T`),
    turns,
    ...any,
  }),
  fc.record({
    descent: ident,
    to_ft: fc.integer({ min: 0, max: 9000 }),
    before_nm: maybe(fc.constantFrom(0, 1.5)),
    ...any,
  }),
  approach,
);
const brief = fc.record({
  brief: fc.constant(1),
  title: maybe(
    fc.oneof(
      fc.constantFrom("Lesson 6: radials", "- a dash", "yes", "1", "“Orsa”"),
      fc.string({ minLength: 1, maxLength: 30 }).filter((s) => s.trim() !== ""),
    ),
  ),
  aircraft: maybe(fc.record({ tas_kt: fc.constantFrom(100, 97.5), tas_doubt_kt: maybe(fc.constant(4)) })),
  standard: maybe(fc.constantFrom("instrument-rating-us", "school")),
  wind: maybe(
    fc.array(
      fc.record({
        from_true: fc.integer({ min: 0, max: 360 }),
        kt: fc.integer({ min: 0, max: 80 }),
        altitude_ft: altitude,
        doubt_kt: maybe(fc.constant(6)),
        source: maybe(fc.constant("forecast")),
      }),
      { maxLength: 2 },
    ),
  ),
  exercises: fc.array(exercise, { minLength: 1, maxLength: 5 }),
});
const FIXES = {
  ...Object.fromEntries(IDENTS.map((name, i) => [name, { lat: 35.6 + i / 10, lon: 172.3 - i / 7 }])),
  TARNO: { lat: 35.6, lon: 172.3, kind: "vor", declination: 2.5, elevation_ft: 1200 },
  LUMDO: { lat: 35.734, lon: 172.462 },
};

describe("by construction: a draft written and read again", () => {
  it("is the same, whatever it holds", () => {
    fc.assert(
      fc.property(brief, (values) => {
        const draft = readBrief(JSON.stringify({ ...values, fixes: FIXES }), "drawn.json");
        expect(draft.issues.filter((i) => i.severity === "error")).toEqual([]);
        const again = readBrief(briefToYaml(draft), "drawn.json");
        expect(meant(again)).toEqual(meant(draft));
        expect(briefToYaml(again)).toBe(briefToYaml(draft));
      }),
      { numRuns: 300, seed: 5001 },
    );
  });

  const samples = new URL("../../samples/", import.meta.url);
  const folders = readdirSync(samples, { withFileTypes: true }).filter((entry) => entry.isDirectory());
  it.each(folders.map(({ name }) => name))("of the sample %s is the same", (name) => {
    const draft = readBrief(readFileSync(new URL(`${name}/brief.yaml`, samples), "utf8"), "brief.yaml");
    expect(meant(readBrief(briefToYaml(draft), "brief.yaml"))).toEqual(meant(draft));
  });

  it("stands as people write it: a line a fix and an exercise", () => {
    const text = briefText({
      brief: 1,
      fixes: { TARNO: { lat: 35.6, lon: 172.3 } },
      exercises: [{ course: 218, to: "TARNO", between: ["09:44", "09:51"] }],
    });
    expect(text).toBe(
      'brief: 1\nfixes:\n  TARNO: { lat: 35.6, lon: 172.3 }\nexercises:\n  - { course: 218, to: TARNO, between: [ "09:44", "09:51" ] }\n',
    );
  });
});
