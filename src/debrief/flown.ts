/** When an exercise was flown, as the document says it: its times, how it was found, and that it was flown again. */
import type { Match } from "../match/index.ts";
import type { Finding } from "../quantity/record.ts";
import type { Span } from "../quantity/span.ts";
import { utcText } from "../quantity/time.ts";
import type { Motion } from "../track/motion.ts";
import type { DocumentExercise } from "./document.ts";

/** When an exercise was flown: as matched, found, or where a line was fitted. */
export interface Flown {
  readonly span: Span | null;
  readonly by: Match["by"] | "fitted" | "found";
  readonly confidence: number;
  /** Where else it was flown. */
  readonly again?: readonly Span[];
  readonly asked?: number;
  readonly lastWhole?: boolean;
}

/** What the document says of every exercise, of whatever kind. */
export function told(
  title: string,
  source: DocumentExercise["source"],
  flown: Flown,
  { motion }: { readonly motion: Motion | null },
) {
  const { span, by, confidence } = flown;
  return {
    title,
    source,
    startUtc: span && motion ? utcText(motion.time[span.start]!) : null,
    endUtc: span && motion ? utcText(motion.time[span.end - 1]!) : null,
    match: span ? { by, confidence } : null,
  };
}

/** Said last of a course: when else it was flown, which is not judged. */
export function flownAsWell({ span, again = [] }: Flown, motion: Motion | null): Finding[] {
  if (!span || !motion) return [];
  return again.map(({ start, end }) => ({
    code: "flown-as-well",
    facts: { earlier: start < span.start },
    evidence: { fromUtc: utcText(motion.time[start]!), toUtc: utcText(motion.time[end - 1]!) },
  }));
}

/** Said last: that this is one of several, and when the first other one was. */
export function flownAgain(
  { span, again = [], asked = 1, lastWhole = false }: Flown,
  motion: Motion | null,
): Finding[] {
  const [first] = again;
  if (!first || !span) return [];
  const [fromUtc, toUtc] = [first.start, first.end - 1].map((row) =>
    motion ? utcText(motion.time[row]!) : null,
  );
  const evidence = { fromUtc: fromUtc!, toUtc: toUtc! };
  const last = again.every(({ start }) => start < span.end);
  return [{ code: "flown-again", facts: { times: again.length + asked, asked, last, lastWhole }, evidence }];
}
