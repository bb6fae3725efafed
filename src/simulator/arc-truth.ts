/** The truth of an arc: its distances from joining it to the turn off it, and its wind. */
import { direction, turnFrom } from "../quantity/angle.ts";
import { METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import type { Seconds } from "../quantity/units.ts";
import type { FlownArc } from "./arc.ts";
import type { TrueColumns } from "./flight.ts";
import { means, rounded } from "./means.ts";
import { correctionOn } from "./racetrack.ts";
import type { TrueArc } from "./truth.ts";

export function trueArc(flown: FlownArc, columns: TrueColumns, utc: (t: Seconds) => string): TrueArc {
  const { step, sights } = flown;
  const off = sights.map((s) => s.distance / METRES_PER_NAUTICAL_MILE - step.radius);
  const n = Math.max(1, off.length);
  const sum = (values: readonly number[]) => values.reduce((a, b) => a + b, 0);
  const within = (limit: number) => rounded(off.filter((v) => Math.abs(v) <= limit).length / n, 3);
  const outward = step.turns === "right" ? -1 : 1;
  const whole = sights.filter((s) => s.time % 1 === 0);
  const flownOut = whole.map((s) => outward * turnFrom(s.tangent, columns.heading[s.time]!));
  const neededOut = whole.map((s) => {
    const i = s.time;
    const { trueAirspeed, airEast, airNorth } = columns;
    return outward * (correctionOn(s.tangent, trueAirspeed[i]!, airEast[i]!, airNorth[i]!) ?? 0);
  });
  const from = Math.ceil(flown.joined ?? flown.start);
  const m = means(columns, from, Math.max(from + 1, Math.floor(flown.turnOff)));
  return {
    title: step.exercise,
    station: [step.station.latitude, step.station.longitude],
    radiusNm: step.radius,
    turn: step.turns,
    startUtc: utc(flown.start),
    joinedUtc: flown.joined === null ? null : utc(flown.joined),
    turnOffUtc: utc(flown.turnOff),
    endUtc: utc(flown.end),
    turnOffRadialTrueDeg: rounded(direction(flown.turnOffRadial), 2),
    rollOutCrossTrackNm: rounded(flown.rollOutAcross, 3),
    maxDeviationNm: rounded(
      off.reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a), 0),
      3,
    ),
    meanDeviationNm: rounded(sum(off) / n, 3),
    rmsDeviationNm: rounded(Math.sqrt(sum(off.map((v) => v * v)) / n), 3),
    within: [within(0.25), within(0.5), within(1)],
    flownCorrectionOutDeg: rounded(sum(flownOut) / Math.max(1, flownOut.length), 1),
    neededCorrectionOutDeg: rounded(sum(neededOut) / Math.max(1, neededOut.length), 1),
    windFromTrueDeg: m.from,
    windKt: m.speed,
    tasKt: m.tas,
  };
}
