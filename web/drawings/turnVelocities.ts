/** The ground velocities that a velocity circle shows: those in turns, one every five seconds, or fewer of very many. */
import type { PathSeries } from "./contract.ts";

const EVERY_MS = 5000;
/** More dots than these are one blot. Own choice. */
const MOST = 1500;

/** Heights within this of the wind of the day share its wind, ft: as where that wind is averaged. */
const NEAR_FT = 1500;

export interface TurnVelocity {
  /** kt. */
  readonly east: number;
  readonly north: number;
  /** Whether it was flown near the height of the wind of the day; true where a height is not known. */
  readonly near: boolean;
}

/** `aboutFt` is the height of the wind of the day, or null. */
export function turnVelocities(path: PathSeries, aboutFt: number | null): TurnVelocity[] {
  const found: TurnVelocity[] = [];
  let last = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < path.timeMs.length; i++) {
    if (path.turning[i] !== 1 || !(path.timeMs[i] - last >= EVERY_MS)) continue;
    const [east, north] = [path.velocityEastKt[i], path.velocityNorthKt[i]];
    if (!Number.isFinite(east) || !Number.isFinite(north)) continue;
    last = path.timeMs[i];
    const near = aboutFt === null || !(Math.abs(path.altitudeFt[i] - aboutFt) > NEAR_FT);
    found.push({ east, north, near });
  }
  const stride = Math.ceil(found.length / MOST);
  return stride > 1 ? found.filter((_, i) => i % stride === 0) : found;
}
