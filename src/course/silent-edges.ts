/** Where the log is silent just before or just after what is judged, so that more of the exercise may have been flown unseen. */
import type { CourseExercise } from "../brief/brief.ts";
import type { Finding } from "../quantity/record.ts";
import type { Span } from "../quantity/span.ts";
import { utcText } from "../quantity/time.ts";
import type { NauticalMiles, Seconds } from "../quantity/units.ts";
import type { SilentEdge } from "../quantity/unseen.ts";
import { NEAR_STATION } from "../standard/needle.ts";
import type { Motion } from "../track/motion.ts";
import type { Rows } from "./path.ts";

/** A silence beside the judged rows, and how long of it the exercise may have gone on. */
export interface EdgeOfSilence extends SilentEdge {
  readonly fromMs: number;
  readonly silentS: Seconds;
}

type EdgeRows = Pick<Rows, "pathStart" | "groundSpeedKt">;

/** Gaps that touch the judged rows. `room`: what of the exercise there still was to fly, before them and after them, NM. */
export function silentEdges(
  rows: EdgeRows,
  { start, end }: Span,
  motion: Motion | null,
  room: { readonly before: NauticalMiles; readonly after: NauticalMiles },
): EdgeOfSilence[] {
  if (!motion) return [];
  const edge = (row: number, after: number, miles: NauticalMiles): EdgeOfSilence[] => {
    const next = rows.pathStart + after;
    if (next <= 0 || !motion.spans.some((s) => s.start === next)) return [];
    const fromMs = motion.time[next - 1]!;
    const silentS = (motion.time[next]! - fromMs) / 1000;
    const seconds = Math.min(silentS, (miles / Math.max(1, rows.groundSpeedKt[row]!)) * 3600);
    return seconds > 0 ? [{ row, seconds, fromMs, silentS }] : [];
  };
  return [...edge(start, start, room.before), ...edge(end - 1, end, room.after)];
}

/** A course to a fix ends there, one from a fix begins there; the mile about a station is not judged. */
export function roomOf({ form, scale }: CourseExercise, rows: Rows, { start, end }: Span) {
  const near = scale.kind === "angular" ? NEAR_STATION : 0;
  const toFix = (row: number) => (rows.pastFix[row] ? 0 : Math.max(0, rows.distanceToFixNm[row]! - near));
  return {
    before: form === "to" ? Number.POSITIVE_INFINITY : form === "from" ? toFix(start) : rows.alongNm[start]!,
    after: form === "from" ? Number.POSITIVE_INFINITY : toFix(end - 1),
  };
}

export function edgeFindings(edges: readonly EdgeOfSilence[]): Finding[] {
  return edges.map(({ fromMs, silentS }) => ({
    code: "gap-beside-exercise",
    facts: { silentS },
    evidence: { fromUtc: utcText(fromMs), toUtc: utcText(fromMs + silentS * 1000) },
  }));
}
