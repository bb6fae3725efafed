/** Simulated pilots with one habit each, from the air to the habits told: how often it is found, how often one is told that is not there, and what the intervals hold. */
import { readBrief } from "../../src/brief/index.ts";
import { debriefFlight } from "../../src/debrief/index.ts";
import { type HabitReport, habitsOf, type ObservedFlight, observeFlight } from "../../src/habit/index.ts";
import { fly, PILOTS, type PilotName, pilotLesson } from "../../src/simulator/index.ts";
import { seeded } from "../support/flown.ts";

/** What has to be told of each pilot: one of these. */
export const EXPECTED: Readonly<Record<PilotName, readonly string[]>> = {
  "no-habit": [],
  "sits-downwind": ["needle-downwind"],
  "half-the-correction": ["correction-inbound", "correction-outbound"],
  "chases-the-needle": ["chasing"],
  "rolls-out-late-to-the-left": ["roll-out-left"],
  "outbound-parallel": ["hold-outbound"],
  "descends-late": ["descent-late"],
};

/** What the simulator itself knows of a flight, in the units of the tendencies. */
export interface TrueWays {
  readonly needleDownwind: number | null;
  readonly missingShare: number | null;
  readonly descentLateS: number | null;
  readonly lateToLeftDeg: number;
}

export interface FlownLesson {
  readonly flight: ObservedFlight;
  readonly truth: TrueWays;
}

/** Seeds of the pilots lie apart, so that no two fly in the same air. */
const APART = 100_000;

/** One lesson of a pilot from the simulator through the whole recipe; turns of the hold to either side in turn. */
export function flyLesson(pilot: PilotName, seed: number): FlownLesson {
  const day = seed + APART * PILOTS.indexOf(pilot);
  const scenario = pilotLesson(pilot, day, day % 2 ? "left" : "right");
  const { track } = fly(scenario, day);
  const points = track.length;
  const log = {
    ...{ file: `${pilot} ${seed}`, name: pilot, kind: "simulated" as const, track },
    ...{ waypoints: [], routes: [], issues: [], pointsSeen: points, pointsTotal: points },
  };
  const { document } = debriefFlight({ log, brief: readBrief(scenario.brief ?? "", "brief.yaml") });
  const courses = scenario.script.flatMap((step) => (step.do === "course" ? [step.flown] : []));
  const mean = (of: (habit: (typeof courses)[number]) => number | null) => {
    const values = courses.map(of).filter((v) => v !== null);
    return values.length === 0 ? null : values.reduce((a, b) => a + b, 0) / values.length;
  };
  const descent = scenario.script.find((step) => step.do === "descent");
  return {
    flight: observeFlight(document, { id: `${pilot} ${seed}` }),
    truth: {
      needleDownwind: mean((h) => (h.habit === "beside" ? h.needle : h.habit === "tidy" ? 0 : null)),
      missingShare: mean((h) => (h.habit === "drifts" || h.habit === "tidy" ? 1 - h.share : null)),
      descentLateS: descent?.do === "descent" ? descent.late : null,
      lateToLeftDeg: scenario.pilot.lateToLeft ?? 0,
    },
  };
}

export const flyLessons = (pilot: PilotName, first: number, count: number): FlownLesson[] =>
  Array.from({ length: count }, (_, i) => flyLesson(pilot, first + i));

export const claimed = ({ habits }: HabitReport): string[] =>
  habits.filter(({ status }) => status === "habit" || status === "beyond").map(({ id }) => id);

export interface PilotScore {
  /** Share of the pilots of whom one of the expected habits is told. */
  readonly found: number;
  /** Share of whom any habit is told. */
  readonly any: number;
  /** Share of the intervals that hold the mean of all flights. */
  readonly covered: number;
  readonly intervals: number;
  readonly claims: Readonly<Record<string, number>>;
}

/**
 * Pilots of so many flights each, drawn without replacement from those flown; a flight may serve several pilots. An
 * interval is held against the mean that the same figure has over all the flights.
 */
export function scorePilots(
  pilot: PilotName,
  flown: readonly ObservedFlight[],
  flights: number,
  pilots: number,
): PilotScore {
  const grand = new Map(habitsOf(flown).habits.map(({ id, mean }) => [id, mean?.value]));
  const random = seeded(flights);
  let [found, any, covered, intervals] = [0, 0, 0, 0];
  const claims: Record<string, number> = {};
  for (let k = 0; k < pilots; k++) {
    const order = flown.map((flight) => ({ flight, at: random.uniform() })).sort((a, b) => a.at - b.at);
    const report = habitsOf(order.slice(0, flights).map(({ flight }) => flight));
    const told = claimed(report);
    if (told.some((id) => EXPECTED[pilot].includes(id))) found++;
    if (told.length > 0) any++;
    for (const id of told) claims[id] = (claims[id] ?? 0) + 1;
    for (const { id, mean } of report.habits) {
      const truth = grand.get(id);
      if (!mean || truth === undefined) continue;
      intervals++;
      if (truth >= mean.low95 && truth <= mean.high95) covered++;
    }
  }
  return { found: found / pilots, any: any / pilots, covered: covered / intervals, intervals, claims };
}
