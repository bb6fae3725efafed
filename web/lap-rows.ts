/** The laps of a hold as rows of a table: what was flown, and under it what the lap's own wind asked for. */
import type { HoldFacts, HoldLap, Racetrack, WindRecord } from "../src/index.ts";
import { count, isFull, isLight, outboundClock, plusMinus, sided, trueDirection } from "../src/index.ts";

export interface LapCells {
  readonly outboundTime: string;
  readonly outboundCorrection: string;
  readonly factor: string;
  readonly inboundTime: string;
  readonly inboundCorrection: string;
  readonly rollOut: string;
  readonly overshoot: string;
  readonly height: string;
  readonly wind: string;
}

export interface LapRow {
  readonly lap: number;
  readonly flown: LapCells;
  readonly asked: LapCells;
}

const NOT_KNOWN = "not known";
const EMPTY = "";

const solvedOf = ({ solved }: HoldLap): Racetrack | null => (solved && !("none" in solved) ? solved : null);
const degrees = (value: number | null | undefined): string =>
  value === null || value === undefined ? NOT_KNOWN : sided(value, 0, "°");
const seconds = (value: number): string => `${Math.round(value)} s`;
const times = (value: number): string => `×${value.toFixed(1)}`;
/** Left out where it is under the last figure: the table has no room for saying so in each cell. */
const doubt = (value: number | null | undefined, digits: number, unit = ""): string =>
  value === null || value === undefined || value < 10 ** -digits / 2
    ? ""
    : ` ${plusMinus(value, digits, unit)}`;

function windCells(wind: WindRecord | null): readonly [flown: string, asked: string] {
  if (!wind || !isFull(wind)) return [NOT_KNOWN, EMPTY];
  const from = isLight(wind) ? "direction not sure" : trueDirection(wind.fromTrueDeg);
  return [`${from} ${Math.round(wind.speedKt)} kt`, doubt(wind.ellipse95Kt?.majorKt, 1, " kt").trim()];
}

function flownCells(lap: HoldLap): LapCells {
  const { outbound, inbound, rollOut, altitude } = lap;
  const [wind] = windCells(lap.wind);
  return {
    outboundTime: `${seconds(outbound.seconds)}${doubt(outbound.unseen?.most, 0)}`,
    outboundCorrection: `${degrees(outbound.correctionDeg)}${doubt(outbound.correction95Deg, 0, "°")}`,
    factor:
      lap.factorOfNeed === null ? NOT_KNOWN : `${times(lap.factorOfNeed)}${doubt(lap.factorOfNeed95, 1)}`,
    inboundTime: inbound ? `${seconds(inbound.seconds)}${doubt(inbound.unseen?.most, 0)}` : "not flown",
    inboundCorrection: inbound
      ? `${degrees(inbound.correctionDeg)}${doubt(inbound.correction95Deg, 0, "°")}`
      : "not flown",
    rollOut: rollOut
      ? `${sided(rollOut.acrossNm, 2, " NM")}${doubt(rollOut.across95Nm, 2)}`
      : "did not roll out",
    overshoot: rollOut
      ? rollOut.overshootNm < 0.005
        ? "none"
        : `${rollOut.overshootNm.toFixed(2)} NM`
      : EMPTY,
    height: altitude ? `${count(altitude.meanFt)} ft` : NOT_KNOWN,
    wind,
  };
}

/** Where the wind is not known nothing is asked; where nothing closes, that is said. */
function askedCells(lap: HoldLap, facts: HoldFacts): LapCells {
  const solved = solvedOf(lap);
  const none = lap.solved && "none" in lap.solved ? "no solution" : NOT_KNOWN;
  const { doubt: d } = lap;
  const target = facts.altitude?.targetFt ?? null;
  return {
    outboundTime: solved ? `${seconds(outboundClock(solved).seconds)}${doubt(d?.outbound95S, 0)}` : none,
    outboundCorrection: solved
      ? `${degrees(solved.outboundCorrectionDeg)}${doubt(d?.outboundCorrection95Deg, 0, "°")}`
      : none,
    factor: !solved
      ? none
      : solved.factor === null
        ? "any"
        : `${times(solved.factor)}${doubt(d?.factor95, 1)}`,
    inboundTime: solved ? seconds(solved.inboundS) : none,
    inboundCorrection: solved
      ? `${degrees(solved.inboundCorrectionDeg)}${doubt(d?.inboundCorrection95Deg, 0, "°")}`
      : none,
    rollOut: solved ? "on course" : none,
    overshoot: EMPTY,
    height: target === null ? EMPTY : `${count(target)} ft`,
    wind: windCells(lap.wind)[1],
  };
}

export const lapRows = (facts: HoldFacts): LapRow[] =>
  facts.laps.map((lap, i) => ({ lap: i + 1, flown: flownCells(lap), asked: askedCells(lap, facts) }));
