/** Where the simulator's own columns lie against a final, by the simulator's own geodesy. */
import type { TrueColumns } from "../../src/simulator/index.ts";
import { offset } from "../../src/simulator/step.ts";

const RADIAN = Math.PI / 180;
/** The drawn briefs' antenna stands 6,500 ft past the threshold: 350 ft at the threshold are 3.08 degrees from there, more than the 3 that a localizer has at most. */
export const ANTENNA_M = 6500 * 0.3048;
export const HALF_DEG = 3;

export interface OnFinal {
  /** Deviation over full scale, and metres, right positive. */
  readonly needle: number;
  readonly across: number;
  /** Before the threshold, metres. */
  readonly before: number;
  /** From the course to full scale, metres. */
  readonly fullScale: number;
}

/** By rows of the columns: seconds since the start of the flight. `course`: true, at the threshold. */
export const trueFinal =
  (columns: TrueColumns, [latitude, longitude]: readonly [number, number], course: number) =>
  (row: number): OnFinal => {
    const place = { latitude: columns.latitude[row]!, longitude: columns.longitude[row]! };
    const way = offset({ latitude, longitude }, place);
    const aside = (way.azimuthAtStart - course) * RADIAN;
    const [across, before] = [way.distance * Math.sin(aside), -way.distance * Math.cos(aside)];
    const reach = before + ANTENNA_M;
    return {
      needle: Math.atan2(across, reach) / RADIAN / HALF_DEG,
      across,
      before,
      fullScale: reach * Math.tan(HALF_DEG * RADIAN),
    };
  };
