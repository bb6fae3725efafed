/** The invented Orsa Vale: fixes over the open North Pacific, so that nobody takes them for real. */
import type { Position } from "../geodesy/position.ts";
import { trueFromMagnetic } from "../quantity/angle.ts";
import type { FeetMsl, MagneticDegrees, Metres, TrueDegrees, VariationDegrees } from "../quantity/units.ts";

/** The station's declination, degrees east, near the variation of WMM2025 there in October 2026. */
const TARNO_DECLINATION: VariationDegrees = 2.5;
export const TARNO: Position = { latitude: 35.6, longitude: 172.3 };
/** About 12 NM west-north-west of TARNO. */
export const BELVO: Position = { latitude: 35.668, longitude: 172.069 };
/** About 14 NM east-north-east of BELVO, 11 NM north of TARNO. */
export const KESTI: Position = { latitude: 35.785, longitude: 172.318 };

/** A course or radial of TARNO, true. */
export const atTarno = (magnetic: MagneticDegrees): TrueDegrees =>
  trueFromMagnetic(magnetic, TARNO_DECLINATION);

/** The fixes as the head of a brief. */
export const FIXES_YAML = `fixes:
  TARNO: { lat: 35.6, lon: 172.3, kind: vor, declination: 2.5 }
  BELVO: { lat: 35.668, lon: 172.069, kind: waypoint }
  KESTI: { lat: 35.785, lon: 172.318, kind: waypoint }
`;

/** Threshold of runway 22 at Lindholt, 420 ft, its true direction and its length in metres. */
export const LINDHOLT_22: Position = { latitude: 35.672, longitude: 172.395 };
export const RUNWAY_22: TrueDegrees = 221.5;
export const RUNWAY_22_LENGTH: Metres = 1500;
export const LINDHOLT_ELEVATION: FeetMsl = 420;
