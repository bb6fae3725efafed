/** Vector error of the smoothed ground velocity of simulated flights against the truth, kt, by what the aircraft did. */
import { fly, scenarioNamed, type TrueColumns } from "../../src/simulator/index.ts";
import type { Scenario } from "../../src/simulator/scenario.ts";
import { smoothTrack } from "../../src/track/index.ts";
import type { Track } from "../../src/track/track.ts";

const RADIANS = Math.PI / 180;
/** Half of the chi-square of two dimensions that holds 95 %. */
const INSIDE = -2 * Math.log(0.05);

export type Doing = "straight" | "turning" | "rolling";

/** True ground velocity, kt. */
export function trueVelocity(c: TrueColumns, row: number): readonly [east: number, north: number] {
  const heading = c.heading[row]! * RADIANS;
  return [
    c.trueAirspeed[row]! * Math.sin(heading) + c.airEast[row]!,
    c.trueAirspeed[row]! * Math.cos(heading) + c.airNorth[row]!,
  ];
}

/** Turning or straight for 5 s to either side, else rolling in or out. */
function doingAt(c: TrueColumns, row: number): Doing {
  let [least, most] = [Number.POSITIVE_INFINITY, 0];
  for (let i = Math.max(1, row - 5); i <= Math.min(c.length - 2, row + 5); i++) {
    const rate = Math.abs((((c.heading[i + 1]! - c.heading[i - 1]! + 540) % 360) - 180) / 2);
    least = Math.min(least, rate);
    most = Math.max(most, rate);
  }
  return least > 2 ? "turning" : most < 1.2 ? "straight" : "rolling";
}

export interface VelocityErrors {
  /** Root mean square, kt. */
  readonly error: number;
  /** The same as the motion states it. */
  readonly stated: number;
  /** Share of moments within the stated 95 %. */
  readonly coverage: number;
  readonly moments: number;
}

/** Errors over scenarios and seeds; `alter` may add columns to the log before it is smoothed. */
export function velocityErrors(
  names: readonly string[],
  logging: Scenario["logging"],
  seeds: { readonly first: number; readonly count: number },
  alter: (track: Track, columns: TrueColumns, seed: number) => Track = (track) => track,
): Record<Doing, VelocityErrors> {
  const sums: Record<Doing, number[]> = {
    straight: [0, 0, 0, 0],
    turning: [0, 0, 0, 0],
    rolling: [0, 0, 0, 0],
  };
  for (const name of names) {
    for (let seed = seeds.first; seed < seeds.first + seeds.count; seed++) {
      const { track, columns } = fly(scenarioNamed(name, { logging }), seed);
      const motion = smoothTrack(alter(track, columns, seed))!;
      for (let k = 1; k < motion.length - 1; k++) {
        const row = (motion.time[k]! - track.time[0]!) / 1000;
        if (!Number.isInteger(row) || row < 3 || row > columns.length - 4) continue;
        const [east, north] = trueVelocity(columns, row);
        const square = (motion.velocityEast[k]! - east) ** 2 + (motion.velocityNorth[k]! - north) ** 2;
        const variance = motion.velocitySd[k]! ** 2;
        const sum = sums[doingAt(columns, row)];
        sum[0]! += square;
        sum[1]! += 2 * variance;
        sum[2]! += square <= INSIDE * variance ? 1 : 0;
        sum[3]!++;
      }
    }
  }
  const of = ([square, stated, inside, n]: number[]): VelocityErrors => ({
    error: Math.sqrt(square! / n!),
    stated: Math.sqrt(stated! / n!),
    coverage: inside! / n!,
    moments: n!,
  });
  return { straight: of(sums.straight), turning: of(sums.turning), rolling: of(sums.rolling) };
}
