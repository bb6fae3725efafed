/** What the list shows of a debrief, taken from its document once. */
import type { DebriefDocument } from "../../src/index.ts";
import type { Summary } from "./schema.ts";

function counted(words: readonly string[]): Record<string, number> {
  const counts: Record<string, number> = {};
  for (const word of words) counts[word] = (counts[word] ?? 0) + 1;
  return counts;
}

export const summaryOf = ({ log, brief, wind, exercises }: DebriefDocument): Summary => ({
  title: brief?.title || log.name,
  startUtc: log.startUtc,
  endUtc: log.endUtc,
  flight: log.flight,
  wind,
  exercises: counted(exercises.map(({ kind }) => kind)),
  verdicts: counted(exercises.flatMap((exercise) => exercise.verdicts.map(({ verdict }) => verdict))),
  judged: exercises.map(({ title, verdicts }) => ({
    title,
    verdicts: Object.fromEntries(verdicts.map(({ criterion, verdict }) => [criterion, verdict])),
  })),
  fixes: brief?.fixes?.map(({ ident }) => ident) ?? [],
});
