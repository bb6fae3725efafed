/** What a reader must know of a log before believing the rest: no flight in it, silent for long, too few points, or a brief or log that cannot be true. */
import type { DebriefDocument } from "../../debrief/document.ts";
import { issueSentence } from "./issue.ts";
import { clock, count, day, duration } from "./number.ts";
import { TOP_WORDS } from "./top-words.ts";

/** Fewer points draw no flight. Own choice. */
const FEWEST_POINTS = 10;
/** Who never came farther from the start was taxiing, or stood: no circuit is so small. Common practice, no source. */
const AT_HOME_NM = 0.5;
/** A silence as long as the one that may part two flights. */
const LONG_SILENCE_S = 600;
/** A turn of 3° a second goes 30° in this time, s: its beginning and end blur. Own choice. */
const SPARSE_S = 10;
/** And 45° in this: neither a turn's shape nor the airspeed in it is seen. Own choice. */
const TURNS_UNSEEN_S = 15;

const STANDARD_TURN_DEG_S = 3;

/** Sentences for the top of a sheet, most telling first; none for a log of a point a few seconds and a brief that fits it. */
export function logCautions({ log, brief }: DebriefDocument): string[] {
  const doubted = [...(brief?.issues ?? []), ...log.issues].filter(({ code }) => code in TOP_WORDS);
  return [noFlight(log), ...doubted.map(issueSentence), silence(log), sparse(log)].filter(
    (sentence) => sentence !== "",
  );
}

type Log = DebriefDocument["log"];

/** That there is no flight in a log, and why; empty where there is one. */
export function noFlight({ used, flights, flight }: Log): string {
  if (used < FEWEST_POINTS) {
    return `There is no flight in this log: only ${count(used)} of its points can be used. Open the log of the whole flight.`;
  }
  const farthest = flights[flight]?.farthestNm ?? 0;
  if (farthest >= AT_HOME_NM) return "";
  const where =
    farthest < 0.05
      ? "all its points lie in one place"
      : `it never comes farther than ${farthest.toFixed(1)} NM from where it begins`;
  return `There is no flight in this log: ${where}. Open the log of the flight itself.`;
}

function silence({ longestGapS, longestGapStartUtc }: Log): string {
  if (longestGapS === null || longestGapStartUtc === null || longestGapS < LONG_SILENCE_S) return "";
  return `The log is silent for ${duration(longestGapS)} from ${day(longestGapStartUtc)}, ${clock(longestGapStartUtc)} UTC. Nothing is known of that time, and the straight way across it is no part of the flight.`;
}

function sparse({ medianIntervalS }: Log): string {
  if (medianIntervalS === null || medianIntervalS < SPARSE_S) return "";
  return `The log has a point only every ${Math.round(medianIntervalS)} seconds. What happened in between is not known: no time here is finer than that, and the worst was perhaps worse. Record a point a second.`;
}

/** Why a log of so few points tells no wind; empty where the points are close enough for turns to be seen. */
export function tooSparseForWind({ medianIntervalS }: Log): string {
  if (medianIntervalS === null || medianIntervalS < TURNS_UNSEEN_S) return "";
  const s = Math.round(medianIntervalS);
  return `with ${s} seconds between its points the turns are not seen (a turn of ${STANDARD_TURN_DEG_S}° a second goes ${Math.min(360, s * STANDARD_TURN_DEG_S)}° in that time). A log with a point a second would have told more.`;
}
