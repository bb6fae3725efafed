/** The facts of one approach as rows of a table, from what led onto the final to how it ended. */

import type { ApproachFacts } from "../src/index.ts";
import {
  count,
  duration,
  flownDirection,
  percent,
  plain,
  plusMinus,
  sided,
  trueDirection,
} from "../src/index.ts";
import { at, type FactRow, feet, feetPerMinute } from "./fact-row.ts";
import { judgedSpan } from "./judged-span.ts";
import { maybeUnseen, untoldRows } from "./not-seen.ts";

const before = (nm: number): string =>
  `${Math.abs(nm).toFixed(1)} NM ${nm < 0 ? "past" : "before"} the threshold`;

const past = (nm: number): string => (nm < 0.005 ? "" : `past the course by ${nm.toFixed(2)} NM, `);
const corrections = (n: number): string =>
  n === 0 ? "no correction" : n === 1 ? "one correction" : `${n} corrections`;

function waysIn({ intercept, finalFix, finalFixPassage: passage, joinedFrom }: ApproachFacts): FactRow[] {
  const rows: FactRow[] = [];
  if (intercept) {
    rows.push({
      fact: "Cut onto the final",
      value: sided(intercept.angleDeg, 0, "°"),
      note: `${joinedFrom ? `${plain(joinedFrom)}; ` : ""}from ${sided(intercept.startCrossTrackNm, 2, " NM")} ${at(intercept.startUtc)}`,
    });
    rows.push({
      fact: "Established",
      value: `${intercept.joinedDistanceNm.toFixed(1)} NM`,
      note: `before the threshold, ${at(intercept.joinedUtc)}; ${past(intercept.overshootNm)}${corrections(intercept.corrections)} in the two minutes after`,
    });
  }
  if (finalFix && passage) {
    rows.push({
      fact: `Over ${finalFix.ident}`,
      value:
        passage.altitudeFt === null
          ? sided(passage.crossTrackNm, 2, " NM")
          : `${feet(passage.altitudeFt)}${passage.altitude95Ft === null ? "" : ` ± ${Math.round(passage.altitude95Ft)}`}`,
      note: `${at(passage.utc)}${finalFix.altitudeFt === null ? "" : `; briefed ${feet(finalFix.altitudeFt)}`}; ${sided(passage.needle, 2)} of full scale${passage.established ? "" : ", not yet established"}`,
    });
  }
  return rows;
}

function lateral({ crossTrack, needle, guidance, trackAngleError, reversals }: ApproachFacts): FactRow[] {
  const shares = [needle.beyondHalf, needle.beyondThreeQuarter, needle.beyondFull].map(percent).join(" · ");
  return [
    {
      fact: "Off the final, worst",
      value: `${sided(crossTrack.maxNm, 2, " NM")} ${plusMinus(crossTrack.doubt95Nm, 2)}`,
      note: `root mean square ${crossTrack.rmsNm.toFixed(2)} NM`,
    },
    {
      fact: "Lateral needle, worst",
      value: `${sided(needle.max, 2)} ${plusMinus(needle.doubt95, 2)}`,
      note: `of full scale, ${before(needle.maxDistanceNm)}; ${guidance.label}${maybeUnseen(needle.unseen, (most) => most.toFixed(2))}`,
    },
    { fact: "Needle beyond ½ · ¾ · full", value: shares, note: "of the judged final" },
    ...(trackAngleError
      ? [
          {
            fact: "Track angle error, worst",
            value: sided(trackAngleError.maxDeg, 0, "°"),
            note: `mean ${sided(trackAngleError.meanDeg, 1, "°")}`,
          },
        ]
      : []),
    ...(reversals && reversals.count > 0
      ? [
          {
            fact: "Turned from side to side",
            value: `${reversals.count} times`,
            note: `${reversals.perMinute.toFixed(1)} a minute`,
          },
        ]
      : []),
  ];
}

function vertical({ glidePath, flownPath, descent, minimum }: ApproachFacts): FactRow[] {
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

function minima({ stepDowns, minimum }: ApproachFacts): FactRow[] {
  const margin = (marginFt: number, doubt: number | null): string =>
    `${feet(Math.abs(marginFt))} ${marginFt < 0 ? "below" : "above"}${doubt === null ? "" : ` ± ${Math.round(doubt)}`}`;
  const rows = stepDowns.map(({ name, limitFt, lowestFt, marginFt, altimeter95Ft }) => ({
    fact: `${count(limitFt)} ft to ${name}`,
    value: marginFt === null ? "cannot tell" : margin(marginFt, altimeter95Ft),
    note: lowestFt === null ? "" : `lowest ${feet(lowestFt)}`,
  }));
  if (!minimum) return rows;
  const name = minimum.kind === "decision" ? "Decision altitude" : "Minimum descent altitude";
  if (minimum.passedNm !== null)
    rows.push({
      fact: name,
      value: feet(minimum.altitudeFt),
      note: `passed ${before(minimum.passedNm)} ${at(minimum.passedUtc)}`,
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

function ending({ missed, landing, groundSpeedKt, wind }: ApproachFacts): FactRow[] {
  const rows: FactRow[] = [];
  if (groundSpeedKt !== null)
    rows.push({
      fact: "Over the ground",
      value: `${Math.round(groundSpeedKt)} kt`,
      note: "mean of the judged final",
    });
  if (wind?.fromTrueDeg != null && wind.speedKt !== null)
    rows.push({
      fact: "Wind from",
      value: `${trueDirection(wind.fromTrueDeg)}, ${Math.round(wind.speedKt)} kt`,
      note:
        wind.alongKt === null
          ? ""
          : `${Math.abs(Math.round(wind.alongKt))} kt ${wind.alongKt < 0 ? "head" : "tail"}wind`,
    });
  if (missed)
    rows.push({
      fact: "Climb away",
      value: feet(missed.altitudeFt),
      note: `${at(missed.startUtc)}, ${before(missed.distanceNm)}; ${feetPerMinute(missed.climbFpm)} in the first minute, track ${sided(missed.trackErrorDeg, 0, "°")} of the final`,
    });
  if (missed?.course?.track) {
    const { trueDeg, magneticDeg, track } = missed.course;
    rows.push({
      fact: "Missed approach, off its course",
      value: `${sided(track.worstErrorDeg, 0, "°")} ${plusMinus(track.doubt95Deg, 0, "°")}`,
      note: `at worst, ${at(track.worstUtc)}; mean ${sided(track.meanErrorDeg, 1, "°")} over half a minute; course ${flownDirection(trueDeg, magneticDeg)}${track.turnedOnto ? "" : ", never turned onto"}`,
    });
  }
  if (landing)
    rows.push({
      fact: "Over the threshold",
      value: landing.thresholdFt === null ? "height not known" : feet(landing.thresholdFt),
      note: `${at(landing.thresholdUtc)}, ${Math.round(landing.groundSpeedKt)} kt over the ground`,
    });
  return rows;
}

export const approachFactRows = (facts: ApproachFacts): FactRow[] => [
  ...waysIn(facts),
  ...lateral(facts),
  ...vertical(facts),
  ...minima(facts),
  ...ending(facts),
  {
    fact: "Judged",
    value: `${facts.judged.seconds === null ? "" : `${duration(facts.judged.seconds)}, `}${(facts.judged.fromNm - facts.judged.toNm).toFixed(1)} NM`,
    note: `${judgedSpan(facts.judged)}`,
  },
  ...untoldRows(facts.cannotTell),
];
