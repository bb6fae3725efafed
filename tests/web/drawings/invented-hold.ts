/** A hold at 100 kt flown second by second, some laps badly, with facts made by the real solver. */

import {
  type HoldQuestion,
  RULES,
  racetrackDoubt,
  racetrackOutline,
  ruleOutcome,
  solveRacetrack,
} from "../../../src/hold/index.ts";
import type { HoldFacts, HoldLap, HoldRecord, HoldSeries, WindRecord } from "../../../src/index.ts";

const RAD = Math.PI / 180;
const START = Date.UTC(2026, 9, 17, 9, 52);
const utc = (s: number): string => new Date(START + s * 1000).toISOString().replace(".000Z", "Z");

export interface InventedLap {
  /** Outbound correction over the inbound need. */
  readonly factor: number;
  readonly outboundS: number;
}

export interface InventedHold {
  readonly inbound: number;
  readonly turns: "left" | "right";
  readonly wind: { readonly from: number; readonly speed: number };
  readonly laps: readonly InventedLap[];
  readonly tas?: number;
  readonly legS?: number;
}

export const windRecordOf = ({ from, speed }: InventedHold["wind"]): WindRecord => ({
  knowledge: "full",
  fromTrueDeg: from,
  speedKt: speed,
  alongKt: null,
  acrossKt: null,
  along95Kt: null,
  across95Kt: null,
  ellipse95Kt: { majorKt: 2.2, minorKt: 1.7, majorTrueDeg: 20 },
  tasKt: 100,
  tas95Kt: 1.5,
  restsOn: "turns",
});

/** Flown by headings in a steady wind; along and across the inbound course, NM. Inbound legs are steered onto the course. */
export function inventHold(given: InventedHold): { exercise: HoldRecord; series: HoldSeries } {
  const { inbound, turns, wind, tas = 100, legS = 60 } = given;
  const question: HoldQuestion = {
    inbound,
    turns,
    trueAirspeed: tas,
    wind,
    leg: { by: "inbound-time", seconds: legS },
    turnRate: 3,
    mostBank: 30,
  };
  const solved = solveRacetrack(question);
  const stillAir = solveRacetrack({ ...question, wind: { from: 0, speed: 0 } });
  if ("none" in solved || "none" in stillAir) throw new Error("an invented hold must close");
  const doubt = racetrackDoubt(question, { major: 2.2, minor: 1.7, majorAxis: 20 }, 1.5);
  const sign = turns === "right" ? 1 : -1;
  const rate = sign * solved.turnRateDegS;
  const rows: { along: number; across: number; heading: number; track: number; gs: number; lap: number }[] =
    [];
  let [along, across, heading, time] = [-2, -0.3 * sign, inbound + 9 * sign, 0];
  const step = (lap: number) => {
    const e = tas * Math.sin(heading * RAD) - wind.speed * Math.sin(wind.from * RAD);
    const n = tas * Math.cos(heading * RAD) - wind.speed * Math.cos(wind.from * RAD);
    rows.push({
      along,
      across,
      heading: (heading + 720) % 360,
      track: ((Math.atan2(e, n) / RAD) % 360) + (Math.atan2(e, n) < 0 ? 360 : 0),
      gs: Math.hypot(e, n),
      lap,
    });
    along += (e * Math.sin(inbound * RAD) + n * Math.cos(inbound * RAD)) / 3600;
    across += (e * Math.cos(inbound * RAD) - n * Math.sin(inbound * RAD)) / 3600;
    time++;
  };
  const need = inbound + solved.inboundCorrectionDeg;
  const onto = (lap: number) => {
    while (along < 0 && time < 20_000) {
      heading = need - Math.max(-30, Math.min(30, across * 150));
      step(lap);
    }
  };
  const turnTo = (target: number, lap: number) => {
    while (((((target - heading) * sign) % 360) + 360) % 360 > Math.abs(rate)) {
      heading += rate;
      step(lap);
    }
    heading = target;
  };
  onto(-1);
  const laps: HoldLap[] = given.laps.map(({ factor, outboundS }, i) => {
    const startUtc = utc(time);
    const fixAcross = across;
    const correction = -factor * solved.inboundCorrectionDeg;
    turnTo(inbound + 180 + correction, i);
    const from = time;
    for (let s = 0; s < outboundS; s++) step(i);
    const [endAlong, endAcross, to] = [along, across, time];
    turnTo(need, i);
    const rollOut = { utc: utc(time), alongNm: along, acrossNm: across };
    const inFrom = time;
    onto(i);
    return {
      startUtc,
      endUtc: utc(time),
      fixAcrossNm: fixAcross,
      outbound: {
        fromUtc: utc(from),
        toUtc: utc(to),
        seconds: to - from,
        begins: "wings-level",
        fromAbeamS: to - from + 8,
        betweenTurnsS: to - from,
        lengthNm: 1.5,
        headingTrueDeg: (inbound + 180 + correction + 720) % 360,
        trackTrueDeg: rows[to - 1]!.track,
        correctionDeg: correction,
        correction95Deg: 1.4,
        endAlongNm: endAlong,
        endAcrossNm: endAcross,
        endDistanceNm: Math.hypot(endAlong, endAcross),
      },
      inbound: {
        fromUtc: utc(inFrom),
        toUtc: utc(time),
        seconds: time - inFrom,
        lengthNm: 1.5,
        headingTrueDeg: need,
        trackTrueDeg: inbound,
        correctionDeg: solved.inboundCorrectionDeg,
        correction95Deg: 1.2,
      },
      factor,
      factorOfNeed: factor,
      factorOfNeed95: 0.2,
      turns: {
        outbound: { rateDegS: 2.9, bankDeg: 15, seconds: 60 },
        inbound: { rateDegS: 3.1, bankDeg: 16, seconds: 60 },
      },
      rollOut: {
        ...rollOut,
        across95Nm: 0.02,
        trackErrorDeg: 0,
        overshootNm: Math.max(0, -sign * rollOut.acrossNm),
      },
      tracking: null,
      legOff: { leg: "inbound", seconds: time - inFrom - legS, distanceNm: null },
      altitude: { meanFt: 2980, worstFt: 2880, worstUtc: startUtc },
      groundSpeedKt: 96,
      wind: windRecordOf(wind),
      solved,
      doubt,
      rules: RULES.map((f) => ruleOutcome(question, f, legS)!),
    };
  });
  const n = rows.length;
  const column = (pick: (row: (typeof rows)[number]) => number) => Float64Array.from(rows, pick);
  const facts: HoldFacts = {
    fix: { ident: "TARNO", latitude: 35.6, longitude: 172.3, doubt95Nm: null },
    inboundTrueDeg: inbound,
    inboundMagneticDeg: inbound - 6,
    variation: { degrees: 6, from: "station", model: null, dayDegrees: 6 },
    inbound95Deg: null,
    turns,
    leg: { by: "time", seconds: legS },
    scale: null,
    legTime95S: 3,
    legsUnseen: null,
    timing: "us",
    sure: null,
    maybeCircuit: false,
    asFlown: { fixOffNm: 0.04, inboundOffDeg: 0.8, inbound95Deg: 2, otherCourse: false, turns },
    entry: {
      utc: utc(0),
      headingTrueDeg: inbound + 9,
      headingIs: "heading",
      heading95Deg: 2,
      asked: "direct",
      alsoAllowed: [],
      fromBorderDeg: 61,
      flown: "direct",
      fixMissNm: 0.02,
      outbound: null,
    },
    laps,
    stillAir,
    solved,
    solvedDoubt: doubt,
    nonHoldingSide: { seconds: 42, farthestNm: 0.12, farthestUtc: utc(200) },
    altitude: {
      ...{ targetFt: 3000, meanFt: 2980, lowestFt: 2880, highestFt: 3060, change95Ft: 20 },
      ...{ worstFt: 2880, altimeter95Ft: 200, worstUtc: utc(0) },
    },
    speed: { trueKt: 100, indicatedKt: 96, doubt95Kt: 4, mostKt: 200, citation: "FAA AIM 5-3-8 j.2" },
    wind: windRecordOf(wind),
    cannotTell: [],
  };
  /** Without places: plans of holds are drawn by miles. */
  const nowhere = new Float64Array();
  const drawn = (racetrack: typeof solved, question: HoldQuestion) => ({
    ...racetrackOutline(racetrack, question),
    latitude: nowhere,
    longitude: nowhere,
  });
  const exercise: HoldRecord = {
    kind: "hold",
    title: `Hold at TARNO, inbound ${inbound - 6}°M, ${turns} turns`,
    source: "brief",
    startUtc: utc(0),
    endUtc: utc(n),
    match: { by: "geometry", confidence: 0.98 },
    findings: [],
    verdicts: [],
    facts,
    whatWouldHaveWorked: null,
  };
  return {
    exercise,
    series: {
      kind: "hold",
      pathStart: 0,
      timeMs: Float64Array.from({ length: n }, (_, i) => START + i * 1000),
      alongNm: column((r) => r.along),
      crossTrackNm: column((r) => r.across),
      trackTrueDeg: column((r) => r.track),
      headingTrueDeg: column((r) => r.heading),
      groundSpeedKt: column((r) => r.gs),
      altitudeFt: column(() => 2980),
      lap: Int8Array.from(rows, (r) => r.lap),
      solved: drawn(solved, question),
      stillAir: drawn(stillAir, { ...question, wind: { from: 0, speed: 0 } }),
    },
  };
}

/** The wind and the three laps of improving skill that the plan is looked at with. */
export const THREE_LAPS: InventedHold = {
  inbound: 253,
  turns: "right",
  wind: { from: 192, speed: 20 },
  laps: [
    { factor: 1.1, outboundS: 62 },
    { factor: 2.4, outboundS: 58 },
    { factor: 3.8, outboundS: 47 },
  ],
};
