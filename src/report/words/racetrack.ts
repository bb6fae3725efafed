/** The answer for the next hold in words: the law, the two legs, what the rules of thumb would have come to. */
import type { AskedHold, AskedRacetrack, RacetrackAnswer } from "../../debrief/document.ts";
import { outboundClock } from "../../quantity/outbound-clock.ts";
import { clockFrom, multiple, times } from "./hold-finding.ts";
import {
  capital,
  count,
  degreesToSide,
  duration,
  magneticDirection,
  offCourse,
  plusMinus,
  trueDirection,
} from "./number.ts";

export interface RacetrackWords {
  /** What was asked, with the reference of its directions. */
  readonly asked: string;
  /** The law for this wind, with what speaks against flying it; or why nothing closes. */
  readonly law: string;
  /** The legs as flown, by name. */
  readonly legs: readonly (readonly [name: string, text: string])[];
  readonly rules: readonly string[];
  readonly stillAir: string;
  /** Doubts and limits. */
  readonly notes: readonly string[];
}

/** As in "9° left of the course". */
const correctionWords = (degrees: number, of: string): string =>
  Math.round(degrees) === 0 ? "no correction" : `${degreesToSide(degrees)} of the ${of}`;

const seconds = (s: number): string => `${Math.round(s)} s`;

/** "1 min", "90 s", "4 NM". */
const legLength = (leg: AskedHold["leg"]): string =>
  leg.by === "distance" ? `${leg.distance} NM` : duration(leg.seconds);

const NONE = {
  "wind-too-strong":
    "No solution: no heading holds the inbound course in this wind, or no way is made on it.",
  "does-not-close":
    "No solution with this leg: while the aircraft turns, the wind carries it farther than the outbound leg can undo. A longer leg may close.",
} as const;

function referenceWords({ reference, compassDeg }: AskedHold): string {
  const one = `Directions are ${reference}, the wind’s too`;
  if (compassDeg === 0) return `${one}.`;
  return `${one}; the course is by the station’s declination, headings and the wind are by the compass, which reads ${degreesApart(compassDeg)} than it.`;
}

/** As in "2.3° less". */
const degreesApart = (degrees: number): string =>
  `${Math.abs(degrees).toFixed(1)}° ${degrees < 0 ? "less" : "more"}`;

function askedWords(asked: AskedHold, direction: (degrees: number) => string): string {
  const { leg, timing, altitudeFt, wind95Kt, windKt } = asked;
  const doubt = wind95Kt === null ? "" : ` (± ${wind95Kt} kt)`;
  const wind = windKt === 0 ? "calm" : `wind from ${direction(asked.windFromDeg)} at ${windKt} kt${doubt}`;
  const which = timing === "us" ? "inbound, by US timing" : "outbound, by ICAO timing";
  const length =
    leg.by === "distance"
      ? `outbound leg ending ${legLength(leg)} from the fix`
      : `${legLength(leg)} ${which}${asked.legGiven ? "" : ", as the standard has it"}`;
  const height = altitudeFt === null ? "" : `, ${count(altitudeFt)} ft`;
  return `Inbound course ${direction(asked.inboundDeg)}, ${asked.turns} turns, true airspeed ${asked.trueAirspeedKt} kt${height}; ${wind}; ${length}. ${referenceWords(asked)}`;
}

/** Said with the law, not under it: nobody should fly the one without the other. */
function hardlyFlyable({ solved }: RacetrackAnswer): string {
  const flags = "none" in solved ? [] : solved.flags;
  if (flags.includes("correction-over-45"))
    return " That is over 45° of correction, and hardly flyable as it stands; ask for a longer leg.";
  if (flags.includes("outbound-outside-15-to-180-s"))
    return " That is outside 15 to 180 s, and hardly flyable as it stands.";
  return "";
}

function law({ solved, doubt, asked }: RacetrackAnswer): string {
  if ("none" in solved && solved.none === "inbound-too-short")
    return `No solution with this leg: the wind carries the turns alone so far out that the inbound leg takes ${seconds(solved.leastInboundS)} without any outbound leg. A longer leg closes.`;
  if ("none" in solved)
    return asked.windKt >= asked.trueAirspeedKt
      ? `No solution: a wind of ${asked.windKt} kt is no weaker than the true airspeed, ${asked.trueAirspeedKt} kt.`
      : NONE[solved.none];
  const { seconds: shown, begins } = outboundClock(solved);
  const out = seconds(shown);
  const time95 = doubt ? ` (${plusMinus(doubt.outbound95S, 0, " s")})` : "";
  if (asked.windKt === 0) return `In still air: no correction, ${out} outbound ${clockFrom(begins)}.`;
  if (solved.factor === null) {
    const { outboundCorrectionDeg: correction } = solved;
    const outbound =
      Math.round(correction) === 0 ? "none outbound," : `outbound ${degreesToSide(correction)} for`;
    return `This wind asks for next to no inbound correction, ${outbound} ${out}${time95} ${clockFrom(begins)}.`;
  }
  const factor95 =
    doubt?.factor95 !== null && doubt?.factor95 !== undefined ? ` (${plusMinus(doubt.factor95, 1)})` : "";
  return `This wind asks for ${times(solved.factor)}${factor95} the inbound correction outbound, ${out}${time95} ${clockFrom(begins)}.`;
}

function legs(racetrack: AskedRacetrack, direction: (degrees: number) => string): [string, string][] {
  const clock = outboundClock(racetrack);
  const end = `${Math.abs(racetrack.outboundEndAlongNm).toFixed(1)} NM before and ${Math.abs(racetrack.outboundEndAcrossNm).toFixed(1)} NM beside the fix`;
  return [
    [
      "Inbound",
      `heading ${direction(racetrack.inboundHeadingDeg)}, ${correctionWords(racetrack.inboundCorrectionDeg, "course")}, ${seconds(racetrack.inboundS)}, ${racetrack.inboundNm.toFixed(1)} NM`,
    ],
    [
      "Outbound",
      `heading ${direction(racetrack.outboundHeadingDeg)}, ${correctionWords(racetrack.outboundCorrectionDeg, "reciprocal")}, ${seconds(racetrack.outboundS)} between the turns`,
    ],
    ["Clock", `${seconds(clock.seconds)} outbound ${clockFrom(clock.begins)}; the leg ends ${end}`],
    [
      "Turns",
      `${racetrack.turnRateDegS.toFixed(1)}°/s, bank ${Math.round(racetrack.bankDeg)}°, radius ${racetrack.turnRadiusNm.toFixed(2)} NM; a lap takes ${duration(racetrack.lapS)}`,
    ],
  ];
}

/** Where hardly any correction is needed inbound, all multiples of it are the same: told once. */
function rules({ rules: all }: RacetrackAnswer, direction: (degrees: number) => string): string[] {
  const same = new Set(all.map((r) => Math.round(r.outboundHeadingDeg))).size === 1;
  return (same ? all.slice(0, 1) : all).map(({ factor, outboundHeadingDeg, outboundS, missNm, inboundS }) => {
    const lead = same ? "Without a correction" : `${capital(multiple(factor))} the inbound correction`;
    const then = inboundS === null ? ", past the fix already" : `, then ${seconds(inboundS)} to the fix`;
    return `${lead} for ${seconds(outboundS)}, heading ${direction(outboundHeadingDeg)}: rolls out ${offCourse(missNm)}${then}.`;
  });
}

function notes({ asked, solved, doubt, mostIndicatedKt }: RacetrackAnswer): string[] {
  return [
    ...(!("none" in solved) && asked.wind95Kt !== null && doubt === null
      ? ["The doubt of the wind reaches winds without a solution."]
      : []),
    ...(mostIndicatedKt === null
      ? []
      : [
          `At ${count(asked.altitudeFt ?? 0)} ft ${asked.timing === "us" ? "the US" : "the ICAO"} standard allows ${mostIndicatedKt} kt indicated; the chart or local rules may ask for less.`,
        ]),
    "A steady wind and turns without roll-in and roll-out are assumed.",
  ];
}

export function racetrackWords(answer: RacetrackAnswer): RacetrackWords {
  const { asked, solved, stillAir } = answer;
  const direction = asked.reference === "true" ? trueDirection : magneticDirection;
  return {
    asked: askedWords(asked, direction),
    law: `${law(answer)}${hardlyFlyable(answer)}`,
    legs: "none" in solved ? [] : legs(solved, direction),
    rules: asked.windKt === 0 ? [] : rules(answer, direction),
    stillAir: `In still air: heading ${direction(stillAir.outboundHeadingDeg)} for ${seconds(stillAir.outboundS)} outbound, ${seconds(stillAir.inboundS)} inbound.`,
    notes: notes(answer),
  };
}
