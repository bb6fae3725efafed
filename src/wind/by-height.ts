/** The wind against height: its mean over bands of height, where direction and speed are known. */
import type { FeetMsl, Seconds } from "../quantity/units.ts";
import type { Motion } from "../track/motion.ts";
import { factOf, meansOver } from "./fact.ts";
import type { WindEstimate, WindFact } from "./wind.ts";

export interface WindAtHeight extends WindFact {
  /** The band, and the mean of the heights flown in it. */
  readonly low: FeetMsl;
  readonly high: FeetMsl;
  readonly altitude: FeetMsl;
  readonly seconds: Seconds;
}

/** Bands of so many feet while the flight spans at most so many. Own choice: at most 16 bands up to 32,000 ft. */
const BANDS: readonly (readonly [step: number, upTo: number])[] = [
  [500, 8000],
  [1000, 16000],
];
const HIGHEST_STEP = 2000;
/** A band passed more quickly is left out. Own choice. */
const LEAST_SECONDS = 20;
/** Between rows farther apart than this nothing is known of the height, s. Own choice. */
const LONGEST_INTERVAL = 60;

/**
 * One fact a band, the lowest first; empty where the log has no height. As over a leg, neighbouring rows share their
 * errors, so the doubt is the mean of the doubts; a wind that changed between two visits to a band is averaged.
 */
export function windByHeight({ alongFlight }: WindEstimate, motion: Motion): WindAtHeight[] {
  const { altitude, time } = motion;
  const known = (k: number) => alongFlight.knowledge[k] === "full" && Number.isFinite(altitude[k]!);
  let [least, most] = [Infinity, -Infinity];
  for (let k = 0; k < motion.length; k++) {
    if (!known(k)) continue;
    least = Math.min(least, altitude[k]!);
    most = Math.max(most, altitude[k]!);
  }
  if (most < least) return [];
  const step = BANDS.find(([, upTo]) => most - least <= upTo)?.[0] ?? HIGHEST_STEP;
  const found: WindAtHeight[] = [];
  for (let low = Math.floor(least / step) * step; low <= most; low += step) {
    const weight = (k: number): number => {
      if (!known(k) || altitude[k]! < low || altitude[k]! >= low + step) return 0;
      const interval = (time[Math.min(k + 1, motion.length - 1)]! - time[k]!) / 1000;
      return interval > LONGEST_INTERVAL ? 0 : interval;
    };
    let seconds = 0;
    let height = 0;
    const rests = new Map<WindFact["restsOn"], number>();
    for (let k = 0; k < motion.length; k++) {
      const w = weight(k);
      if (w === 0) continue;
      seconds += w;
      height += w * altitude[k]!;
      const rest = alongFlight.restsOn[k]!;
      rests.set(rest, (rests.get(rest) ?? 0) + w);
    }
    if (seconds < LEAST_SECONDS) continue;
    const rest = [...rests].sort((a, b) => b[1] - a[1])[0]![0];
    const fact = factOf(
      meansOver(alongFlight, { start: 0, end: motion.length }, weight),
      null,
      rest,
      alongFlight.saidLimit,
    );
    found.push({ ...fact, low, high: low + step, altitude: height / seconds, seconds });
  }
  return found;
}
