/** The limit of a needle as drawn: that of the standard which the exercise is held against. */
import type { Verdict } from "./contract.ts";

/** Three quarters of full scale: the limit that most standards name, drawn where none is named. */
const USUAL_LIMIT = 0.75;

export const needleLimit = (
  verdicts: readonly Verdict[],
  criterion: "approach-needle" | "approach-glide-path",
): number => verdicts.find((verdict) => verdict.criterion === criterion)?.limit ?? USUAL_LIMIT;
