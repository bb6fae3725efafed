/** Values that SciPy gave, with their source in the file. */
import { readFileSync } from "node:fs";
import { join } from "node:path";

export interface Reference {
  readonly trends: readonly {
    readonly y: readonly number[];
    readonly slope: number;
    readonly intercept: number;
    readonly s: number;
    readonly exactP: number | null;
    readonly asymptoticP: number;
  }[];
  readonly falseDiscoveries: readonly {
    readonly p: readonly number[];
    readonly adjusted: readonly number[];
  }[];
  readonly student: readonly { readonly t: number; readonly df: number; readonly within: number }[];
  readonly huber: readonly {
    readonly values: readonly number[];
    readonly spread: number;
    readonly mean: number;
  }[];
}
/** Source and date stand in the file. */
export const reference: Reference = JSON.parse(
  readFileSync(join(import.meta.dirname, "../truth/habit-statistics.json"), "utf8"),
);
