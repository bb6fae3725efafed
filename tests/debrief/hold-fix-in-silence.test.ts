/** Holds whose every pass of the fix falls into a short silence of the log: the laps are told, their leg ends bounded. Truth: the simulator's. */
import { expect, it } from "vitest";
import type { HoldFacts } from "../../src/debrief/document.ts";
import { type DebriefInput, debriefFlight } from "../../src/debrief/index.ts";
import { standardNamed } from "../../src/grade/index.ts";
import { readBrief } from "../../src/index.ts";
import { fly, scenarioNamed } from "../../src/simulator/index.ts";
import { keepRows } from "../../src/track/rows.ts";
import { near } from "../support/near.ts";

const SCENARIO = scenarioNamed("hold-direct-well-flown");
/** Silent before and after each pass, s. */
const BEFORE = 25;
const AFTER = 12;

function debriefed(seed: number) {
  const { track: whole, truth } = fly(SCENARIO, seed);
  const { laps } = truth.truth.holds[0]!;
  const passes = laps.map((lap) => Date.parse(lap.endUtc));
  const hidden = (t: number) => passes.some((at) => t > at - BEFORE * 1000 && t < at + AFTER * 1000);
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
  return { exercise: document.exercises[0]!, laps };
}

it.each([5201, 5202, 5203, 5204, 5205, 5206])(
  "seed %i: every lap, its legs within what the silence hides",
  (seed) => {
    const { exercise, laps } = debriefed(seed);
    const facts = exercise.facts as HoldFacts;
    if (!facts) expect.fail("not found");
    expect(facts.laps).toHaveLength(laps.length);
    facts.laps.forEach(({ outbound, inbound }, k) => {
      near(outbound.seconds, laps[k]!.outboundS, 5, "s", `lap ${k + 1}, outbound`);
      // as long as was read, within what the silence hides; the doubt of a seen end is some seconds
      near(inbound!.seconds, laps[k]!.inboundS, 7, "s", `lap ${k + 1}, inbound`);
      if (k + 1 < laps.length) expect(inbound!.unseen!.most).toBeGreaterThan(AFTER);
    });
    expect(exercise.verdicts.map(({ verdict }) => verdict)).not.toContain("not flown");
    const timed = exercise.verdicts.find(({ criterion }) => criterion === "hold-leg-time")!;
    expect([timed.verdict, timed.reason]).toEqual(["cannot tell", "leg-end-silent"]);
  },
);
