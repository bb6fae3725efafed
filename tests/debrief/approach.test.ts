/** Approaches through the whole debrief: of a brief, found to the runways of a list, with heights and times missing, anywhere. */
import { describe, expect, it } from "vitest";
import type { ApproachFacts, DebriefDocument } from "../../src/debrief/document.ts";
import { documentSchema } from "../../src/debrief/document.ts";
import type { DebriefInput } from "../../src/debrief/index.ts";
import { destination } from "../../src/geodesy/index.ts";
import { debriefText } from "../../src/report/index.ts";
import type { SimulatedRunway } from "../../src/simulator/approach-step.ts";
import { drawnApproach } from "../../src/simulator/approaches.ts";
import { gpxText } from "../../src/simulator/gpx.ts";
import { fly, flyScenario, SCENARIOS } from "../../src/simulator/index.ts";
import {
  LINDHOLT_22,
  LINDHOLT_ELEVATION,
  RUNWAY_22,
  RUNWAY_22_LENGTH,
} from "../../src/simulator/orsa-vale.ts";
import type { TrueApproach } from "../../src/simulator/truth.ts";
import { approaches, debriefOf, type MeasuredApproach } from "../support/debriefed.ts";
import { near } from "../support/near.ts";

/** All that the document has of approaches; valid, and told without a broken word. */
function told(document: DebriefDocument): MeasuredApproach[] {
  documentSchema.parse(JSON.parse(JSON.stringify(document)));
  expect(debriefText(document)).not.toMatch(/NaN|undefined|null|not found on this flight/);
  return approaches(document);
}

const seconds = (utc: string | null | undefined, truth: string | null): number =>
  (Date.parse(utc!) - Date.parse(truth!)) / 1000;

const end = destination(LINDHOLT_22, RUNWAY_22, RUNWAY_22_LENGTH);
type Listed = NonNullable<DebriefInput["runways"]>[number];
const runway22: Listed = { ident: "22", threshold: LINDHOLT_22, end, elevation: LINDHOLT_ELEVATION };
const runway04: Listed = { ident: "04", threshold: end, end: LINDHOLT_22, elevation: LINDHOLT_ELEVATION };

/** As the accuracy run has it: passages within 2 s, the missed approach within 5 s, the overshoot within 0.02 NM. */
function agrees(facts: ApproachFacts, truth: TrueApproach): void {
  near(seconds(facts.finalFixPassage?.utc, truth.finalFixUtc), 0, 2, "s", "final fix");
  near(facts.intercept!.overshootNm, truth.overshootNm, 0.02, "NM");
  expect(facts.outcome).toBe(truth.outcome);
  if (truth.outcome === "landed")
    near(seconds(facts.landing!.thresholdUtc, truth.thresholdUtc), 0, 2, "s", "threshold");
  else near(seconds(facts.missed!.startUtc, truth.missedUtc), 0, 5, "s", "missed approach");
}

describe("by simulation: an approach of the brief", () => {
  it.each(["landing", "missed"] as const)(
    "to a %s has its facts in the document, its parts without a hole",
    async (ends) => {
      const scenario = drawnApproach(ends);
      const { track, truth } = fly(scenario, 5001);
      const { document, series } = await debriefOf(gpxText(track, 7), scenario.brief);
      const [{ facts, source, match }, ...others] = told(document) as [MeasuredApproach];
      expect(others).toEqual([]);
      expect([source, match!.by]).toEqual(["brief", "geometry"]);
      agrees(facts, truth.truth.approaches![0]!);
      const columns = series.exercises[0]!;
      if (columns.kind !== "approach") throw new Error("no columns of an approach");
      // every row in one part, in order
      expect([...new Set(columns.segment)]).toEqual(facts.segments.map((_, i) => i));
      expect(facts.segments.map((s) => s.kind)).toEqual([
        "joining",
        "inbound",
        "final",
        ends === "landing" ? "landing" : "missed-approach",
      ]);
      const final = facts.segments.findIndex((s) => s.kind === "final");
      near(columns.distanceToThresholdNm[columns.segment.indexOf(final)]!, 5, 0.05, "NM");
    },
  );
});

describe("by simulation: without a brief, the runways of a list", () => {
  const found = async (name: string, runways = [runway04, runway22], seed = 5002) =>
    (await debriefOf(flyScenario(name, seed).gpx, null, { runways })).document;

  it.each(Object.keys(SCENARIOS).filter((n) => n.startsWith("approach-")))(
    "%s: the final to 22 is offered once, and no line is fitted to it",
    async (name) => {
      const document = await found(name);
      const [{ facts, source, title }, ...others] = told(document) as [MeasuredApproach];
      expect(others).toEqual([]);
      expect([source, title, facts.runway.ident]).toEqual(["found", "Approach runway 22", "22"]);
      expect(facts.guidance.supposed).toBe(true);
      const final = facts.segments.find((s) => s.kind === "final")!;
      for (const e of document.exercises)
        if (e.kind === "course")
          expect(e.startUtc! < final.startUtc! || e.startUtc! >= final.endUtc!).toBe(true);
    },
  );

  it("no list, no approach", async () => {
    const { document } = await debriefOf(flyScenario("approach-tidy-precision", 5002).gpx, null);
    expect(told(document)).toEqual([]);
  });

  it("an elevation that the list does not give is taken from the roll on the runway", async () => {
    const [given] = told(await found("approach-tidy-precision"));
    const [rolled] = told(await found("approach-tidy-precision", [{ ...runway22, elevation: null }]));
    near(
      rolled!.facts.runway.elevationFt! + given!.facts.height!.correctionFt,
      LINDHOLT_ELEVATION,
      1.1,
      "ft",
    );
    expect(rolled!.facts.height!.anchored).toBe("runway");
    near(rolled!.facts.gates[0]!.distanceNm!, given!.facts.gates[0]!.distanceNm!, 0.005, "NM");
  });

  it("without a roll nothing is told of heights above it, and why is said", async () => {
    const document = await found("approach-track-chased", [{ ...runway22, elevation: null }]);
    const [rolled] = told(document);
    expect(rolled!.facts).toMatchObject({ glidePath: null, flownPath: null, outcome: "missed" });
    expect(rolled!.facts.runway.elevationFt).toBeNull();
    expect(rolled!.facts.gates.every((gate) => gate.utc === null)).toBe(true);
    expect(debriefText(document)).toContain("elevation of the runway is not known");
  });

  it("a round about a runway of the list is offered as no hold, where a log without heights cannot tell", async () => {
    const gpx = flyScenario("oval-circuits", 5002).gpx.replace(/<ele>[^<]*<\/ele>/g, "");
    const kinds = async (runways: Listed[]) =>
      (await debriefOf(gpx, null, { runways })).document.exercises.map((e) => e.kind);
    expect(await kinds([])).toContain("hold");
    expect(await kinds([runway22, runway04])).not.toContain("hold");
  });

  it("beside a brief that asks for something else they are offered too, and one that it asks for is not offered twice", async () => {
    const { gpx, brief } = flyScenario("approach-tidy-precision", 5002);
    const runways = [runway22, runway04];
    const both = (await debriefOf(gpx, brief, { runways })).document;
    expect(told(both).map((a) => a.source)).toEqual(["brief"]);
    const other = brief!.replace(/exercises:[\s\S]*/, "exercises:\n  - { course: 090, from: TARNO }\n");
    const { document } = await debriefOf(gpx, other, { runways });
    expect(document.exercises.map((e) => [e.kind, e.source])).toEqual([
      ["course", "brief"],
      ["approach", "found"],
    ]);
  });
});

describe("by simulation: what a log does not have", () => {
  const { gpx, brief } = flyScenario("approach-tidy-precision", 5003);
  const timed = debriefOf(gpx, brief);

  it("without heights the ground track is measured and nothing is told of the way down", async () => {
    const { document } = await debriefOf(gpx.replace(/<ele>[^<]*<\/ele>/g, ""), brief);
    const [{ facts }] = told(document) as [MeasuredApproach];
    const [whole] = told((await timed).document) as [MeasuredApproach];
    expect(facts).toMatchObject({ height: null, glidePath: null, flownPath: null, descent: null });
    expect(facts.minimum!.passedUtc).toBeNull();
    expect(facts.outcome).toBe("landed");
    near(seconds(facts.finalFixPassage!.utc, whole.facts.finalFixPassage!.utc), 0, 0.1, "s");
    expect(facts.cannotTell).toContainEqual({ fact: "height", reason: "no-height" });
  });

  it("without times the deviation along the final is measured and nothing that needs a clock", async () => {
    const { document } = await debriefOf(gpx.replace(/<time>[^<]*<\/time>/g, ""), brief);
    const [{ facts, startUtc }] = told(document) as [MeasuredApproach];
    const [whole] = told((await timed).document) as [MeasuredApproach];
    expect([startUtc, facts.outcome, facts.missed, facts.landing]).toEqual([null, "cannot-tell", null, null]);
    // raw positions scatter a few metres more
    near(Math.abs(facts.crossTrack.maxNm), Math.abs(whole.facts.crossTrack.maxNm), 0.01, "NM");
    expect(facts.cannotTell).toContainEqual({ fact: "segments", reason: "no-times" });
  });
});

describe("by simulation: the same anywhere, through the whole debrief", () => {
  const fields: readonly (readonly [string, SimulatedRunway])[] = [
    [
      "over the antimeridian",
      { threshold: { latitude: -17, longitude: 179.98 }, course: 265, elevation: 420 },
    ],
    ["at 70 N", { threshold: { latitude: 70, longitude: -40 }, course: 120, elevation: 420 }],
    [
      "at a field 8,000 ft high",
      { threshold: { latitude: 39, longitude: -106 }, course: 330, elevation: 8000 },
    ],
    ["below sea level", { threshold: { latitude: 31.5, longitude: 35.4 }, course: 10, elevation: -1240 }],
    ["in the south", { threshold: { latitude: -45, longitude: 168 }, course: 230, elevation: 420 }],
  ];
  it.each(fields)("%s", async (_, field) => {
    for (const ends of ["landing", "missed"] as const) {
      const scenario = drawnApproach(ends, field);
      const { track, truth } = fly(scenario, 5004);
      const gpx = gpxText(track, 7);
      const [truly] = truth.truth.approaches!;
      const [{ facts }] = told((await debriefOf(gpx, scenario.brief)).document) as [MeasuredApproach];
      agrees(facts, truly!);
      near(facts.finalCourseTrueDeg, field.course, 0.02, "deg");
      near(
        facts.finalFixPassage!.altitudeFt!,
        truly!.finalFixFt!,
        facts.finalFixPassage!.altitude95Ft!,
        "ft",
      );
      const listed = {
        ident: "22",
        threshold: field.threshold,
        end: destination(field.threshold, field.course, RUNWAY_22_LENGTH),
        elevation: field.elevation,
      };
      const offered = told((await debriefOf(gpx, null, { runways: [listed] })).document);
      expect(offered.map((a) => a.facts.outcome)).toEqual([truly!.outcome]);
    }
  });
});
