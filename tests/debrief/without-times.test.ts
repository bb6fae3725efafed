import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { COURSE_SAMPLES, courses, debriefOf, sampleDebrief } from "../support/debriefed.ts";
import { near } from "../support/near.ts";

const sample = (name: string, file: string) =>
  readFileSync(join(import.meta.dirname, "../../samples", name, file), "utf8");

describe("the same flight with and without its times: two ways to the same deviation", () => {
  it.each(COURSE_SAMPLES)("%s: joining a course is not taken for deviation", async (name) => {
    const timed = (await sampleDebrief(name)).document;
    const gpx = sample(name, "log.gpx").replace(/<time>[^<]*<\/time>/g, "");
    const { document } = await debriefOf(gpx, sample(name, "brief.yaml"));
    expect(document.exercises).toHaveLength(timed.exercises.length);
    courses(document).forEach((exercise, i) => {
      const { crossTrack } = exercise.facts;
      const size = Math.abs(courses(timed)[i]!.facts.crossTrack.maxNm);
      // raw positions scatter a few metres more, and the judged part begins some hundred metres apart
      near(Math.abs(crossTrack.maxNm), size, 0.06, "NM", exercise.title);
    });
  });
});
