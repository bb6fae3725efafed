/** That an exercise has silences of the log in it: how many, how long together, and when the longest was. */
import type { Finding } from "./record.ts";
import type { Span } from "./span.ts";
import { utcText } from "./time.ts";
import type { UtcMillis } from "./units.ts";

/** Empty where none is. `endsSilence`: whether a silence ends at a row. */
export function gapFindings(
  timeMs: ArrayLike<UtcMillis>,
  { start, end }: Span,
  endsSilence: (row: number) => boolean,
): Finding[] {
  const found: { readonly from: UtcMillis; readonly seconds: number }[] = [];
  for (let i = start + 1; i < end; i++) {
    const from = timeMs[i - 1]!;
    if (endsSilence(i)) found.push({ from, seconds: (timeMs[i]! - from) / 1000 });
  }
  if (found.length === 0) return [];
  const longest = found.reduce((a, b) => (b.seconds > a.seconds ? b : a));
  const evidence = {
    fromUtc: utcText(longest.from),
    toUtc: utcText(longest.from + longest.seconds * 1000),
  };
  return [
    {
      code: "gap-in-exercise",
      facts: {
        gaps: found.length,
        longestS: longest.seconds,
        silentS: found.reduce((sum, g) => sum + g.seconds, 0),
      },
      evidence,
    },
  ];
}
