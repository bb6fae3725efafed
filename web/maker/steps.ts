/** Step-downs of an approach in one line, as in "LUMDO 2400, 2 NM 900": not below 2,400 ft before LUMDO, and so on. */
import { isMap, type Values } from "./values.ts";

/** Null where a part is neither a fix nor a distance with a height. */
export function typedSteps(text: string): readonly Values[] | null {
  const steps = text
    .split(/\s*[,;]\s*/)
    .filter((part) => part.trim() !== "")
    .map((part): Values | null => {
      const [, distance, feetAfter] = /^\s*([\d.]+)\s*NM\s+(-?\d+)\s*(?:ft)?\s*$/i.exec(part) ?? [];
      if (distance !== undefined) return { before_nm: Number(distance), not_below_ft: Number(feetAfter) };
      const [, fix, feet] = /^\s*(\S+)\s+(-?\d+)\s*(?:ft)?\s*$/i.exec(part) ?? [];
      return fix === undefined ? null : { fix, not_below_ft: Number(feet) };
    });
  return steps.every((step) => step !== null) ? (steps as Values[]) : null;
}

/** As they are typed. */
export const stepsText = (steps: readonly unknown[]): string =>
  steps
    .filter(isMap)
    .map(({ fix, before_nm, not_below_ft }) => `${fix ?? `${before_nm} NM`} ${not_below_ft}`)
    .join(", ");
