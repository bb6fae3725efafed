import { describe, expect, it } from "vitest";
import {
  debriefText,
  exerciseSentence,
  findingSentence,
  otherFindings,
  sideNotes,
} from "../../../src/report/index.ts";
import { flyScenario, SCENARIOS } from "../../../src/simulator/index.ts";
import { debriefOf } from "../../support/debriefed.ts";

const BRIEFED = Object.keys(SCENARIOS).filter((name) => SCENARIOS[name]!.brief !== null);

describe.each(BRIEFED)("by simulation: what is told of %s", (name) => {
  it("says of nothing measured that it was not compared, and prints no bare code and no broken number", async () => {
    const { gpx, brief } = flyScenario(name, 5001);
    const { document } = await debriefOf(gpx, brief);
    for (const exercise of document.exercises) {
      const told = [
        exerciseSentence(exercise),
        ...sideNotes(exercise).map(({ lead, text }) => `${lead} ${text}`),
        ...otherFindings(exercise).map((finding) => findingSentence(finding, exercise)),
      ];
      for (const sentence of told) {
        expect(sentence, exercise.title).not.toMatch(/undefined|NaN|null|\[object/);
        expect(sentence, exercise.title).toMatch(/^[A-Z0-9][^\n]*\.$/);
      }
      if (exercise.facts) expect(told.join(" "), exercise.title).not.toMatch(/not yet compared|not found/);
      for (const { code } of exercise.findings)
        expect(told.map((s) => s.toLowerCase())).not.toContain(`${code.replaceAll("-", " ")}.`);
    }
    expect(debriefText(document)).toContain("Training aid");
  });
});
