/** The legs of a flight as they stand in the document: motion and wind, each with its doubt. */
import { cosDeg, directionOf, sinDeg, turnFrom } from "../quantity/angle.ts";
import type { Span } from "../quantity/span.ts";
import { utcText } from "../quantity/time.ts";
import { turnedPast } from "../track/index.ts";
import type { Leg } from "../track/leg.ts";
import type { Motion } from "../track/motion.ts";
import { windRecord } from "../wind/index.ts";
import type { WindEstimate } from "../wind/wind.ts";
import type { DocumentLeg } from "./document.ts";

/** Mean of the values that are known, or null where none is. */
function meanKnown(column: Float64Array, span: Span): number | null {
  let sum = 0;
  let count = 0;
  for (let i = span.start; i < span.end; i++) {
    if (Number.isFinite(column[i]!)) {
      sum += column[i]!;
      count++;
    }
  }
  return count === 0 ? null : sum / count;
}

/** Mean direction of a vector over a span, degrees from north. */
function meanDirection(east: Float64Array, north: Float64Array, span: Span): number {
  return directionOf(meanKnown(east, span) ?? 0, meanKnown(north, span) ?? 0);
}

/** Mean of a column of directions, or null where none is known. */
function meanHeading(heading: Float64Array, span: Span): number | null {
  let east = 0;
  let north = 0;
  let count = 0;
  for (let i = span.start; i < span.end; i++) {
    if (!Number.isFinite(heading[i]!)) continue;
    east += sinDeg(heading[i]!);
    north += cosDeg(heading[i]!);
    count++;
  }
  return count === 0 ? null : directionOf(east, north);
}

export function legRecords(motion: Motion, legs: readonly Leg[], wind: WindEstimate): DocumentLeg[] {
  return legs.map((leg, i) => {
    const { span } = leg;
    const track =
      leg.kind === "turn"
        ? motion.trackAngle[span.start]!
        : meanDirection(motion.velocityEast, motion.velocityNorth, span);
    const fact = wind.legs[i]!;
    const heading =
      leg.kind === "straight" && fact.knowledge === "full"
        ? meanHeading(wind.alongFlight.heading, span)
        : null;
    return {
      kind: leg.kind,
      startUtc: utcText(motion.time[span.start]!),
      endUtc: utcText(motion.time[span.end - 1]!),
      trackTrueDeg: track,
      turnDeg: leg.turn,
      pastDeg: turnedPast(motion, leg),
      groundSpeedKt: meanKnown(motion.groundSpeed, span) ?? 0,
      altitudeFt: meanKnown(motion.altitude, span),
      verticalFpm: meanKnown(motion.verticalSpeed, span),
      wind: windRecord(fact),
      headingTrueDeg: heading,
      driftDeg: heading === null ? null : turnFrom(heading, track),
    };
  });
}
