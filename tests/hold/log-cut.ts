/** Simulated holds of which the log shows a part: cut at moments of the simulator's truth, and debriefed. */

import type { HoldRecord } from "../../src/debrief/document.ts";
import { type DebriefInput, debriefFlight } from "../../src/debrief/index.ts";
import { standardNamed } from "../../src/grade/index.ts";
import { readBrief } from "../../src/index.ts";
import { firstAtOrAfter } from "../../src/quantity/span.ts";
import { exerciseSentence, sideNotes } from "../../src/report/index.ts";
import { fly, type Scenario, scenarioNamed } from "../../src/simulator/index.ts";
import type { TrueHold } from "../../src/simulator/truth.ts";
import { cutTrack } from "../../src/track/index.ts";

export type Moment = (truth: TrueHold) => number;

/** So many seconds after a moment of a lap, counted from 0. */
export const ofLap =
  (lap: number, moment: "utc" | "outboundUtc" | "inboundTurnUtc" | "inboundUtc", seconds: number): Moment =>
  ({ laps }) =>
    Date.parse(laps[lap]![moment]) + seconds * 1000;

export interface Told {
  readonly exercise: HoldRecord;
  /** What is said of the exercise, verdicts apart. */
  readonly words: string;
  readonly verdict: (criterion: string) => { readonly verdict: string; readonly reason: string | null };
}

/** A hold of a scenario's brief, the first unless said, from a log cut off before and after two moments. */
export function debriefCut(
  scenario: Scenario | string,
  seed: number,
  { from, to, which = 0 }: { readonly from?: Moment; readonly to?: Moment; readonly which?: number },
): Told {
  const flown = typeof scenario === "string" ? scenarioNamed(scenario) : scenario;
  const { track: whole, truth } = fly(flown, seed);
  const [hold] = truth.truth.holds;
  const row = (moment: Moment) => firstAtOrAfter(whole.time!, moment(hold!));
  const track = cutTrack(whole, { start: from ? row(from) : 0, end: to ? row(to) : whole.length });
  const log = { name: "simulated", file: "simulated.gpx", kind: "gpx", track };
  const more = { waypoints: [], routes: [], issues: [], pointsSeen: track.length, dropped: {} };
  const { document } = debriefFlight({
    log: { ...log, ...more } as unknown as DebriefInput["log"],
    brief: readBrief(flown.brief!, "brief.yaml"),
    standard: standardNamed("instrument-rating-us")!,
  });
  const exercise = document.exercises.filter((e): e is HoldRecord => e.kind === "hold")[which]!;
  const notes = sideNotes(exercise).map(({ lead, text }) => `${lead} ${text}`);
  return {
    exercise,
    words: [exerciseSentence(exercise), ...notes].join("\n"),
    verdict: (criterion) => exercise.verdicts.find((v) => v.criterion === criterion)!,
  };
}
