/** Airspeed against the holding limit: the indicated speed is estimated from the true one and the height, with its doubt. */
import type { FeetMsl, Knots } from "../quantity/units.ts";
import type { HoldingStandard } from "../standard/holding.ts";
import { trueOverEquivalent } from "../wind/index.ts";
import { bandAt } from "./asked.ts";
import type { HoldFacts } from "./facts.ts";

/** Air 15 degrees off the standard changes the speed by so much of itself; position error and GPS height less. Common practice, no source. */
const UNKNOWN_AIR = 0.026;

export function speedFacts(
  trueAirspeed: Knots | null,
  trueAirspeed95: Knots | null,
  altitude: FeetMsl | null,
  standard: HoldingStandard,
): HoldFacts["speed"] {
  if (trueAirspeed === null || altitude === null) return null;
  const ratio = trueOverEquivalent(altitude);
  const indicated = trueAirspeed / ratio;
  return {
    trueKt: trueAirspeed,
    indicatedKt: indicated,
    doubt95Kt: Math.hypot((trueAirspeed95 ?? 0) / ratio, UNKNOWN_AIR * indicated),
    mostKt: bandAt(standard, altitude).mostSpeed,
    citation: standard.citation,
  };
}
