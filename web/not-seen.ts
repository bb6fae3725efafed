/** What a log leaves open, for tables of facts: how far it may have been where the log is silent, and what it cannot tell at all. */
import { type CourseFacts, capital, duration, plain } from "../src/index.ts";
import type { FactRow } from "./fact-row.ts";

type Unseen = CourseFacts["needle"]["unseen"];

/** As in "; up to 0.62 NM where the log is silent for 34 s"; nothing where no more than was seen. */
export function maybeUnseen(unseen: Unseen, amount: (most: number) => string, way = "up to"): string {
  if (!unseen) return "";
  const silence =
    unseen.seconds === null ? "between two points" : `in ${duration(unseen.seconds)} of silence`;
  return `; maybe ${way} ${amount(unseen.most)} ${silence}`;
}

/** Facts whose name in the document says less than a reader needs. */
const FACTS: Readonly<Record<string, string>> = {
  turnIn: "The turn onto the arc",
  turnOff: "The turn off the arc",
  altitude: "Height by the altimeter",
  crossing: "Height at the point",
  began: "Where it was begun",
  constant: "Where to begin",
  height: "What the heights count from",
  segments: "Parts of the final",
  finalFixPassage: "Height over the final fix",
  missedTrack: "Track of the missed approach",
  speedLimit: "Holding speed",
};

const REASONS: Readonly<Record<string, string>> = {
  "no-times": "the log has no times",
  "turn-in-silence": "the log is silent in it",
  "no-height": "the log has no heights",
  "height-unit": "the heights of the log seem to be in another unit",
  "gps-height": "the heights are by GPS",
  "height-is-pressure": "the heights are on 1013.25 hPa, without the setting of the day",
  "height-not-anchored": "the log does not say it, and shows no roll on this field",
  "elevation-not-known": "the elevation of the runway is not known",
  "wind-not-known": "the wind is not known here",
  "wind-along-only": "only the wind along the track is known",
  "all-near-station": "all of it was flown within a mile of the station",
  "doubt-holds-limit": "the doubt reaches over the limit",
  "runway-length-assumed": "the length of the runway is not known: a usual one is taken",
  "no-missed-course": "the brief gives it no course",
  "fix-not-passed": "the final fix was not passed on the way in",
};

/** The last rows of a table: what could not be told, and why. */
export const untoldRows = (cannotTell: CourseFacts["cannotTell"]): FactRow[] =>
  cannotTell.map(({ fact, reason }) => ({
    fact: FACTS[fact] ?? capital(plain(fact)),
    value: "cannot tell",
    note: REASONS[reason] ?? plain(reason),
  }));
