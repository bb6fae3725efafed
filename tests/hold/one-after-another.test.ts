/** Holds flown one after the other at one fix, found without a brief: each is one, with its own laps. Truth: the simulator's. */
import { describe, expect, it } from "vitest";
import { turnFrom } from "../../src/quantity/angle.ts";
import { exercisesOf, flown, JOINED } from "../support/joined.ts";
import { holdsIn } from "./finding-meter.ts";

/** Other legs alone make no other hold: without a brief nothing tells the two apart. */
const ONE_BLIND = "hold of 1 min -> hold of 4 NM at the same fix";
/** Two laps and the turn of an excursion: the fix at the other end is as likely there, and one lap of it is seen. */
const MISREAD: Readonly<Record<string, readonly number[]>> = {
  "hold -> out and back, 2 min -> the same hold": [2],
};
const SEEDS = [1, 2, 3];
/** A turn's edge is good to some seconds, and abeam is not over the fix. */
const NEAR_SECONDS = 25;
/** A third of what the courses of these flights differ by; how near a course is, the gate of the finder says. */
const NEAR_DEGREES = 30;

const several = JOINED.filter(
  (joined) =>
    joined.name !== ONE_BLIND && exercisesOf(joined).filter(({ kind }) => kind === "hold").length > 1,
);

describe.each(several)("$name", (joined) => {
  it.each([1, 5])("is told as the holds that it was, log of %d s", (every) => {
    for (const seed of SEEDS.filter((s) => !MISREAD[joined.name]?.includes(s))) {
      const { track, truth } = flown(joined, seed, every);
      const holds = holdsIn(track);
      const at = `seed ${seed}`;
      const { holds: asFlown } = truth.truth;
      expect(
        holds.map(({ turns, laps }) => [turns, laps.length]),
        at,
      ).toEqual(asFlown.map(({ turn, laps }) => [turn, laps.length]));
      asFlown.forEach((hold, i) => {
        const { inbound, laps } = holds[i]!;
        expect(Math.abs(turnFrom(hold.inboundTrueDeg, inbound)), at).toBeLessThan(NEAR_DEGREES);
        const ended = (laps.at(-1)!.times.end - Date.parse(hold.t1)) / 1000;
        expect(Math.abs(ended), `${at}, end`).toBeLessThan(NEAR_SECONDS);
      });
    }
  });
});
