/** Logs of holds with a silence at the end of a leg: its time is bounded, and nothing is judged that was not seen. Truth: the simulator's. */
import { describe, expect, it } from "vitest";
import type { HoldFacts, Verdict } from "../../src/debrief/document.ts";
import { type DebriefInput, debriefFlight } from "../../src/debrief/index.ts";
import { standardNamed } from "../../src/grade/index.ts";
import { readBrief } from "../../src/index.ts";
import { fly, type SimulatedFlight, scenarioNamed } from "../../src/simulator/index.ts";
import { keepRows } from "../../src/track/rows.ts";
import { near } from "../support/near.ts";

const SCENARIO = scenarioNamed("hold-direct-well-flown");
const SEEDS = [5101, 5102, 5103];
/** Besides what is stated, a time may come out worse by this than in the log without the silence, s. Chosen: an interval of that log. */
const WORSE_S = 1;
const ENDS = ["outboundUtc", "inboundTurnUtc", "inboundUtc", "endUtc"] as const;
type End = (typeof ENDS)[number];

const flights = new Map<number, SimulatedFlight>();
function flown(seed: number): SimulatedFlight {
  if (!flights.has(seed)) flights.set(seed, fly(SCENARIO, seed));
  return flights.get(seed)!;
}
const lapsOf = (seed: number) => flown(seed).truth.truth.holds[0]!.laps;

function debriefed(seed: number, end: End | null, seconds: number, shift = 0) {
  const { track: whole } = flown(seed);
  const middle = end ? Date.parse(lapsOf(seed)[1]![end]) + shift * 1000 : Number.NaN;
  const hidden = (t: number) => Math.abs(t - middle) < seconds * 500;
  const track = keepRows(
    whole,
    Uint8Array.from(whole.time, (t) => (hidden(t) ? 0 : 1)),
  );
  const log = { name: "simulated", file: "simulated.gpx", kind: "gpx", track };
  const more = { waypoints: [], routes: [], issues: [], pointsSeen: track.length, dropped: {} };
  const { document } = debriefFlight({
    log: { ...log, ...more } as unknown as DebriefInput["log"],
    brief: readBrief(SCENARIO.brief!, "brief.yaml"),
    standard: standardNamed("instrument-rating-us")!,
  });
  const [exercise] = document.exercises;
  const facts = exercise!.facts as HoldFacts;
  const verdict = exercise!.verdicts.find(({ criterion }) => criterion === "hold-leg-time") as Verdict;
  return { facts, verdict, codes: exercise!.findings.map(({ code }) => code) };
}

const wholes = new Map<number, ReturnType<typeof debriefed>>();
/** How far the time of each inbound leg is from the truth in the log without a silence, s. */
function errorsOf(seed: number): number[] {
  if (!wholes.has(seed)) wholes.set(seed, debriefed(seed, null, 0));
  return wholes
    .get(seed)!
    .facts.laps.map(({ inbound }, i) => Math.abs(inbound!.seconds - lapsOf(seed)[i]!.inboundS));
}

describe.each([10, 20, 29])("a silence of %i s", (seconds) => {
  it.each(ENDS)("at %s: every leg's time lies within what is stated", (end) => {
    for (const seed of SEEDS) {
      const { facts } = debriefed(seed, end, seconds);
      expect(facts.laps).toHaveLength(lapsOf(seed).length);
      for (const [i, { inbound }] of facts.laps.entries()) {
        const off = Math.abs(inbound!.seconds - lapsOf(seed)[i]!.inboundS);
        expect(off, `lap ${i + 1} of ${seed}`).toBeLessThanOrEqual(
          errorsOf(seed)[i]! + WORSE_S + (inbound!.unseen?.most ?? 0),
        );
      }
    }
  });
});

it("a silence over a roll-out makes a leg that was met one that cannot be told, with the reason; one that flies on hides nothing", () => {
  let told = 0;
  for (const seed of SEEDS) {
    const whole = debriefed(seed, null, 0);
    const cut = debriefed(seed, "inboundUtc", 29);
    expect(whole.facts.laps.every(({ inbound, outbound }) => !inbound?.unseen && !outbound.unseen)).toBe(
      true,
    );
    expect(cut.verdict.verdict).not.toBe("met");
    expect(cut.codes).toContain("leg-end-in-silence");
    expect(cut.codes).not.toContain("hold-well-flown");
    if (cut.verdict.reason === "leg-end-silent") told++;
  }
  expect(told).toBeGreaterThan(0);
});

describe.each([15, 20, 25, 29])("a silence of %i s about or beside a roll-out", (seconds) => {
  it.each([0, -8, 8])(
    "with its middle %i s from it: where it rolled out lies within what is stated",
    (shift) => {
      for (const seed of SEEDS) {
        const whole = debriefed(seed, null, 0).facts.laps[1]!.rollOut!;
        const { facts } = debriefed(seed, "inboundUtc", seconds, shift);
        const rollOut = facts.laps[1]!.rollOut!;
        if (shift === 0) near(rollOut.silentS!, seconds, 1.5, "s");
        if (rollOut.silentS === undefined) continue; // beside it: seen
        // as the log has it without the silence: the simulator's position errors are far less than the bound
        const off = Math.abs(rollOut.acrossNm - whole.acrossNm);
        expect(off, `seed ${seed}`).toBeLessThanOrEqual(rollOut.across95Nm);
        expect(whole.silentS).toBeUndefined();
      }
    },
  );
});

describe.each([40, 90])("a silence of %i s, in which a lap is lost", (seconds) => {
  it.each(ENDS)(
    "at %s: the laps before and after are one hold, none is made up, and no leg time is met",
    (end) => {
      for (const seed of SEEDS) {
        const { facts, verdict, codes } = debriefed(seed, end, seconds);
        const laps = lapsOf(seed);
        expect(facts.legsUnseen!.seconds).toBeGreaterThanOrEqual(seconds - 1);
        expect(codes).toContain("laps-in-silence");
        expect(verdict.verdict).not.toBe("met");
        expect(facts.laps.length).toBeGreaterThanOrEqual(laps.length - 2);
        expect(facts.laps.length).toBeLessThan(laps.length);
        for (const { startUtc, inbound } of facts.laps) {
          const same = laps.findIndex(({ utc }) => Math.abs(Date.parse(utc) - Date.parse(startUtc)) < 12_000);
          const off = Math.abs(inbound!.seconds - laps[same]!.inboundS);
          expect(off, `lap at ${startUtc} of ${seed}`).toBeLessThanOrEqual(errorsOf(seed)[same]! + WORSE_S);
        }
      }
    },
  );
});
