/** Procedure turns onto the final of runway 22, against the headings that the simulator truly flew. */
import { describe, expect, it } from "vitest";
import { documentSchema } from "../../src/debrief/document.ts";
import { debriefText } from "../../src/report/index.ts";
import { approachBrief, approachStep, besideFinal } from "../../src/simulator/approaches.ts";
import { gpxText } from "../../src/simulator/gpx.ts";
import { fly, KNOWN_MODELS, type Scenario, type Step } from "../../src/simulator/index.ts";
import { LINDHOLT_22, LINDHOLT_ELEVATION, RUNWAY_22 } from "../../src/simulator/orsa-vale.ts";
import { keepRows } from "../../src/track/rows.ts";
import { approaches, debriefOf } from "../support/debriefed.ts";
import { near } from "../support/near.ts";

const RUNWAY = { threshold: LINDHOLT_22, course: RUNWAY_22, elevation: LINDHOLT_ELEVATION };
const OUTBOUND = RUNWAY_22 - 180;
const LUMDO = besideFinal(RUNWAY, 5, 0);
const KEYS = `      guidance: localizer
      antenna_ft: 6500
      final_fix_ft: 2100
      glide_path_deg: 3
      decision_ft: 620
`;

/** Out over LUMDO, a minute outbound, the reversal, and the approach. */
function scenario(kind: "45/180" | "80/260", side: 1 | -1, outbound = 70): Scenario {
  const reversal: readonly Step[] =
    kind === "45/180"
      ? [
          { do: "heading", heading: OUTBOUND + side * 45, seconds: 75 },
          { do: "turn", by: -side * 180 },
        ]
      : [
          { do: "turn", by: side * 80 },
          { do: "turn", by: -side * 260 },
        ];
  return {
    name: "approach-procedure-turn",
    about: "A procedure turn onto the localizer.",
    start: {
      position: besideFinal(RUNWAY, 1.5, 0),
      heading: OUTBOUND,
      altitude: 2100,
      time: Date.UTC(2026, 9, 17, 6),
    },
    ...KNOWN_MODELS,
    wind: { from: 260, speed: 12, altitude: 2000, slow: { sd: 1, time: 900 }, shearRms: 1, gusts: null },
    script: [
      { do: "direct", to: LUMDO, within: 0.05 },
      { do: "heading", heading: OUTBOUND, seconds: outbound },
      ...reversal,
      approachStep({ join: { cut: kind === "45/180" ? 45 : 20, late: -350 }, speed: 0.9 }),
    ],
    brief: approachBrief("A procedure turn", KEYS),
  };
}

/** When the heading truly turned faster than half of standard rate, in seconds from the start. */
function trueTurns(heading: Float64Array): { from: number; to: number; by: number }[] {
  const turns: { from: number; to: number; by: number }[] = [];
  for (let k = 1; k < heading.length; k++) {
    const by = ((heading[k]! - heading[k - 1]! + 540) % 360) - 180;
    if (Math.abs(by) < 1.5) continue;
    const last = turns.at(-1);
    if (last && k - last.to <= 2 && Math.sign(last.by) === Math.sign(by)) {
      last.to = k;
      last.by += by;
    } else turns.push({ from: k - 1, to: k, by });
  }
  return turns.filter(({ by }) => Math.abs(by) > 18);
}

async function flown(kind: "45/180" | "80/260", side: 1 | -1, seed: number, outbound?: number) {
  const s = scenario(kind, side, outbound);
  const { track, truth, columns } = fly(s, seed);
  const { document, series } = await debriefOf(gpxText(track, 6), s.brief);
  documentSchema.parse(JSON.parse(JSON.stringify(document)));
  const [record] = approaches(document);
  const [away, back] = trueTurns(columns.heading);
  const text = debriefText(document).replace(/\s+/g, " ");
  return {
    record: record!,
    series,
    truth: truth.truth.approaches![0]!,
    away: away!,
    back: back!,
    start: s.start.time,
    text,
  };
}

const CASES = [5001, 5002, 5003].flatMap((seed) =>
  ([1, -1] as const).flatMap((side) => (["45/180", "80/260"] as const).map((kind) => ({ seed, side, kind }))),
);

describe("by simulation: a procedure turn before the approach", () => {
  it.each(CASES)(
    "$kind, side $side, seed $seed: which, to which side, each turn and leg within 4 s",
    async (c) => {
      const { record, truth, away, back, start, text } = await flown(c.kind, c.side, c.seed);
      const { facts } = record;
      const turn = facts.procedureTurn!;
      expect(facts.joinedFrom).toBe("procedure-turn");
      expect([turn.kind, turn.side]).toEqual([c.kind, c.side > 0 ? "right" : "left"]);
      const at = (utc: string) => (Date.parse(utc) - start) / 1000;
      near(at(turn.awayUtc), away.from, 4, "s", "turn away");
      near(at(turn.rollOut.utc), back.to, 4, "s", "roll-out");
      if (c.kind === "45/180") near(turn.awayS!, back.from - away.to, 5, "s", "between the turns");
      else expect(turn.awayS).toBeNull();
      // over the ground a turn in a wind of 12 kt differs from that of the nose
      near(turn.awayTurnDeg, away.by, 12, "deg");
      near(turn.backTurnDeg, back.by, 18, "deg");
      expect(turn.outboundFrom).toBe("final-fix");
      // the approach begins with it, and the rest is measured as ever
      near(at(record.startUtc!), at(turn.outboundUtc), 0.1, "s");
      near(at(facts.finalFixPassage!.utc), at(truth.finalFixUtc!), 2, "s");
      expect(facts.outcome).toBe("landed");
      expect(text).toContain(`A ${c.kind} to the ${turn.side}:`);
    },
  );

  it("stays within 10 NM of the fix, FAA AIM 5-4-9 from memory; one flown out to 12 is told", async () => {
    const tidy = await flown("45/180", 1, 5004);
    expect(tidy.record.facts.procedureTurn!.farthestNm).toBeLessThan(6);
    expect(tidy.record.findings.map((f) => f.code)).not.toContain("procedure-turn-far");
    const far = await flown("45/180", 1, 5004, 330);
    expect(far.record.facts.procedureTurn!.farthestNm).toBeGreaterThan(10);
    expect(far.record.findings.map((f) => f.code)).toContain("procedure-turn-far");
    expect(far.text).toContain("10 NM are allowed");
  });

  it("with 20 s of it not in the log, that is said beside its turns and times", async () => {
    const s = scenario("45/180", 1);
    const { track, columns } = fly(s, 5005);
    const away = trueTurns(columns.heading)[0]!;
    const silent = (t: number) => Math.abs((t - s.start.time) / 1000 - away.to - 35) < 10;
    const kept = keepRows(
      track,
      Uint8Array.from(track.time, (t) => (silent(t) ? 0 : 1)),
    );
    const { document } = await debriefOf(gpxText(kept, 6), s.brief);
    const { procedureTurn } = approaches(document)[0]!.facts;
    near(procedureTurn!.silentS!, 20, 1.5, "s");
    expect(debriefText(document).replace(/\s+/g, " ")).toMatch(
      /The log is silent for \d+ seconds of it: turns/,
    );
    const whole = (await flown("45/180", 1, 5005)).record.facts.procedureTurn!;
    expect(whole.silentS).toBeUndefined();
  });
});
