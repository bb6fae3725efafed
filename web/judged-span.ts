/** Which part of an exercise is judged, in words, from the codes that say where it begins and ends. */
import { type CourseFacts, plain } from "../src/index.ts";

const BEGINS: Readonly<Record<string, string>> = {
  established: "once established",
  "start-of-match": "from its beginning",
  "near-station": "from a mile past the station",
  joined: "once it had joined",
  "final-fix": "from the final fix",
};

const ENDS: Readonly<Record<string, string>> = {
  "end-of-match": "to its end",
  "near-station": "to a mile before the station",
  "turn-off": "to the turn off it",
  "end-of-arc": "to its last radial",
  minimum: "to the minimum",
  "missed-approach": "to the missed approach",
  threshold: "to the threshold",
  "log-silent": "to where the log falls silent",
  "broke-off": "to where it was left",
  "left-early": "to where it was left",
  "log-ends": "to where the log ends",
};

type Part = CourseFacts["part"];

/** As in "once established, to a mile before the station"; an end that is not its own is named. */
export function judgedSpan({ begins, ends }: { begins: string; ends: string }, part?: Part): string {
  const from = part?.before?.why === "log-begins" ? "from where the log begins" : BEGINS[begins];
  const to = part?.after ? ENDS[part.after.why] : ENDS[ends];
  return `${from ?? plain(begins)}, ${to ?? plain(ends)}`;
}
