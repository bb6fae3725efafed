/** The rows of an approach as the columns that charts and maps are drawn from. */
import { maskOf, type Span } from "../quantity/span.ts";
import { Z95 } from "../quantity/weigh.ts";
import { type Part, partOfRow } from "./parts.ts";
import type { ApproachRows } from "./rows.ts";
import type { ApproachSeries } from "./series.ts";

export function seriesOf(rows: ApproachRows, final: Span, parts: readonly Part[]): ApproachSeries {
  return {
    kind: "approach",
    pathStart: rows.pathStart,
    timeMs: rows.timeMs,
    distanceToThresholdNm: rows.distanceNm,
    crossTrackNm: rows.crossTrackNm,
    needle: rows.needle,
    fullScaleNm: rows.fullScaleNm,
    trackTrueDeg: rows.trackDeg,
    trackAngleErrorDeg: rows.trackErrorDeg,
    headingTrueDeg: rows.headingDeg,
    groundSpeedKt: rows.groundSpeedKt,
    bankDeg: rows.bankDeg,
    altitudeFt: rows.altitudeFt,
    heightAboveThresholdFt: rows.heightFt,
    height95Ft: rows.heightSdFt.map((sd) => Z95 * sd),
    verticalFpm: rows.verticalFpm,
    neededFpm: rows.neededFpm,
    glidePathDeviationDeg: rows.pathDeg,
    glidePathDeviationFt: rows.pathFt,
    glidePathNeedle: rows.pathNeedle,
    glidePathFullScaleFt: rows.pathFullScaleFt,
    judged: maskOf(final, rows.length),
    segment: partOfRow(parts, rows.length),
  };
}
