import { describe, expect, it } from "vitest";
import { debriefFlight, flyScenario, readBrief, readLog } from "../../src/index.ts";
import { courses } from "../support/debriefed.ts";
import { near } from "../support/near.ts";

/** Errors of the script's size stand out of the simulated pilot's wander of 2°; smaller ones may be told late or early. */
const PLAIN_ERROR = 6;

describe("simulated flights with known truth: strong crosswind, badly corrected", () => {
  it.each([1, 2, 3, 4])("seed %s: worst distance within 0.01 NM, corrections within 3 s", async (seed) => {
    const { gpx, brief, truth } = flyScenario("strong-crosswind-badly-corrected", seed);
    const log = await readLog([new TextEncoder().encode(gpx)], "flight.gpx");
    const { document } = debriefFlight({ log, brief: readBrief(brief!, "brief.yaml") });
    let compared = 0;
    truth.truth.exercises.forEach((flown, i) => {
      const { facts, title } = courses(document)[i]!;
      near(facts.crossTrack.maxNm, flown.maxCrossTrackNm, 0.01, "NM", title);
      const off = flown.events.find((e) => /let-go|overdone/.test(e.code))!;
      const corrected = flown.events.find((e) => e.code === "corrected")!;
      if (Math.abs(off.trackErrorDeg) < PLAIN_ERROR) return;
      const found = facts.excursions[0]!;
      expect(found.side, title).toBe(off.trackErrorDeg > 0 ? "right" : "left");
      const late = (Date.parse(found.correctedUtc!) - Date.parse(corrected.utc)) / 1000;
      near(late, 0, 3, "s", `${title}: correction`);
      compared++;
    });
    expect(compared).toBeGreaterThan(0);
  });

  it.each([1, 2, 3, 4])(
    "seed %s of the tidy flight: no drift, no cause and no chase is found",
    async (seed) => {
      const { gpx, brief } = flyScenario("calm-and-tidy", seed);
      const log = await readLog([new TextEncoder().encode(gpx)], "flight.gpx");
      const { document } = debriefFlight({ log, brief: readBrief(brief!, "brief.yaml") });
      expect(document.exercises.map((e) => e.findings.map((f) => f.code))).toEqual(
        document.exercises.map(() => ["tracked-within"]),
      );
    },
  );
});
