/** Findings of arcs as sentences. */

import type { Finding } from "../../debrief/document.ts";
import { directionFact, type FindingWords, given, num } from "./fact.ts";
import { capital, clock, degreesDoubt, duration, offCourse, percent } from "./number.ts";
import { TRACK_OFF_WORDS } from "./track-off.ts";

const miles = (nm: unknown): string => `${Math.abs(num(nm)).toFixed(2)} NM`;
const from = ({ evidence }: Finding): string =>
  evidence.fromUtc ? `From ${clock(evidence.fromUtc)} UTC ` : "";
const rate = (degreesPerSecond: unknown): string => `${num(degreesPerSecond).toFixed(1)}° a second`;

/** As in "0.42 NM outside"; "on the arc" where it rounds to nothing. */
export function offArc(nm: number): string {
  const size = Math.abs(nm).toFixed(2);
  return Number(size) === 0 ? "on the arc" : `${size} NM ${nm > 0 ? "outside" : "inside"}`;
}

/** As in "11° toward the station"; outward positive. */
export function toStation(outDeg: number): string {
  const size = Math.abs(Math.round(outDeg));
  if (size === 0) return "0°";
  return `${size}° ${outDeg < 0 ? "toward the station" : "away from the station"}`;
}

/** As in "20 kt away from the station"; outward positive. */
export const windFromStation = (outKt: number): string =>
  Math.round(outKt) === 0
    ? "under 1 kt from or to the station"
    : `${Math.abs(Math.round(outKt))} kt ${outKt >= 0 ? "away from" : "toward"} the station`;

function drifted(f: Finding["facts"], finding: Finding): string {
  const grew = f.side === "outside" ? "grew" : "shrank";
  const told = `${from(finding)}the distance ${grew} by ${miles(f.byNm)} in ${duration(num(f.seconds))}, ${num(f.nmPerMin).toFixed(2)} NM a minute`;
  const wind = given(f.windNmPerMin);
  if (wind === null) return `${capital(told)}.`;
  const way = wind >= 0 ? "away from the station" : "toward the station";
  return `${capital(told)}; the wind alone makes ${Math.abs(wind).toFixed(2)} NM a minute ${way}.`;
}

const needed = (f: Finding["facts"]): string =>
  `${toStation(num(f.neededOutDeg))} was needed ${degreesDoubt(num(f.doubt95Deg))} in a wind of ${windFromStation(num(f.windOutKt))}`;

function turnedOff(f: Finding["facts"]): string {
  const lead = num(f.leadDeg);
  const where =
    lead >= 0.05 ? `${lead.toFixed(1)}° before its radial` : `${Math.abs(lead).toFixed(1)}° past its radial`;
  const wind = f.windUsed === true ? " in this wind" : "";
  return `The turn off the arc came ${f.late === true ? "late" : "early"}: it began ${where}, on ${directionFact(f, "radial")}, where ${num(f.neededDeg).toFixed(1)}° before it was needed at ${rate(f.rateDegS)}${wind}. It ended ${offCourse(num(f.rollOutNm))} along the radial.`;
}

export const ARC_WORDS: Readonly<Record<string, FindingWords>> = {
  ...TRACK_OFF_WORDS,
  "arc-within": (f) =>
    `Farthest ${offArc(num(f.worstNm))}, on radial ${directionFact(f, "radial")}; within half a mile of the arc ${percent(num(f.withinHalfNm))} of the ${f.shareOf ?? "time"}.`,
  "arc-never-joined": (f) =>
    `Never joined the arc, which takes the distance within 1 NM of it and the track within 20° of the tangent for 10 seconds. Farthest ${offArc(num(f.worstNm))}.${given(f.heldNm) === null ? "" : ` ${num(f.heldNm).toFixed(1)} NM from the station was held instead: is the radius of the brief right?`}`,
  "arc-drifted": drifted,
  "arc-wind-uncorrected": (f) =>
    `The wind was left uncorrected: the heading was within ${Math.max(1, Math.ceil(Math.abs(num(f.flownOutDeg))))}° of the tangent, and ${needed(f)}.`,
  "arc-under-corrected": (f) =>
    `Too little wind correction: ${toStation(num(f.flownOutDeg))} was flown, ${needed(f)}.`,
  "arc-over-corrected": (f) =>
    `Too much wind correction: ${toStation(num(f.flownOutDeg))} was flown, ${needed(f)}.`,
  "arc-corrected-wrong-way": (f) =>
    `The heading was turned downwind: ${toStation(num(f.flownOutDeg))} was flown, ${needed(f)}.`,
  "arc-heading-off": (f) =>
    `The heading stood off, and the wind does not explain it${given(f.neededOutDeg) === null ? "" : `: ${toStation(num(f.flownOutDeg))} was flown, ${needed(f)}`}.`,
  "arc-cannot-tell": (f) =>
    `Why the track left the tangent cannot be told: ${given(f.neededOutDeg) === null ? "the wind here is not known" : `${needed(f)}, which may be nothing or enough to explain it`}.`,
  "arc-turned-onto": (f) => {
    const began =
      num(f.leadNm) >= 0.005 ? `${miles(f.leadNm)} before the arc` : `${miles(f.leadNm)} past the arc`;
    return `The turn onto the arc came ${f.late === true ? "late" : "early"}: it began ${began}, where ${miles(f.neededNm)} was needed at ${rate(f.rateDegS)}. It ended ${offArc(num(f.rollOutNm))}.`;
  },
  "arc-turned-off": turnedOff,
  "arc-cut-short": (f) =>
    `The arc was left ${num(f.leadDeg).toFixed(0)}° before its last radial, on ${directionFact(f, "radial")}, after ${percent(num(f.share))} of it.`,
};
