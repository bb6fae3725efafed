/** The ground velocities that a velocity circle shows: those in turns, one every five seconds. */
import type { PathSeries } from "./contract.ts";

const EVERY_MS = 5000;

/** East and north, kt. */
export function turnVelocities(path: PathSeries): (readonly [east: number, north: number])[] {
  const found: (readonly [number, number])[] = [];
  let last = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < path.timeMs.length; i++) {
    if (path.turning[i] !== 1 || !(path.timeMs[i] - last >= EVERY_MS)) continue;
    const [east, north] = [path.velocityEastKt[i], path.velocityNorthKt[i]];
    if (!Number.isFinite(east) || !Number.isFinite(north)) continue;
    last = path.timeMs[i];
    found.push([east, north]);
  }
  return found;
}
