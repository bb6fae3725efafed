/** What is said over the stretches that are not judged, from the codes that say why. */
import type { CourseFacts, CourseSeries } from "./contract.ts";
import { abscissa, unjudged } from "./courseColumns.ts";
import type { VeilSpan } from "./plugins/veil.ts";

export function veilSpans(facts: CourseFacts, series: CourseSeries): VeilSpan[] {
  const x = abscissa(series);
  return unjudged(x, series.judged).map(({ from, to, rows }) => ({
    from,
    to,
    words: wordsFor(facts, series, rows),
  }));
}

function wordsFor(
  facts: CourseFacts,
  series: CourseSeries,
  [first, last]: readonly [number, number],
): string[] {
  const before = first === 0;
  const after = last === series.judged.length - 1;
  const why = before ? facts.judged.begins : after ? facts.judged.ends : "";
  if (why === "near-station") {
    const edge = series.distanceToFixNm[before ? last : first];
    // Named as the mile only where the edge is at one mile.
    if (Math.abs(edge - 1) < 0.1) return [before ? "first mile," : "last mile,", "not judged"];
    return ["near the fix,", "not judged"];
  }
  if (why === "established") return ["before joining,", "not judged"];
  return ["not judged"];
}
