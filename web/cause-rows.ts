/** Where the track left its line and why, as rows of a table: one an excursion, with the share that each cause explains. */
import {
  type Cause,
  clockSeconds,
  duration,
  type ExcursionRecord,
  percent,
  plain,
  sided,
} from "../src/index.ts";
import type { FactRow } from "./fact-row.ts";
import { findingName } from "./finding-name.ts";

type Caused = ExcursionRecord & { readonly causes?: readonly Cause[] | undefined };

/** As in "wind left uncorrected"; with the shares where there are several. */
function causeWords(causes: readonly Cause[]): string {
  if (causes.length === 0) return plain("cannot-tell");
  return causes
    .map(({ cause, share }) =>
      causes.length > 1 ? `${findingName(cause)} ${percent(share)}` : findingName(cause),
    )
    .join(", ");
}

/** `line`: what was left. Nothing for documents of earlier versions, which do not say why. */
export const causeRows = (line: string, excursions: readonly Caused[] = []): FactRow[] =>
  excursions.flatMap(({ causes, ...e }) =>
    causes === undefined
      ? []
      : [
          {
            fact: `Left ${line} at ${clockSeconds(e.trackOffUtc)}`,
            value: causeWords(causes),
            note: `track off by ${sided(e.trackErrorDeg, 0, "°")}; ${e.leadS === null ? "not corrected" : `corrected after ${duration(e.leadS)}`}; ${sided(e.worstCrossTrackNm, 2, " NM")} at the farthest`,
          },
        ],
  );
