/** The rows in which a final can be joined: in flight and before the threshold. On the runway nobody joins it any more, and on a taxiway not yet. */
import type { AngleSize, Share } from "../quantity/units.ts";
import { ROLLING } from "./break-off.ts";
import type { ApproachRows } from "./rows.ts";

/** The rows with the needle as not known on the ground and past the threshold, but where it was near and along the final from before it. */
export function joinable(
  rows: ApproachRows,
  near: { readonly needle: Share; readonly track: AngleSize },
): ApproachRows {
  let held = false;
  const needle = rows.needle.map((value, i) => {
    const flying = !(rows.alongNm[i]! > 0 || rows.groundSpeedKt[i]! < ROLLING);
    const along = Math.abs(value) <= near.needle && Math.abs(rows.trackErrorDeg[i]!) <= near.track;
    held = along && (flying || held);
    return flying || held ? value : Number.NaN;
  });
  return { ...rows, needle };
}
