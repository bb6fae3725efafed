/** The approach at the heights where it is to be stable: what a log can show of it. */
import { type Span, spanLength } from "../quantity/span.ts";
import type { Feet, FeetPerMinute, Seconds, Share } from "../quantity/units.ts";
import { strayedRate } from "../quantity/unseen.ts";
import { Z95 } from "../quantity/weigh.ts";
import { GATES } from "../standard/stabilised.ts";
import { type Moment, meanOf, passing, rowsWithin, utcAt, valueAt } from "./column.ts";
import { upAndDown } from "./deviation.ts";
import type { ApproachFacts } from "./facts.ts";
import { onGlide } from "./glide.ts";
import type { ApproachRows } from "./rows.ts";
import { INBOUND, type Segments } from "./segments.ts";
import { hiddenNeedle, lowestUnseen } from "./silence.ts";

type Gate = ApproachFacts["gates"][number];

/** Speed is compared over this, rate and bank are taken within `ABOUT`, the track within `STEADY` either way. Chosen. */
const SPEED_OVER: Seconds = 30;
const ABOUT: Seconds = 5;
const STEADY: Seconds = 10;
/** Half-width of the 95 % interval of a vertical speed over ten seconds. Measured on simulation seeds 1-40, logs of 1 s and 5 s. */
const VERTICAL_95: FeetPerMinute = 70;
/** Below this the flare begins. Common practice, no source. */
const FLARE: Feet = 50;

const known = (value: number): number | null => (Number.isNaN(value) ? null : value);

/** One for each height, whether passed or not. */
export function gatesOf(rows: ApproachRows, segments: Segments): Gate[] {
  return GATES.map((heightFt): Gate => {
    const moment = lastFalling(rows, heightFt, segments);
    if (!moment)
      return {
        heightFt,
        utc: null,
        nearestFt: nearestAbove(rows, heightFt, segments),
        distanceNm: null,
        silentS: null,
        lateral: null,
        vertical: null,
        verticalFpm: null,
        vertical95Fpm: null,
        groundSpeedKt: null,
        groundSpeedChangeKt: null,
        bankDeg: null,
        trackUnsteadyDeg: null,
        after: null,
      };
    const time = valueAt(rows.timeMs, moment);
    const onFinal = ({ start, end }: Span): Span => ({ start, end: Math.min(end, flownTo(rows, segments)) });
    const about = onFinal(rowsWithin(rows, time - ABOUT * 1000, time + ABOUT * 1000));
    const steady = onFinal(rowsWithin(rows, time - STEADY * 1000, time + STEADY * 1000));
    // across a gap nothing was smoothed
    const speed = rows.gapBefore[moment.row + 1] ? Number.NaN : valueAt(rows.groundSpeedKt, moment);
    const before = rowsWithin(rows, time - SPEED_OVER * 1000, time);
    const row = moment.row;
    const needle = valueAt(rows.judgedNeedle, moment);
    const path = valueAt(rows.pathNeedle, moment);
    const hidden = hiddenAt(rows, row);
    // where the log is silent about it, neither rate nor bank nor steadiness is told
    const rate = known(meanOf(rows.verticalFpm, about.start, about.end));
    return {
      heightFt,
      utc: utcAt(rows, moment),
      distanceNm: valueAt(rows.distanceNm, moment),
      silentS: hidden.seconds,
      lateral: Number.isNaN(needle)
        ? null
        : {
            value: needle,
            doubt95: (Z95 * rows.positionSdNm[row]!) / rows.fullScaleNm[row]! + hidden.lateral,
          },
      vertical: Number.isNaN(path)
        ? null
        : { value: path, doubt95: Z95 * rows.pathNeedleSd[row]! + hidden.vertical },
      verticalFpm: rate,
      vertical95Fpm: rate === null ? null : VERTICAL_95 + hidden.rate,
      groundSpeedKt: known(speed),
      groundSpeedChangeKt: spanLength(before) > 0 ? known(speed - rows.groundSpeedKt[before.start]!) : null,
      bankDeg: known(largest(rows.bankDeg, about)),
      trackUnsteadyDeg: spanLength(steady) > 1 ? known(spread(rows.trackErrorDeg, steady)) : null,
      after: worstAfter(rows, row, segments),
    };
  });
}

/** The first row that is no longer of the final: in the turn away or the climb, or past the threshold. */
function flownTo({ length }: ApproachRows, { brokeOff, missed, threshold }: Segments): number {
  if (brokeOff) return brokeOff.row + 1;
  const row = Math.min(missed?.start.row ?? length, threshold?.row ?? length);
  return Math.min(length, row + 1);
}

/** How far above a height the aircraft stayed on the final until it climbed or turned away, silences counted as low as they allow; null where no height is known. */
function nearestAbove(rows: ApproachRows, height: Feet, { final, missed }: Segments): Feet | null {
  const span = {
    start: Math.max(0, final.start - 1),
    end: Math.min(rows.length, Math.max(final.end + 1, (missed?.lowest ?? 0) + 2)),
  };
  let lowest = lowestUnseen(rows, span, rows.heightFt)?.low ?? Number.NaN;
  for (let i = span.start; i < span.end; i++) lowest = Math.min(lowest, rows.heightFt[i]!);
  return known(lowest - height);
}

/** What the silence from a row to the next may hide, in addition to what was read there. `seconds`: its length; null where it hides nothing that shows. */
function hiddenAt(
  rows: ApproachRows,
  row: number,
): {
  readonly lateral: Share;
  readonly vertical: Share;
  readonly rate: FeetPerMinute;
  readonly seconds: Seconds | null;
} {
  const step = { start: row, end: Math.min(row + 2, rows.length) };
  const lateral = hiddenNeedle(rows, row);
  const vertical = hiddenNeedle(rows, row, rows.pathNeedle, upAndDown(rows));
  const seconds = (rows.timeMs[step.end - 1]! - rows.timeMs[row]!) / 1000;
  // a rate is a mean over ten seconds, which a shorter step does not hide
  const rate = seconds > 2 * ABOUT ? strayedRate(seconds) : 0;
  return { lateral, vertical, rate, seconds: lateral + vertical + rate > 0 ? seconds : null };
}

/** The last time the height was passed on the way down and inbound, before the final ended: on a downwind or a base leg it is no gate. */
function lastFalling(rows: ApproachRows, height: Feet, { final, threshold }: Segments): Moment | null {
  if (!rows.timed) return null;
  const end = Math.min(rows.length, Math.max(final.end, threshold ? threshold.row + 1 : 0));
  let found: Moment | null = null;
  for (let from = 0; ; ) {
    const moment = passing(rows.heightFt, height, "falling", from, end);
    if (!moment) return found;
    if (Math.abs(rows.trackErrorDeg[moment.row]!) < INBOUND) found = moment;
    from = moment.row + 1;
  }
}

function worstAfter(rows: ApproachRows, from: number, { final }: Segments): Gate["after"] {
  let end = from;
  while (end < final.end && rows.heightFt[end]! > FLARE) end++;
  const span = { start: from, end };
  if (end - from < 2) return null;
  const vertical = largest(rows.pathNeedle, onGlide(rows, span));
  const speeds = rows.groundSpeedKt.subarray(from, end);
  return {
    lateral: known(largest(rows.judgedNeedle, span)),
    vertical: Number.isNaN(vertical) ? null : vertical,
    mostSinkFpm: rows.verticalFpm.subarray(from, end).reduce((most, v) => Math.max(most, -v), 0),
    mostBankDeg: Math.abs(largest(rows.bankDeg, span)),
    groundSpeedRangeKt:
      speeds.reduce((a, b) => Math.max(a, b), 0) - speeds.reduce((a, b) => Math.min(a, b), Infinity),
  };
}

/** The value of largest size, signed; NaN where none is known. */
function largest(column: Float64Array, { start, end }: Span): number {
  let worst = Number.NaN;
  for (let i = start; i < end; i++)
    if (!(Math.abs(column[i]!) <= Math.abs(worst)) && !Number.isNaN(column[i]!)) worst = column[i]!;
  return worst;
}

function spread(column: Float64Array, { start, end }: Span): number {
  const mean = meanOf(column, start, end);
  let sum = 0;
  for (let i = start; i < end; i++) sum += (column[i]! - mean) ** 2;
  return Math.sqrt(sum / Math.max(1, end - start));
}
