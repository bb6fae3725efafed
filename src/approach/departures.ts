/** What went wrong on a final: how it was joined, whether the needle was chased, and each excursion with its causes. */
import type { Span } from "../quantity/span.ts";
import type { NauticalMiles, Share } from "../quantity/units.ts";
import { CHASED } from "../standard/tracking.ts";
import {
  type CausedExcursion,
  type Correction,
  causesOf,
  countReversals,
  findExcursions,
  findJoining,
  type Joining,
  measureIntercept,
  type Reversals,
} from "../track/index.ts";
import type { ApproachFacts } from "./facts.ts";
import { joinable } from "./joinable.ts";
import type { ApproachRows } from "./rows.ts";
import type { Segments } from "./segments.ts";

/** On a final the needle tells of less than on a course. Tuned: thrice what wander of 2 degrees over 20 s makes at 90 kt. */
const TOLD_LEAST: NauticalMiles = 0.03;
/** The turn onto it was late or early where it ended so much of the scale off. Common practice, no source: the needle tells from a quarter. */
const MISTURNED: Share = 0.25;
/** ... and by this at least. Tuned: turns timed to 3 s end within it. */
const MISTURNED_LEAST: NauticalMiles = 0.12;
/** A turn that ended with the needle off its stop ended near the final: its scale is narrow, and a few seconds are half of it. */
const NEAR: Share = 1;

export interface Departures {
  readonly joining: Joining | null;
  /** The reversals where they are called chasing. */
  readonly chased: Reversals | null;
  readonly excursions: readonly CausedExcursion[];
}

const isChase = ({ count, perMinute }: Reversals): boolean =>
  count >= CHASED.count && perMinute >= CHASED.perMinute;

/** `correctionOver`: heading against the final over some rows; null where the wind is not known. */
export function findDepartures(
  rows: ApproachRows,
  { established, final }: Pick<Segments, "established" | "final">,
  joinedFrom: ApproachFacts["joinedFrom"],
  correctionOver: (span: Span) => Correction | null,
): Departures {
  const { start, end } = final;
  // never established before the end of what is judged, it is judged as far as it was flown
  const joined = established !== null && established < end - 1 ? established : null;
  // the base leg of a circuit is no cut of the final
  const joining =
    joinedFrom === "circuit"
      ? null
      : findJoining(
          joinable(rows),
          measureIntercept(rows, joined),
          (row) => Math.max(MISTURNED_LEAST, MISTURNED * rows.fullScaleNm[row]!),
          NEAR,
        );
  // a track that stood off from the roll-out on is told from there, and who swings too much to be established is seen to
  let from = joined ?? start;
  while (joining && from > 0 && rows.timeMs[from - 1]! >= joining.time) from--;
  const along = { start: from, end };
  const chased =
    [final, along].map((span) => countReversals(rows, span)).find((found) => found && isChase(found)) ?? null;
  const found = findExcursions(rows, along, { toldLeast: TOLD_LEAST });
  // what was farthest beside a station is not judged
  const judged = found.filter(({ worst }) => !Number.isNaN(rows.judgedNeedle[worst]!));
  const excursions = judged.map((e) => {
    const causes = causesOf(e, { rows, joining, chased, correction: correctionOver(e.drifting) });
    return { ...e, record: { ...e.record, causes } };
  });
  return { joining, chased, excursions };
}
