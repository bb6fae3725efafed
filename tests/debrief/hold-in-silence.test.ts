/** Holds whose every turn inbound falls into a silence of the log: nobody can say that they were not flown. Truth: the simulator's. */
import { expect, it } from "vitest";
import { type DebriefInput, debriefFlight } from "../../src/debrief/index.ts";
import { standardNamed } from "../../src/grade/index.ts";
import { readBrief } from "../../src/index.ts";
import { debriefText } from "../../src/report/index.ts";
import { fly, scenarioNamed } from "../../src/simulator/index.ts";
import { keepRows } from "../../src/track/rows.ts";

const SCENARIO = scenarioNamed("hold-direct-well-flown");
/** Half of each silence, s: about a turn of 180 degrees at rate one. */
const HALF = 26_000;

function debriefed(seed: number, brief = SCENARIO.brief!) {
  const { track: whole, truth } = fly(SCENARIO, seed);
  const middles = truth.truth.holds[0]!.laps.map(
    (lap) => (Date.parse(lap.inboundTurnUtc) + Date.parse(lap.inboundUtc)) / 2,
  );
  const hidden = (t: number) => middles.some((middle) => Math.abs(t - middle) < HALF);
  const track = keepRows(
    whole,
    Uint8Array.from(whole.time, (t) => (hidden(t) ? 0 : 1)),
  );
  const log = { name: "simulated", file: "simulated.gpx", kind: "gpx", track };
  const more = { waypoints: [], routes: [], issues: [], pointsSeen: track.length, dropped: {} };
  return debriefFlight({
    log: { ...log, ...more } as unknown as DebriefInput["log"],
    brief: readBrief(brief, "brief.yaml"),
    standard: standardNamed("instrument-rating-us")!,
  }).document;
}

it.each([5101, 5102, 5103])("seed %i: never not flown; what is not found cannot be told", (seed) => {
  const document = debriefed(seed);
  const [exercise] = document.exercises;
  expect(exercise!.verdicts.map(({ verdict }) => verdict)).not.toContain("not flown");
  if (exercise!.facts) return;
  expect(exercise!.verdicts).toMatchObject([{ verdict: "cannot tell", reason: "log-silent-there" }]);
  expect(debriefText(document).replace(/\s+/g, " ")).toMatch(
    /cannot be told: the log is silent \d times about its fix, the longest for 5\d seconds at .* where parts of it may have been flown\./,
  );
});

it("at a fix far from every silence it was not flown", () => {
  const far = SCENARIO.brief!.replace(/lat: 35\./g, "lat: 36.");
  expect(far).not.toBe(SCENARIO.brief);
  const [exercise] = debriefed(5101, far).exercises;
  expect(exercise!.verdicts.map(({ verdict }) => verdict)).toEqual(["not flown"]);
});
