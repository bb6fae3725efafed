/** Step-downs of an approach in one line, as in "LUMDO 2400, 2 NM 900": not below 2,400 ft before LUMDO, and so on. */
import { typedHeight } from "./feet.ts";
import { isMap, type Values } from "./values.ts";

/** A comma before three figures may part thousands, as in "LUMDO 2,400": only one that does not ends a step. */
const BETWEEN = /\s*;\s*|\s*,(?!\d{3}(?!\d))\s*/;
const HEIGHT = "(-?\\d[\\d.,'’\\s]*(?:ft)?)";
const BEFORE = new RegExp(`^\\s*([\\d.]+)\\s*NM\\s+${HEIGHT}\\s*$`, "i");
const AT_FIX = new RegExp(`^\\s*(\\S+)\\s+${HEIGHT}\\s*$`, "i");

/** Null where a part is neither a fix nor a distance with a height. */
export function typedSteps(text: string): readonly Values[] | null {
  const steps = text
    .split(BETWEEN)
    .filter((part) => part.trim() !== "")
    .map((part): Values | null => {
      const [, distance, after] = BEFORE.exec(part) ?? [];
      const [, fix, at] = distance === undefined ? (AT_FIX.exec(part) ?? []) : [];
      const feet = typedHeight(after ?? at ?? "");
      if (feet === null) return null;
      return distance === undefined
        ? { fix, not_below_ft: feet }
        : { before_nm: Number(distance), not_below_ft: feet };
    });
  return steps.every((step) => step !== null) ? (steps as Values[]) : null;
}

/** As they are typed. */
export const stepsText = (steps: readonly unknown[]): string =>
  steps
    .filter(isMap)
    .map(({ fix, before_nm, not_below_ft }) => `${fix ?? `${before_nm} NM`} ${not_below_ft}`)
    .join(", ");
