/** Tells the truth of a hold: when each turn and leg of it began, where they led, and in what wind. */
import { direction } from "../quantity/angle.ts";
import { METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import type { Seconds } from "../quantity/units.ts";
import type { TrueColumns } from "./flight.ts";
import { type FlownHold, type FlownLap, factorFlown } from "./hold.ts";
import { means, rounded } from "./means.ts";
import type { HoldStep } from "./script.ts";
import { sightOfHold } from "./sight.ts";
import type { TrueHold, TrueLap } from "./truth.ts";

/** A leg shorter than this has no mean worth telling, seconds. */
const LEAST_LEG: Seconds = 3;

export function trueHold(hold: FlownHold, columns: TrueColumns, utc: (t: Seconds) => string): TrueHold {
  const { step, entry, sector, headingAtFix, entryParts, start, end, laps } = hold;
  const { leg } = step;
  return {
    title: step.exercise,
    fix: [step.fix.latitude, step.fix.longitude],
    inboundTrueDeg: rounded(step.inbound, 2),
    turn: step.turns,
    leg: "seconds" in leg ? { seconds: leg.seconds } : { distanceNm: leg.distance, by: leg.by },
    entry,
    entrySector: sector,
    headingAtFixTrueDeg: rounded(headingAtFix, 1),
    entryParts: entryParts.map((p) => ({ part: p.part, startUtc: utc(p.start), endUtc: utc(p.end) })),
    t0: utc(start),
    t1: utc(end),
    laps: laps.map((lap) => trueLap(lap, step, columns, utc)),
  };
}

function trueLap(lap: FlownLap, step: HoldStep, columns: TrueColumns, utc: (t: Seconds) => string): TrueLap {
  const factor = factorFlown(lap, step.inbound);
  const mean = (from: Seconds, to: Seconds) =>
    to - from < LEAST_LEG ? null : means(columns, Math.ceil(from), Math.floor(to));
  const outbound = mean(lap.outboundStart, lap.inboundTurn);
  const inbound = mean(lap.inboundStart, lap.end);
  const whole = mean(lap.start, lap.end)!;
  const outboundEnd = sightAt(step, columns, lap.inboundTurn);
  const abeam = abeamTime(lap, step, columns);
  const miles = (metres: number) => rounded(metres / METRES_PER_NAUTICAL_MILE, 3);
  return {
    utc: utc(lap.start),
    outboundUtc: utc(lap.outboundStart),
    abeamUtc: abeam === null ? null : utc(abeam),
    inboundTurnUtc: utc(lap.inboundTurn),
    inboundUtc: utc(lap.inboundStart),
    endUtc: utc(lap.end),
    outboundS: rounded(lap.inboundTurn - lap.outboundStart, 1),
    inboundS: rounded(lap.end - lap.inboundStart, 1),
    outboundHeadingTrueDeg: rounded(direction(lap.outboundHeading), 1),
    meanOutboundHeadingTrueDeg: outbound?.heading ?? null,
    meanOutboundTrackTrueDeg: outbound?.track ?? null,
    meanInboundHeadingTrueDeg: inbound?.heading ?? null,
    meanInboundTrackTrueDeg: inbound?.track ?? null,
    outboundEndAlongNm: rounded(-outboundEnd.distance, 3),
    outboundEndAcrossNm: miles(outboundEnd.across),
    rolloutCrossTrackNm: miles(lap.rollOutAcross),
    fixAcrossNm: miles(sightAt(step, columns, lap.end).across),
    windFromTrueDeg: whole.from,
    windKt: whole.speed,
    tasKt: whole.tas,
    neededCorrectionDeg: lap.solved && rounded(lap.solved.inboundCorrection, 1),
    factor: factor === null ? null : rounded(factor, 2),
    solvedOutboundHeadingTrueDeg: lap.solved && rounded(lap.solved.outboundHeading, 1),
    solvedOutboundS: lap.solved && rounded(lap.solved.outboundSeconds, 1),
  };
}

/** At the row nearest a time. */
function sightAt(step: HoldStep, columns: TrueColumns, time: Seconds) {
  const row = Math.min(columns.length - 1, Math.round(time));
  return sightOfHold(step)({ latitude: columns.latitude[row]!, longitude: columns.longitude[row]! }, time);
}

/** When the aircraft is abeam the fix on its way out, to the second; null where the outbound leg ends before. */
function abeamTime(lap: FlownLap, step: HoldStep, columns: TrueColumns): Seconds | null {
  let beyond = false;
  for (let t = Math.ceil(lap.start); t <= lap.inboundTurn; t++) {
    const { distance } = sightAt(step, columns, t);
    if (distance < 0) beyond = true;
    else if (beyond) return t;
  }
  return null;
}
