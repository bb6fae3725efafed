import { describe, expect, it } from "vitest";
import { readLog } from "../../src/import/index.ts";
import { UnusableInput } from "../../src/quantity/issue.ts";
import { issueSentence } from "../../src/report/index.ts";
import { cleanTrack } from "../../src/track/index.ts";
import { fixtureBytes, fixtureNames } from "./fixtures.ts";

describe("by construction: every issue that a fixture causes", () => {
  it.each(fixtureNames())(
    "%s is told in one line of words, with no code and no missing fact",
    async (name) => {
      const issues = await readLog([fixtureBytes(name)], name).then(
        (log) => [...log.issues, ...cleanTrack(log.track).issues],
        (error: unknown) => {
          if (error instanceof UnusableInput) return error.issues;
          throw error;
        },
      );
      for (const issue of issues) {
        const sentence = issueSentence({ ...issue, where: { ...issue.where }, facts: { ...issue.facts } });
        expect(sentence).not.toMatch(/undefined|NaN|\[object|\n/);
        expect(sentence).not.toContain(`${issue.code.replaceAll("-", " ")} (`);
        expect(sentence).toMatch(/[.]$/);
      }
    },
  );
});
