/** The rows in which a final can be joined: in flight and before the threshold. On the runway nobody joins it any more, and on a taxiway not yet. */
import { ROLLING } from "./break-off.ts";
import type { ApproachRows } from "./rows.ts";

/** The rows with the needle as not known on the ground and past the threshold. */
export const joinable = (rows: ApproachRows): ApproachRows => ({
  ...rows,
  needle: rows.needle.map((needle, i) =>
    rows.alongNm[i]! > 0 || rows.groundSpeedKt[i]! < ROLLING ? Number.NaN : needle,
  ),
});
