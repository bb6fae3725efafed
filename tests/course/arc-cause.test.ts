/** Why an arc was left: a drift too small to be the arc's own is told with its cause, or that it cannot be told. */
import { describe, expect, it } from "vitest";
import type { ArcRecord } from "../../src/debrief/document.ts";
import { findingSentence } from "../../src/report/index.ts";
import { arcExercise, flyArc } from "../support/flown-arc.ts";

/** 0.2 NM outside within a minute and a half, in the middle of an arc flown by ruler at 100 kt in no wind. */
const leaves = (share: number): number => 0.2 * Math.max(0, Math.min(1, (share - 0.4) * 3));

describe.each([
  ["right", 300, 350],
  ["left", 40, 350],
] as const)("by construction: an arc that turns %s, left by 0.2 NM", (turns, from, to) => {
  const exercise = arcExercise({ latitude: 35.6, longitude: 172.3 }, from, to, turns);
  const { facts, findings } = flyArc(exercise, leaves).measured;
  const [excursion] = facts.excursions!;

  it("its excursion has one cause, and that explains all of it", () => {
    expect(excursion!.causes).toHaveLength(1);
    expect(excursion!.causes![0]!.share).toBe(1);
    // no wind can be to blame where there is none: the heading is, or the log does not know the wind
    expect(["heading-off", "cannot-tell"]).toContain(excursion!.causes![0]!.cause);
  });
  it("the cause follows the track that was off, over the same time, in words of an arc", () => {
    const at = findings.findIndex(({ code }) => code === "arc-track-off");
    const cause = findings[at + 1]!;
    expect(cause.code).toBe(`arc-${excursion!.causes![0]!.cause}`);
    expect(cause.evidence.fromUtc).toBe(excursion!.trackOffUtc);
    expect(findingSentence(cause, { kind: "arc", facts } as unknown as ArcRecord)).toMatch(
      /^(The heading stood off|Why the track left the tangent).*\.$/,
    );
  });
});
