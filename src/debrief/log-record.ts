/** What the log was and what was left out of it, as it stands in the document. */
import type { ImportedLog } from "../import/imported.ts";
import { droppedByCode } from "../import/index.ts";
import type { Issue } from "../quantity/issue.ts";
import { utcText } from "../quantity/time.ts";
import { type CleanedTrack, pathLength } from "../track/index.ts";
import type { Track } from "../track/track.ts";
import type { ChosenFlight } from "./choose-flight.ts";
import type { DebriefDocument } from "./document.ts";
import { traceOf } from "./log-trace.ts";

/** Median and longest of the times between used points, s, and when the longest began, ms; null where fewer than two have times. */
function intervals(track: Track): { median: number; longest: number; longestFrom: number } | null {
  const steps: number[] = [];
  let [longest, longestFrom] = [-1, 0];
  for (let i = 1; i < track.length; i++) {
    const step = (track.time[i]! - track.time[i - 1]!) / 1000;
    if (!Number.isFinite(step)) continue;
    steps.push(step);
    if (step > longest) [longest, longestFrom] = [step, track.time[i - 1]!];
  }
  if (steps.length === 0) return null;
  steps.sort((a, b) => a - b);
  return { median: steps[steps.length >> 1]!, longest, longestFrom };
}

export function logRecord(
  log: ImportedLog,
  cleaned: CleanedTrack,
  chosen: ChosenFlight,
  timed: boolean,
  doubts: readonly Issue[],
): DebriefDocument["log"] {
  const { track } = chosen;
  const between = timed ? intervals(track) : null;
  const first = track.time[0]!;
  const last = track.time[track.length - 1]!;
  return {
    name: track.name,
    file: log.file,
    kind: track.kind,
    timed,
    startUtc: timed ? utcText(first) : null,
    endUtc: timed ? utcText(last) : null,
    points: log.pointsSeen,
    used: track.length,
    dropped: { ...droppedByCode(log.issues), ...cleaned.dropped, ...chosen.dropped },
    medianIntervalS: between?.median ?? null,
    longestGapS: between?.longest ?? null,
    longestGapStartUtc: between && utcText(between.longestFrom),
    distanceNm: pathLength(track),
    trace: traceOf(track, timed),
    flights: chosen.flights,
    flight: chosen.index,
    issues: [...doubts, ...log.issues, ...cleaned.issues, ...chosen.issues].map((issue) => ({
      code: issue.code,
      severity: issue.severity,
      where: { file: log.file, ...issue.where },
      facts: { ...issue.facts },
    })),
  };
}
