/** Laps that are told as those of a briefed hold are not told again beside it. Truth: the simulator's laps. */
import { expect, it } from "vitest";
import { readBrief } from "../../src/brief/index.ts";
import { holdsBeside } from "../../src/debrief/hold-matches.ts";
import { debriefFlight } from "../../src/debrief/index.ts";
import { firstAtOrAfter } from "../../src/quantity/span.ts";
import { fly, scenarioNamed } from "../../src/simulator/index.ts";
import { findLegs, smoothTrack } from "../../src/track/index.ts";
import { arriving, between, FINAL, flown, hold, type Joined } from "../support/joined.ts";

function flownLaps(laps: number, seed: number) {
  const base = scenarioNamed("hold-direct-well-flown");
  const script = base.script.map((step) => (step.do === "hold" ? { ...step, laps } : step));
  const { track, truth } = fly({ ...base, script }, seed);
  const motion = smoothTrack(track)!;
  const [hold] = truth.truth.holds;
  const rowAt = (utc: string) => firstAtOrAfter(motion.time, Date.parse(utc));
  /** From the beginning of a lap, of those from 0, to the end of another. */
  const rows = (first: number, last: number) => {
    const begin = first === 0 ? hold!.t0 : hold!.laps[first - 1]!.endUtc;
    return { start: rowAt(begin), end: rowAt(hold!.laps[last]!.endUtc) };
  };
  return { motion, legs: findLegs(motion), hold: hold!, rows };
}

it.each([1, 2, 3])("of four laps the last is taken: three are left, seed %i", (seed) => {
  const { motion, legs, hold, rows } = flownLaps(4, seed);
  expect(hold.laps).toHaveLength(4);
  const taken = rows(3, 3);
  const [beside, ...more] = holdsBeside([taken], motion, legs, []);
  expect(more).toEqual([]);
  expect(beside!.laps).toHaveLength(3);
  const { time } = motion;
  expect(Math.abs(beside!.laps.at(-1)!.times.end - time[taken.start]!)).toBeLessThan(15_000);
});

it.each([1, 2, 3])(
  "of four laps the last but one is taken: what is left is two laps and one, and one is no hold, seed %i",
  (seed) => {
    const { motion, legs, rows } = flownLaps(4, seed);
    const beside = holdsBeside([rows(2, 2)], motion, legs, []);
    expect(beside.map(({ laps }) => laps.length)).toEqual([2]);
  },
);

/** A lap as briefed; then half a turn outbound, a turn of 360 degrees, and another lap at the fix. */
const BROKEN_OFF: Joined = {
  name: "lap -> broken off by a circle outbound -> lap",
  start: arriving("TARNO", FINAL + 10, 5, 3000),
  parts: [
    hold("TARNO", FINAL, { laps: 1 }),
    between(
      { do: "turn", by: 180 },
      { do: "heading", seconds: 20 },
      { do: "turn", by: 360 },
      ...hold("TARNO", FINAL, { laps: 1 }).steps,
      { do: "heading", seconds: 60 },
    ),
  ],
};

it.each([1, 2, 3, 4])(
  "no lap is made of one that the brief's hold has, and what came after, seed %i",
  (seed) => {
    const { track, truth, brief } = flown(BROKEN_OFF, seed, 1);
    const log = { file: "log.gpx", track, waypoints: [], routes: [], pointsSeen: track.length, issues: [] };
    const { document } = debriefFlight({ log, brief: readBrief(brief, "brief.yaml") });
    const [briefed, ...beside] = document.exercises;
    const ended = Date.parse(truth.truth.holds[0]!.t1);
    expect(Math.abs(Date.parse(briefed!.endUtc!) - ended)).toBeLessThan(15_000);
    for (const { title, startUtc } of beside)
      expect(Date.parse(startUtc!), title).toBeGreaterThan(ended - 15_000);
  },
);
