/** The lines under the title of a sheet. */
import type { DebriefDocument } from "../src/index.ts";
import { clock, count, day, duration, secondsBetween, shownName } from "../src/index.ts";

type Log = DebriefDocument["log"];

/** As in "17 October 2026, 09:31 to 10:36 UTC, 1 h 05 min, 96 NM". */
export function timeWords({ startUtc, endUtc, distanceNm }: Log): string {
  const distance = `${Math.round(distanceNm)} NM`;
  if (!startUtc || !endUtc)
    return `${distance}; the log gives no times, so nothing of time or speed can be told`;
  const span = `${clock(startUtc)} to ${clock(endUtc)} UTC`;
  return `${day(startUtc)}, ${span}, ${duration(secondsBetween(startUtc, endUtc))}, ${distance}`;
}

/** As in "Pilot N. N., aircraft N123"; empty where nobody said it. */
export const flownByWords = ({ pilot, aircraft }: NonNullable<DebriefDocument["flownBy"]>): string =>
  [pilot && `Pilot ${pilot}`, aircraft && `aircraft ${aircraft}`].filter(Boolean).join(", ");

export function aircraftWords({ brief, standard }: DebriefDocument): string {
  if (!brief) return "No brief: courses are fitted to what was flown and show straightness, not deviation";
  const { aircraft, file, source } = brief;
  const from =
    source === "gpx-route" ? `brief: the route in ${shownName(file)}` : `brief: ${shownName(file)}`;
  return [
    ...(aircraft ? [`Aircraft ${aircraft.tasKt} ± ${aircraft.doubtKt} kt true airspeed`] : []),
    from,
    ...(standard ? [`held against: ${standard.title}`] : []),
  ].join("; ");
}

/** As in "Log 1 s, 3,874 of 3,902 points used, longest gap 6 s." */
export function logWords({ medianIntervalS, points, used, longestGapS }: Log): string {
  const interval = medianIntervalS === null ? "Log" : `Log ${Number(medianIntervalS.toFixed(1))} s`;
  const gap = longestGapS === null ? "" : `, longest gap ${duration(longestGapS)}`;
  return `${interval}, ${count(used)} of ${count(points)} points used${gap}.`;
}
