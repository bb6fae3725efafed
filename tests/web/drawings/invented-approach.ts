/** An approach to a runway at 420 ft flown down 3 degrees second by second, spelled out so that what is expected can be read off. */
import type { ApproachFacts, ApproachRecord, ApproachSeries } from "../../../src/index.ts";

const START = Date.UTC(2026, 9, 17, 4, 5);

export interface InventedApproach {
  /** Where the log of the approach begins, NM before the threshold. */
  readonly fromNm?: number;
  readonly fixNm?: number;
  readonly joinedNm?: number;
  readonly facts?: Partial<ApproachFacts>;
}

/** A row a tenth of a mile to 0.5 NM past the threshold, 318.4 ft a mile (tangent of 3 degrees, 6,076.1 ft a mile) over 50 ft. */
export function inventApproach(given: InventedApproach = {}): {
  exercise: ApproachRecord;
  series: ApproachSeries;
} {
  const { fromNm = 10, fixNm = 5, joinedNm = 7 } = given;
  const n = Math.round((fromNm + 0.5) * 10) + 1;
  const column = (value: (distanceNm: number, row: number) => number) =>
    Float64Array.from({ length: n }, (_, i) => value(fromNm - i / 10, i));
  const series: ApproachSeries = {
    kind: "approach",
    pathStart: 0,
    timeMs: column((_, i) => START + i * 4000),
    distanceToThresholdNm: column((d) => d),
    crossTrackNm: column((d) => (d > joinedNm ? (d - joinedNm) / 2 : 0)),
    needle: column(() => 0.1),
    fullScaleNm: column(() => 0.3),
    trackTrueDeg: column(() => 221.5),
    trackAngleErrorDeg: column(() => 0),
    headingTrueDeg: column(() => 221.5),
    groundSpeedKt: column(() => 90),
    bankDeg: column(() => 0),
    altitudeFt: column((d) => 420 + 50 + 318.4 * d),
    heightAboveThresholdFt: column((d) => 50 + 318.4 * d),
    height95Ft: column(() => 40),
    verticalFpm: column(() => -478),
    neededFpm: column(() => -478),
    glidePathDeviationDeg: column(() => 0),
    glidePathDeviationFt: column(() => 0),
    glidePathNeedle: column(() => 0),
    glidePathFullScaleFt: column((d) => 74 * d),
    judged: Uint8Array.from({ length: n }, (_, i) =>
      fromNm - i / 10 <= fixNm && fromNm - i / 10 >= 0 ? 1 : 0,
    ),
    segment: new Uint8Array(n),
  };
  const facts = {
    runway: { ident: "22", elevationFt: 420, lengthFt: 4921 },
    finalCourseTrueDeg: 221.5,
    finalCourseMagneticDeg: 219,
    finalFix: { ident: "LUMDO", distanceNm: fixNm, altitudeFt: 2100 },
    intercept: { joinedDistanceNm: joinedNm },
    segments: [{ kind: "final" }],
    stepDowns: [],
    minimum: null,
    missedPoint: { distanceNm: 0, passedUtc: null },
    outcome: "landed",
    descent: null,
    glidePath: null,
    ...given.facts,
  } as unknown as ApproachFacts;
  return { exercise: { kind: "approach", title: "An approach", facts, verdicts: [] } as never, series };
}
