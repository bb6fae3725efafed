import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { courseFactsSchema } from "../../src/course/facts.ts";
import { debriefFlight } from "../../src/debrief/index.ts";
import { readBrief } from "../../src/index.ts";
import { type Fault, fly, oneFault, type Scenario, scenarioNamed } from "../../src/simulator/index.ts";
import { courseExercise, measured, tracksOff } from "../support/flown-course.ts";

/** What findings a course can have: of its causes, and as written where they are made. */
const source = ["course/finding.ts", "quantity/gap-finding.ts"]
  .map((file) => readFileSync(new URL(`../../src/${file}`, import.meta.url), "utf8"))
  .join("\n");
const CAUSES = courseFactsSchema.shape.causes.element.shape.cause.options;
const CODES = [
  ...new Set([
    ...CAUSES,
    ...[...source.matchAll(/(?:code: |excursionFinding\()"([a-z-]+)"/g)].map((m) => m[1]!),
  ]),
];

const flown = (parts: Parameters<typeof tracksOff>[1], across = 0) =>
  tracksOff({ along: -14, across }, parts);
const ruled = (rows: ReturnType<typeof tracksOff>) =>
  measured(courseExercise("to", 241, "vor"), rows).findings.map(({ code }) => code);

function simulated(scenario: Scenario, seed: number): string[] {
  const { track } = fly(scenario, seed);
  const log = { name: "simulated", file: "simulated.gpx", kind: "gpx", track };
  const more = { waypoints: [], routes: [], issues: [], pointsSeen: track.length, dropped: {} };
  const { document } = debriefFlight({
    log: { ...log, ...more } as unknown as Parameters<typeof debriefFlight>[0]["log"],
    brief: readBrief(scenario.brief!, "brief.yaml"),
  });
  return document.exercises.flatMap(({ findings }) => findings.map(({ code }) => code));
}

const pilot = (fault: Fault, seed = 1) => simulated(oneFault(fault), seed);

/** A pilot who turns the nose with the wind instead of into it. */
function withTheWind(): Scenario {
  const scenario = oneFault("wind-uncorrected");
  const script = scenario.script.map((step) =>
    step.do === "course" && step.flown.habit === "waits"
      ? { ...step, flown: { ...step.flown, share: -0.6 } }
      : step,
  );
  return { ...scenario, script };
}

describe("every finding of a course has a flight that shows it", () => {
  const shown = new Set([
    ...ruled(
      flown([
        [0, 40],
        [7, 160],
      ]),
    ), // one straight: the wind is not known
    ...ruled(flown([[60, 90]], -1)),
    ...ruled(
      tracksOff({ along: -10, across: -0.6 }, [
        [40, 60],
        [-30, 40],
        [0, 90],
      ]),
    ),
    ...ruled(flown([[0, 300]]).filter(({ t }) => t < 100 || t > 180)),
    ...pilot("wind-uncorrected"),
    ...pilot("wind-uncorrected", 2),
    ...pilot("over-corrected", 2),
    ...pilot("chased"),
    ...pilot("rolled-out-off"),
    ...pilot("turned-late"),
    ...pilot("turned-early"),
    ...simulated(scenarioNamed("strong-crosswind-badly-corrected"), 1),
    ...simulated(withTheWind(), 2),
  ]);

  it("the codes are found where they are made", () => {
    expect(CODES).toContain("gap-in-exercise");
    expect(CODES.length).toBeGreaterThanOrEqual(15);
  });

  it.each(CODES)("%s", (code) => {
    expect([...shown]).toContain(code);
  });
});
