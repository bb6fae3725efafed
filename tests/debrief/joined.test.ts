/** Exercises flown at once one after the other: each is found, in its place, and what they share is in both. Truth: the simulator's. */
import { describe, expect, it } from "vitest";
import { readBrief } from "../../src/brief/index.ts";
import type { DocumentExercise } from "../../src/debrief/document.ts";
import { debriefFlight } from "../../src/debrief/index.ts";
import type { Truth } from "../../src/simulator/index.ts";
import { exercisesOf, FIX_LATER, flown, JOINED, type Joined } from "../support/joined.ts";
import { near } from "../support/near.ts";

/** Two for each log; found at 1 s and at 5 s. */
const SEEDS = [1, 2];

const seconds = (utc: string | null | undefined, from: string | null): number =>
  utc && from ? (Date.parse(utc) - Date.parse(from)) / 1000 : Number.NaN;

function debriefed(joined: Joined, seed: number, every: number) {
  const { track, truth, brief } = flown(joined, seed, every);
  const log = { file: "log.gpx", track, waypoints: [], routes: [], pointsSeen: track.length, issues: [] };
  const { document } = debriefFlight({ log, brief: readBrief(brief, "brief.yaml") });
  return { exercises: document.exercises, truth: truth.truth };
}

/** The truth of each exercise, in flown order. */
function inOrder(joined: Joined, truth: Truth["truth"]) {
  const parts = exercisesOf(joined);
  return parts.map(({ kind }, i) => {
    const nth = parts.slice(0, i).filter((part) => part.kind === kind).length;
    if (kind === "course") return { kind, flown: truth.exercises[nth]! } as const;
    if (kind === "hold") return { kind, flown: truth.holds[nth]! } as const;
    if (kind === "arc") return { kind, flown: truth.arcs![nth]! } as const;
    return { kind, flown: truth.approaches![nth]! } as const;
  });
}

type Told = ReturnType<typeof inOrder>[number];

/** Within some seconds of the truth: a row of a 5 s log and what a turn's edge is good to. */
function expectFlown(told: DocumentExercise, truth: Told, joined: Joined, first: boolean, at: string) {
  const { startUtc, endUtc } = told;
  if (truth.kind === "course") {
    // from the intercept until established it may begin anywhere
    expect(seconds(startUtc, truth.flown.startUtc), at).toBeGreaterThan(-45);
    expect(seconds(startUtc, truth.flown.establishedUtc), at).toBeLessThan(25);
    near(seconds(endUtc, truth.flown.endUtc), 0, 25, "s", `${at}, end`);
  } else if (truth.kind === "arc") {
    near(seconds(startUtc, truth.flown.startUtc), 0, 35, "s", `${at}, start`);
    near(seconds(endUtc, truth.flown.endUtc), 0, 35, "s", `${at}, end`);
  } else if (truth.kind === "hold" && told.kind === "hold") {
    const { facts } = told;
    if (!joined.passedBefore) near(seconds(startUtc, truth.flown.t0), 0, 25, "s", `${at}, start`);
    else expect(seconds(startUtc, truth.flown.t0), at).toBeLessThan(25);
    near(seconds(endUtc, truth.flown.t1), 0, 15, "s", `${at}, end`);
    expect(facts!.laps, at).toHaveLength(truth.flown.laps.length);
    expect(facts!.asFlown!.turns, at).toBe(truth.flown.turn);
    // an entry that is not clear is not told; one that is told is the one that was flown
    const { flown: entered } = facts!.entry!;
    expect([truth.flown.entry, null], at).toContain(entered);
  } else if (truth.kind === "approach" && told.kind === "approach") {
    const { facts } = told;
    const later = (FIX_LATER / 90) * 3600; // at 90 kt
    near(seconds(facts!.finalFixPassage?.utc, truth.flown.finalFixUtc), -later, 6, "s", `${at}, final fix`);
    expect(facts!.outcome, at).toBe(truth.flown.outcome);
    if (truth.flown.missedUtc)
      near(seconds(facts!.missed?.startUtc, truth.flown.missedUtc), 0, 10, "s", `${at}, climb`);
    expect(
      told.findings.map(({ code }) => code),
      at,
    ).not.toContain("flown-again");
    // what led there is the exercise before
    if (!first && facts!.procedureTurn === null)
      expect(seconds(startUtc, truth.flown.startUtc), at).toBeGreaterThan(-45);
  } else expect.fail(`${at}: told as ${told.kind}`);
}

describe.each(JOINED)("by simulation, wind up to 25 kt: $name", (joined) => {
  it.each([1, 5])("each is found and measured in its place, log of %d s", (every) => {
    for (const seed of SEEDS) {
      const { exercises, truth } = debriefed(joined, seed, every);
      const beside = exercises.slice(exercisesOf(joined).length).map(({ title }) => title);
      expect(beside, `seed ${seed}: beside what the brief names`).toEqual([]);
      inOrder(joined, truth).forEach((part, i) => {
        const told = exercises[i]!;
        const at = `seed ${seed}, ${told.title}`;
        expect(told.facts, at).not.toBeNull();
        expectFlown(told, part, joined, i === 0, at);
      });
    }
  });
});
