/** What of the facts of a hold its drawings share: how laps are told apart, which one missed most. */
import type { HoldFacts } from "./contract.ts";

/** Classes of laps in turn; the fourth is drawn as the first, and its number tells it. */
const LAP_CLASSES = ["lap-a", "lap-b", "lap-c"];
export const lapClass = (index: number): string => LAP_CLASSES[index % LAP_CLASSES.length];

/** Index of the lap that rolled out farthest off the course; -1 where none rolled out. */
export function worstRollOut({ laps }: Pick<HoldFacts, "laps">): number {
  let worst = -1;
  laps.forEach(({ rollOut }, i) => {
    const most = worst < 0 ? -1 : Math.abs(laps[worst].rollOut?.acrossNm ?? 0);
    if (rollOut && Math.abs(rollOut.acrossNm) > most) worst = i;
  });
  return worst;
}
