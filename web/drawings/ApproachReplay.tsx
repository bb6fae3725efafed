/** The moment of an approach replayed: where on the way, both needles, height against the path, rates, track and heading. */
import { type ApproachFacts, type ApproachRecord, type ApproachSeries, count, sided } from "./contract.ts";
import type { Cursor } from "./cursor.ts";
import { type ReadoutProps, ReplayOf } from "./ReplayOf.tsx";
import { NeedleRule } from "./readouts.tsx";
import { onFinal, secondsToQuarter } from "./secondsToQuarter.ts";
import { columnCourse, columnHeading, knots, known } from "./words.ts";

export function ApproachReplay(props: { exercise: ApproachRecord; series: ApproachSeries; cursor: Cursor }) {
  return <ReplayOf {...props} Readout={Readout} />;
}

const PARTS: Readonly<Record<string, string>> = {
  joining: "joining the final",
  inbound: "inbound to the final fix",
  final: "on the final",
  "past-threshold": "past the threshold",
  "missed-approach": "missed approach",
  "left-final": "past where the final was left",
  landing: "landing",
  "climb-out": "climbing out after the touch-and-go",
};

/** A vertical speed in words, as in "420 ft/min down". */
const upOrDown = (fpm: number): string =>
  `${count(Math.abs(Math.round(fpm / 10) * 10))} ft/min ${fpm > 0 ? "up" : "down"}`;
/** Off the path in words, as in "35 ft below". */
const aboveOrBelow = (ft: number): string => `${count(Math.abs(ft))} ft ${ft > 0 ? "above" : "below"}`;

function Readout({ facts, series, row }: ReadoutProps<ApproachFacts, ApproachSeries>) {
  const kind = facts.segments[series.segment[row]]?.kind;
  const distance = series.distanceToThresholdNm[row];
  const place = `${Math.abs(distance).toFixed(1)} NM ${distance < 0 ? "past" : "before"} the threshold`;
  const { halfAngleDeg } = facts.guidance;
  const full = series.fullScaleNm[row];
  const seconds = secondsToQuarter(onFinal(halfAngleDeg, full), {
    offNm: series.crossTrackNm[row],
    errorDeg: series.trackAngleErrorDeg[row],
    speedKt: series.groundSpeedKt[row],
    distanceNm: halfAngleDeg === null ? distance : full / Math.tan((halfAngleDeg * Math.PI) / 180),
  });
  return (
    <>
      <NeedleRule needle={series.needle[row]} />
      <dl class="readout">
        <dt>Where</dt>
        <dd class="wide">{kind ? `${PARTS[kind] ?? kind}, ${place}` : place}</dd>
        <dt>Off the final</dt>
        <dd>{known(series.crossTrackNm[row], (nm) => sided(nm, 2, " NM"))}</dd>
        <dt>Track</dt>
        <dd>{columnCourse(series.trackTrueDeg[row], facts)}</dd>
        <dt>Needle at a quarter</dt>
        <dd>{seconds === null ? "not at this rate" : `in ${seconds} s`}</dd>
        <dt>Heading, estimated</dt>
        <dd>{columnHeading(series.headingTrueDeg[row], facts)}</dd>
        {facts.glidePath && (
          <>
            <dt>Glide path</dt>
            <dd>{known(series.glidePathDeviationFt[row], aboveOrBelow)}</dd>
          </>
        )}
        <dt>Altitude</dt>
        <dd>{known(series.altitudeFt[row], (ft) => `${count(ft)} ft`)}</dd>
        <dt>Rate</dt>
        <dd>{known(series.verticalFpm[row], upOrDown)}</dd>
        <dt>Over the ground</dt>
        <dd>{knots(series.groundSpeedKt[row])}</dd>
      </dl>
    </>
  );
}
