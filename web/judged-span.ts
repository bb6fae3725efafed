/** Which part of an exercise is judged, in words, from the codes that say where it begins and ends. */
import { plain } from "../src/index.ts";

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
};

/** As in "once established, to a mile before the station". */
export const judgedSpan = ({ begins, ends }: { begins: string; ends: string }): string =>
  `${BEGINS[begins] ?? plain(begins)}, ${ENDS[ends] ?? plain(ends)}`;
