/** The way down an approach as rows of a table: path, rates, levels, step-downs and the minimum. */
import type { ApproachFacts } from "../src/index.ts";
import { count, duration, plusMinus } from "../src/index.ts";
import { at, type FactRow, feet, feetPerMinute } from "./fact-row.ts";
import { maybeUnseen } from "./not-seen.ts";

export const before = (nm: number): string =>
  `${Math.abs(nm).toFixed(1)} NM ${nm < 0 ? "past" : "before"} the threshold`;

export function vertical({ glidePath, flownPath, descent, minimum }: ApproachFacts): FactRow[] {
  const rows: FactRow[] = [];
  if (glidePath) {
    rows.push({
      fact: "Glide path needle, worst",
      value: `${Math.abs(glidePath.needle.max).toFixed(2)} ${glidePath.worstFt > 0 ? "high" : "low"} ${plusMinus(glidePath.needle.doubt95, 2)}`,
      note: `of full scale, ${feet(Math.abs(glidePath.worstFt))} ${glidePath.worstFt > 0 ? "above" : "below"}, ${before(glidePath.needle.maxDistanceNm)}; ${glidePath.label}${maybeUnseen(glidePath.needle.unseen, (most) => most.toFixed(2))}`,
    });
  }
  if (flownPath) {
    rows.push({
      fact: "Angle flown",
      value: `${flownPath.angleDeg.toFixed(2)}° ${plusMinus(flownPath.angle95Deg, 2, "°")}`,
      note: `leads to ${feet(Math.abs(flownPath.atThresholdFt))} ${flownPath.atThresholdFt < 0 ? "below" : "above"} the threshold`,
    });
  }
  if (descent) {
    rows.push({
      fact: "Descent, mean",
      value: feetPerMinute(descent.meanFpm),
      note: `at most ${feetPerMinute(descent.mostFpm)}`,
    });
    if (descent.constant)
      rows.push({
        fact: "In one go from the fix",
        value: `${descent.constant.angleDeg.toFixed(2)}°`,
        note: `${count(descent.constant.feetPerNm)} ft/NM, ${feetPerMinute(descent.constant.fpm)} at this ground speed`,
      });
    if (minimum?.kind === "descent" && descent.visualDescentPointNm !== null)
      rows.push({
        fact: "Visual descent point",
        value: `${descent.visualDescentPointNm.toFixed(1)} NM`,
        note: "before the threshold, from the minimum",
      });
    for (const level of descent.levels)
      rows.push({
        fact: "Level",
        value: feet(level.altitudeFt),
        note: `for ${duration(level.seconds)} from ${before(level.fromNm)}`,
      });
  }
  return rows;
}

export function minima({ stepDowns, minimum }: ApproachFacts): FactRow[] {
  const margin = (marginFt: number, doubt: number | null): string =>
    `${feet(Math.abs(marginFt))} ${marginFt < 0 ? "below" : "above"}${doubt === null ? "" : ` ± ${Math.round(doubt)}`}`;
  const rows = stepDowns.map(({ name, limitFt, lowestFt, marginFt, altimeter95Ft, unseen }) => ({
    fact: `${count(limitFt)} ft to ${name}`,
    value: marginFt === null ? "cannot tell" : margin(marginFt, altimeter95Ft),
    note:
      lowestFt === null
        ? ""
        : `lowest ${feet(lowestFt)}${maybeUnseen(unseen, (most) => feet(limitFt - most), "down to")}`,
  }));
  if (!minimum) return rows;
  const name = minimum.kind === "decision" ? "Decision altitude" : "Minimum descent altitude";
  if (minimum.passedNm !== null)
    rows.push({
      fact: name,
      value: feet(minimum.altitudeFt),
      note: `passed ${before(minimum.passedNm)} ${at(minimum.passedUtc)}`,
    });
  if (minimum.passedIn)
    rows.push({
      fact: name,
      value: feet(minimum.altitudeFt),
      note: `passed between ${before(minimum.passedIn.fromNm)} and ${before(minimum.passedIn.toNm)}, in ${duration(minimum.passedIn.seconds)} without a point`,
    });
  if (minimum.marginFt !== null)
    rows.push({
      fact: "Lowest before the climb",
      value: margin(minimum.marginFt, minimum.altimeter95Ft),
      note:
        minimum.lowestFt === null
          ? ""
          : `${feet(minimum.lowestFt)} ${at(minimum.lowestUtc)}${maybeUnseen(minimum.unseen, (most) => feet(minimum.altitudeFt - most), "down to")}`,
    });
  return rows;
}
