/** The used flight as columns for charts and maps: smoothed where the log has times, as recorded where it has none. */
import type { Leg } from "../track/leg.ts";
import type { Motion } from "../track/motion.ts";
import type { Track } from "../track/track.ts";
import type { WindEstimate } from "../wind/wind.ts";
import type { PathSeries } from "./series.ts";

const unknown = (length: number): Float64Array => new Float64Array(length).fill(Number.NaN);

export function pathSeries(
  track: Track,
  motion: Motion | null,
  legs: readonly Leg[],
  wind: WindEstimate | null,
): PathSeries {
  const length = motion?.length ?? track.length;
  const turning = new Uint8Array(length);
  for (const leg of legs) if (leg.kind === "turn") turning.fill(1, leg.span.start, leg.span.end);
  return {
    timeMs: motion?.time ?? unknown(length),
    latitude: motion?.latitude ?? track.latitude,
    longitude: motion?.longitude ?? track.longitude,
    altitudeFt: motion?.altitude ?? track.altitude,
    groundSpeedKt: motion?.groundSpeed ?? unknown(length),
    trackTrueDeg: motion?.trackAngle ?? unknown(length),
    headingTrueDeg: wind?.alongFlight.heading ?? unknown(length),
    velocityEastKt: motion?.velocityEast ?? unknown(length),
    velocityNorthKt: motion?.velocityNorth ?? unknown(length),
    turning,
  };
}
