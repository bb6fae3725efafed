import { describe, expect, it } from "vitest";
import type { Rows } from "../../src/course/path.ts";
import {
  type Correction,
  causeFindings,
  causesOf,
  type ExcursionRows,
  type Joining,
} from "../../src/track/index.ts";
import { near } from "../support/near.ts";

/** 100 s on which the track stands 6 degrees right and the aircraft goes from a distance to another. */
function drift(from: number, to: number): { rows: Rows; excursion: ExcursionRows } {
  const n = 100;
  const rows = {
    length: n,
    timeMs: Float64Array.from({ length: n }, (_, i) => i * 1000),
    trackErrorDeg: new Float64Array(n).fill(6),
    crossTrackNm: Float64Array.from({ length: n }, (_, i) => from + ((to - from) * i) / (n - 1)),
  } as unknown as Rows;
  const record = { side: "right" } as ExcursionRows["record"];
  return { rows, excursion: { record, drifting: { start: 0, end: n }, worst: n - 1 } };
}

/** Wind from the left needs `needed` (negative: left). */
const correction = (flown: number, needed: number) => ({ flown, needed, doubt95: 1.5 }) as Correction;
const shares = (excursion: ReturnType<typeof drift>, m: Correction | null, joining: Joining | null) =>
  causesOf(excursion.excursion, { rows: excursion.rows, joining, chased: null, correction: m });

describe("by construction: shares of what carried an aircraft 0.4 NM right", () => {
  it.each([
    ["heading on the course, 6° left needed", 0, -6, [["wind-uncorrected", 1]]],
    ["half of what is needed", -6, -12, [["under-corrected", 1]]],
    ["twice what the wind from the right needs", 12, 6, [["over-corrected", 1]]],
    ["next to no wind", 6, 0.5, [["heading-off", 1]]],
    ["turned 8° with the wind that needs 7° the other way", 8, -7, [["corrected-wrong-way", 1]]],
    ["3° with the wind that needs 8°: hardly turned", 3, -8, [["wind-uncorrected", 1]]],
  ] as const)("%s", (_, flown, needed, expected) => {
    const found = shares(drift(0, 0.4), correction(flown as number, needed as number), null);
    expect(found.map((c) => c.cause)).toEqual(expected.map(([cause]) => cause));
    found.forEach((c, i) => {
      near(c.share, expected[i]![1] as number, 1e-9);
    });
  });

  it("of 0.4 NM, 0.1 was there when a late turn ended 6° off: a quarter is the turn’s timing, the rest its roll-out", () => {
    const joining = { time: 0, crossTrackNm: 0.1, trackErrorDeg: 6, turned: "turned-late" } as const;
    const found = shares(drift(0.1, 0.4), correction(-1, 2), joining);
    expect(found.map((c) => c.cause)).toEqual(["rolled-out-off", "turned-late"]);
    near(found[1]!.share, 0.25, 1e-9);
  });

  it.each([
    [4, 4.5, "cannot-tell"],
    [-4, 4.5, "cannot-tell"],
    [1, 2.5, "cannot-tell"],
    // at most 2.5°, which is less than the 3° that are worth a cause
    [1, 1.5, "heading-off"],
    [4, 1.5, "heading-off"],
  ])("%s° ± %s° needed: %s", (needed, doubt95, cause) => {
    const known = { flown: 5, needed, doubt95 } as Correction;
    expect(shares(drift(0, 0.4), known, null)).toEqual([{ cause, share: 1 }]);
  });

  it("with the wind unknown nothing is guessed", () => {
    expect(shares(drift(0, 0.4), null, null)).toEqual([{ cause: "cannot-tell", share: 1 }]);
  });
});

it("by construction: the evidence of a cause ends where the log falls silent, before the worst", () => {
  const trackOffUtc = "2026-10-17T01:02:00.000Z";
  const silence = { fromUtc: "2026-10-17T01:03:00.000Z", seconds: 90 };
  const causes = [{ cause: "wind-uncorrected", share: 1 }];
  const more = { side: "right", trackErrorDeg: 6, correctedUtc: null, worstUtc: "2026-10-17T01:05:00.000Z" };
  const record = { ...more, trackOffUtc, silence, causes };
  const [finding] = causeFindings({ record } as unknown as Parameters<typeof causeFindings>[0], null);
  expect(finding!.evidence).toEqual({ fromUtc: trackOffUtc, toUtc: silence.fromUtc });
});
