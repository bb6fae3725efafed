import { csvParse } from "d3-dsv";
import { describe, expect, it } from "vitest";
import { documentSchema } from "../../src/debrief/document.ts";
import { withNotes } from "../../src/debrief/notes.ts";
import {
  debriefText,
  decidedBy,
  decidingVerdict,
  exercisesCsv,
  standing,
  verdictsCsv,
} from "../../src/report/index.ts";
import { sampleDebrief } from "../support/debriefed.ts";

async function signed() {
  const { document } = await sampleDebrief("strong-crosswind-badly-corrected");
  const { title } = document.exercises[2]!;
  const overrule = { exercise: 2, title, criterion: "course-needle", verdict: "not met" as const };
  return withNotes(document, {
    remarks: [
      { exercise: 2, title, text: "=Late again" },
      { exercise: null, text: "A fair hour." },
    ],
    overrules: [{ ...overrule, by: "A. N.", why: "prompted twice" }],
  });
}

describe("by construction: what the instructor wrote, beside what was computed", () => {
  it("decides the exercise, and takes nothing from what was measured", async () => {
    const { exercises, overrules } = await signed();
    const { verdicts } = exercises[2]!;
    expect(decidingVerdict(verdicts)?.verdict).toBe("met");
    const decides = decidingVerdict(standing(verdicts, overrules!));
    expect(decides).toMatchObject({ verdict: "not met", criterion: "course-needle" });
    expect(decides?.value).toBe(verdicts[0]!.value);
  });

  it("who flew, and in what, stands before the rows of each table where it is said", async () => {
    const document = await signed();
    const both = { ...document, flownBy: { pilot: "N. N.", aircraft: "N123" } };
    documentSchema.parse(JSON.parse(JSON.stringify(both)));
    for (const csv of [exercisesCsv, verdictsCsv]) {
      const rows = csvParse(csv(both));
      expect(rows.columns.slice(0, 3)).toEqual(["pilot", "aircraft", "exercise"]);
      expect(rows.every(({ pilot, aircraft }) => pilot === "N. N." && aircraft === "N123")).toBe(true);
      expect(csvParse(csv({ ...document, flownBy: { pilot: "", aircraft: "N123" } })).columns[0]).toBe(
        "aircraft",
      );
      expect(csvParse(csv(document)).columns[0]).toBe("exercise");
    }
  });

  it("a height that no GPS can tell decides once the instructor has told it", async () => {
    const { exercises } = await signed();
    const { verdicts, title } = exercises[2]!;
    const height = verdicts.find(({ reason }) => reason === "height-by-gps")!;
    const told = { exercise: 2, title, criterion: height.criterion, verdict: "not met" as const };
    expect(decidingVerdict(standing(verdicts, [{ ...told, by: "", why: "" }]))?.criterion).toBe(
      height.criterion,
    );
  });

  it("without a value to name, what decided is named alone", () => {
    const unknown = {
      ...{ criterion: "course-height-steady", title: "Height, about its own middle", unit: "ft" as const },
      ...{ verdict: "cannot tell" as const, reason: "no-height", value: null, doubt95: null, limit: 100 },
      ...{ confidence: null, beyondS: null, worstUtc: null, citation: "by construction" },
    };
    expect(decidedBy(unknown)).toBe("height, about its own middle: the log has no heights");
    const overrule = { exercise: 0, title: "", criterion: unknown.criterion, verdict: "met" as const };
    const [told] = standing([unknown], [{ ...overrule, by: "", why: "" }]);
    expect(decidedBy(told!)).toBe("height, about its own middle");
  });

  it("is in the text and in the tables, harmless to a spreadsheet", async () => {
    const document = await signed();
    const text = debriefText(document).replace(/\s+/g, " ");
    expect(text).toContain("The instructor, A. N.: not met; prompted twice.");
    expect(text).toContain("Remark: =Late again");
    expect(text).toContain("Remark: A fair hour.");
    const exercises = csvParse(exercisesCsv(document));
    expect(exercises[2]!.remark).toBe("'=Late again");
    expect(new Set(exercises.map((row) => row.flight_remark))).toEqual(new Set(["A fair hour."]));
    const rows = csvParse(verdictsCsv(document));
    const row = rows.find((r) => r.exercise === "3" && r.criterion === "course-needle");
    expect(row).toMatchObject({ verdict: "met", instructor_verdict: "not met", instructor: "A. N." });
    expect(rows.filter((r) => r.instructor_verdict).length).toBe(1);
  });
});
