/** Why a verdict could not be given, in words. */
import type { Verdict } from "../../debrief/document.ts";
import { HEIGHT_UNIT } from "./height-unit.ts";
import { seconds } from "./measured.ts";
import { clockSeconds } from "./number.ts";
import { PRESSURE_HEIGHTS } from "./pressure-heights.ts";

const REASONS: Readonly<Record<string, string>> = {
  "doubt-straddles-limit": "the doubt reaches over the limit",
  "log-silent": "between two points of the log it may have passed the limit",
  "passed-in-silence": "the log is silent there, and the height is known no better",
  "leg-end-silent": "the log is silent where the leg began or ended, and its length is known no better",
  "climb-without-height": "it ended higher than it began, and the brief gives no altitude to hold",
  "descent-without-height": "it ended lower than it began, and the brief gives no altitude to hold",
  "climb-all-along":
    "it was climbed all along toward the briefed altitude and never there, so whether it would have been held is not seen",
  "descent-all-along":
    "it was descended all along toward the briefed altitude and never there, so whether it would have been held is not seen",
  "level-elsewhere-before":
    "it was flown level at another height for a while before the briefed altitude was come to, and a log does not show whether that was cleared",
  "log-ends": "the log ends before it, in flight",
  "log-ends-on-final": "the log ends in flight before the final did, and what followed is not known",
  "log-ends-within": "the log ends in flight before all of it was flown, and what followed is not known",
  "log-begins-within": "the log begins in flight after its beginning, and what came before is not known",
  "left-early": "it was left before its end, and so only a part of it is judged",
  "joined-late": "it was joined after more than half of it, and so only a part of it was flown",
  "turned-aside":
    "it was left by a turn after which the track did not come back, and a log does not show whether that was meant",
  "never-established": "the course was never established on, and what was judged is no flying along it",
  "final-never-joined": "the final was never established on, and what was judged is no flying along it",
  "lap-never-established":
    "a lap was flown without ever being established on the inbound course, which is no keeping of it",
  "log-begins": "the log begins after it, in flight",
  "log-ends-at-fix": "the log ends in flight, soon after the fix was passed",
  "log-begins-at-fix": "the log begins in flight, soon before the fix was passed",
  "turned-at-fix": "no lap was made out, though the fix was passed twice with turns between",
  "log-silent-there": "the log is silent where it may have been flown",
  "points-left-out": "much of the log could not be used, and it may have been flown then",
  "part-of-window":
    "only a part of the time that the brief gives is judged, and before it, along the course, the needle was past the limit",
  "drifted-before-established":
    "before that it was within half scale and nearly along the course and then went past the limit, and a log does not show whether that was a drift or the way to an intercept",
  "height-by-gps": "a GPS height is too far from an altimeter’s to tell",
  "height-is-pressure": PRESSURE_HEIGHTS,
  "brief-excursion": "the standard lets brief excursions be and does not say how long they last",
  "holding-rules-not-named":
    "the standard does not say whose holding rules count (holding: us or icao), and so which leg is timed",
  "runway-length-assumed": "the length of the runway is not known, and with it the width of the needle",
  "no-height": "the log has no heights",
  "height-unit": HEIGHT_UNIT,
  "left-for-landing":
    "a landing goes below it by right, and a log does not show when the runway came in sight",
  "maybe-touched": "over the runway a touch is not ruled out, and a landing goes below it by right",
  "no-missed-approach":
    "no missed approach was flown; with the runway in sight a landing goes below it by right",
  "turned-away": "no missed approach was flown; the final was left by a turn away",
  "turned-away-above": "the final was left by a turn away above it",
  "turned-away-before": "the final was left by a turn away before it",
  "climbed-above": "the missed approach was begun above it, and it was never flown down to",
  "climbed-before": "the missed approach was begun before it",
  "fix-not-passed": "the final fix was not passed on the way in",
  "gate-not-passed": "the log does not pass that height on the way down the final",
  "minimum-not-reached":
    "the final was left above it, and the height is not known well enough to say how far",
  "crossing-not-known": "the log does not show the height there",
  "wind-not-known": "the wind is not known here, and with it no heading or airspeed",
  "log-begins-in-hold": "the log begins in flight, in the hold or close before it",
  "entry-not-clear": "what entry was flown is not clear",
  "no-whole-leg": "no leg was flown to its end",
  "no-racetrack": "in this wind no leg outbound makes an inbound one of that time",
  "course-not-flown-inbound": "the inbound course was never flown to the fix",
  "wrong-way": "the turns were flown to the other side",
  "no-times": "the log has no times",
  "joined-near-station":
    "the inbound course was joined within a mile of the station, where a needle is not judged",
  "near-station": "it was within a mile of the station then, where a needle is not judged",
  "all-near-station": "all of it was flown within a mile of the station",
  "fault-in-criterion": "this criterion failed; that is a fault of the program",
};

/** Why it cannot be told, without capital and full stop; empty for other verdicts. */
export function verdictReason({ reason, fault, silentS, worstUtc }: Verdict): string {
  if (reason === null) return "";
  if (reason === "log-silent" && silentS != null)
    return `the log is silent for ${seconds(silentS)}, and it may have passed the limit then`;
  if (reason === "doubt-straddles-limit" && worstUtc)
    return `${REASONS[reason]}, at ${clockSeconds(worstUtc)} UTC`;
  const words = REASONS[reason] ?? reason.replaceAll("-", " ");
  return fault ? `${words} (${fault})` : words;
}
