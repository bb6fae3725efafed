/** An arc that goes on, past its last radial or away from its radius, is told as far as it went; truth of the simulator. */
import { describe, expect, it } from "vitest";
import type { ArcRecord } from "../../src/debrief/document.ts";
import { flyScenario, type Step, scenarioNamed } from "../../src/simulator/index.ts";
import { debriefOf } from "../support/debriefed.ts";
import { near } from "../support/near.ts";

type ArcStep = Extract<Step, { do: "arc" }>;

const otherwise = (name: string, change: Partial<ArcStep>): Step[] =>
  scenarioNamed(name).script.map((step) => (step.do === "arc" ? { ...step, ...change } : step));

describe.each([1, 2, 3])("by simulation, seed %d", (seed) => {
  it("turned off 20° and more past its last radial, 3.9 NM: judged to the turn, which is told to be late", async () => {
    const script = otherwise("arc-tidy", { toRadial: 330 + 2.5, lead: -20 });
    const { gpx, brief, truth } = flyScenario("arc-tidy", seed, { script });
    const { document } = await debriefOf(gpx, brief!.replace("to_radial: 350", "to_radial: 330"));
    const { facts, findings } = document.exercises[0] as ArcRecord;
    const { turnOffUtc, turnOffRadialTrueDeg: left } = truth.truth.arcs![0]!;
    near((Date.parse(facts!.judged.toUtc!) - Date.parse(turnOffUtc)) / 1000, 0, 6, "s");
    near(facts!.turnOff!.leadDeg, -(left - 332.5), 1, "°");
    expect(findings.map(({ code }) => code)).toContain("arc-turned-off");
  });

  it("carried outside by the wind until it cut back at 3.9 NM, it is told as far off as it was", async () => {
    const script = otherwise("arc-left-to-the-wind", {
      flown: { habit: "waits", share: 0, correctsAt: 3.9, cut: 25, thenShare: 1 },
      toRadial: 30 + 2.5,
    });
    const { wind } = scenarioNamed("arc-left-to-the-wind");
    const overrides = { script, wind: { ...wind, from: 170, speed: 33 } };
    const { gpx, brief, truth } = flyScenario("arc-left-to-the-wind", seed, overrides);
    const { document } = await debriefOf(gpx, brief!.replace("to_radial: 350", "to_radial: 030"));
    const { facts } = document.exercises[0] as ArcRecord;
    const { maxDeviationNm, turnOffUtc } = truth.truth.arcs![0]!;
    expect(maxDeviationNm).toBeGreaterThan(3.5);
    near(facts!.deviation.maxNm, maxDeviationNm, 0.1, "NM");
    near((Date.parse(facts!.judged.toUtc!) - Date.parse(turnOffUtc)) / 1000, 0, 6, "s");
  });
});
