/** The facts of one approach as rows of a table, from what led onto the final to how it ended. */

import type { ApproachFacts } from "../src/index.ts";
import {
  alongWords,
  duration,
  flownDirection,
  percent,
  plain,
  plusMinus,
  sided,
  windLabel,
} from "../src/index.ts";
import { before, minima, vertical } from "./approach-descent-rows.ts";
import { causeRows } from "./cause-rows.ts";
import { at, type FactRow, feet, feetPerMinute, onward } from "./fact-row.ts";
import { judgedSpan } from "./judged-span.ts";
import { maybeUnseen, untoldRows } from "./not-seen.ts";

const past = ({ overshootNm: nm, wentOn }: NonNullable<ApproachFacts["intercept"]>): string =>
  nm < 0.005 && !wentOn ? "" : `past the course by ${nm.toFixed(2)} NM${onward(wentOn)}, `;
const unseen = (silence: { seconds: number } | undefined): string =>
  silence ? `; in ${duration(silence.seconds)} without a point` : "";
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
      note: `before the threshold, ${at(intercept.joinedUtc)}; ${past(intercept)}${corrections(intercept.corrections)} in the two minutes after${intercept.silentS === undefined ? "" : `; ${duration(intercept.silentS)} of it without a point`}`,
    });
  }
  if (finalFix && passage) {
    // as in the sentence: against a briefed height the altimeter counts
    const doubt95 = finalFix.altitudeFt === null ? passage.altitude95Ft : passage.altimeter95Ft;
    const needle95 = passage.needle95 === undefined ? "" : ` ± ${passage.needle95.toFixed(2)}`;
    rows.push({
      fact: `Over ${finalFix.ident}`,
      value:
        passage.altitudeFt === null
          ? sided(passage.crossTrackNm, 2, " NM")
          : `${feet(passage.altitudeFt)}${doubt95 === null ? "" : ` ± ${Math.round(doubt95)}`}`,
      note: `${at(passage.utc)}${finalFix.altitudeFt === null ? "" : `; briefed ${feet(finalFix.altitudeFt)}, by the altimeter`}${passage.needle === null ? "; within a mile of the station, the needle not judged" : `; ${sided(passage.needle, 2)}${needle95} of full scale`}${unseen(passage.silence)}${passage.established ? "" : ", not yet established"}`,
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
            note: `${reversals.perMinute.toFixed(1)} a minute of all that is judged`,
          },
        ]
      : []),
  ];
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
      value: windLabel(wind),
      note: wind.alongKt === null ? "" : alongWords(wind.alongKt),
    });
  if (missed)
    rows.push({
      fact: "Climb away",
      value: feet(missed.altitudeFt),
      note: `${at(missed.startUtc)}, ${before(missed.distanceNm)}${unseen(missed.silence)}; ${feetPerMinute(missed.climbFpm)} in the first minute${missed.silence ? " after that" : ""}, track ${sided(missed.trackErrorDeg, 0, "°")} of the final`,
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
      value:
        landing.thresholdFt === null
          ? "height not known"
          : `${feet(landing.thresholdFt)}${landing.threshold95Ft === undefined ? "" : ` ± ${Math.round(landing.threshold95Ft)}`}`,
      note: `${at(landing.thresholdUtc)}${landing.groundSpeedKt === null ? "" : `, ${Math.round(landing.groundSpeedKt)} kt over the ground`}${unseen(landing.silence)}`,
    });
  return rows;
}

export const approachFactRows = (facts: ApproachFacts): FactRow[] => [
  ...waysIn(facts),
  ...lateral(facts),
  ...causeRows("the final", facts.excursions),
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
