/** How long a needle stood beyond a limit, where the facts count the time beyond just that. */
import type { Seconds, Share } from "../quantity/units.ts";

/** Shares of the judged time beyond shares of full scale; an approach does not count the quarter. */
interface Counted {
  readonly beyondQuarter?: Share;
  readonly beyondHalf: Share;
  readonly beyondThreeQuarter: Share;
  readonly beyondFull: Share;
}

export function secondsBeyond(
  limit: Share,
  needle: Counted,
  judged: { readonly seconds: Seconds | null },
): Seconds | null {
  const counted: readonly [Share, Share | undefined][] = [
    [0.25, needle.beyondQuarter],
    [0.5, needle.beyondHalf],
    [0.75, needle.beyondThreeQuarter],
    [1, needle.beyondFull],
  ];
  const [, share] = counted.find(([of]) => of === limit) ?? [];
  return share === undefined || judged.seconds === null ? null : share * judged.seconds;
}
