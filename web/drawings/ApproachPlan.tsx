/** An approach from above, course-up: extended centre line, full scale on both sides, where it was joined, what was flown. */
import { useId } from "preact/hooks";
import { Head, Joined, Nose, RunwaySign } from "./ApproachPlanMarks.tsx";
import { type ApproachPlanFrame, approachPlanFrame } from "./approachPlanFrame.ts";
import { leadsOn, stretchesAlong } from "./approachStretches.ts";
import { CursorRing } from "./CursorRing.tsx";
import type { ApproachRecord, ApproachSeries } from "./contract.ts";
import type { Cursor } from "./cursor.ts";
import { Drawing } from "./Drawing.tsx";
import { FlownLine } from "./FlownLine.tsx";
import { MarkedWay } from "./MarkedWay.tsx";
import { line, pathThrough } from "./path.ts";
import { FixSign, ScaleBar } from "./planSigns.tsx";
import { ticksWithin } from "./rows.ts";
import { fixedScales, PAPER_PX } from "./scale.ts";
import { rowsAfterSilence, silenceWords } from "./silences.ts";
import { surroundings } from "./surroundings.ts";
import type { Point } from "./windGeometry.ts";
import { millimetreText } from "./words.ts";

export function ApproachPlan(props: {
  exercise: ApproachRecord;
  series: ApproachSeries;
  cursor: Cursor;
  columnPx: number;
}) {
  const { exercise, series, cursor, columnPx } = props;
  const { narrow, paper } = surroundings().value;
  const clip = useId();
  const { facts } = exercise;
  if (!facts) return null;
  const fixed = fixedScales(narrow).mmPerMileOfApproachPlan;
  const frame = approachPlanFrame(facts, series, paper ? PAPER_PX : columnPx, fixed);
  const { place, farNm, nearNm } = frame;
  const points: Point[] = Array.from(series.crossTrackNm, (across, i) =>
    place(across, series.distanceToThresholdNm[i]),
  );
  const [left, top] = place(frame.leftNm, nearNm);
  const [right, bottom] = place(frame.rightNm, farNm);
  const isFixed = frame.mmPerMile === fixed;
  return (
    <div class="approach-plan">
      <Drawing
        kind="plan"
        name={`${exercise.title} from above, course-up`}
        width={frame.width}
        height={frame.height}
      >
        <clipPath id={clip}>
          <rect x={left} y={top} width={right - left} height={bottom - top} />
        </clipPath>
        <Miles frame={frame} />
        <g clip-path={`url(#${clip})`}>
          <FullScale series={series} frame={frame} />
          <path class="course" d={pathThrough([place(0, nearNm), place(0, farNm)])} />
          <FlownLine points={points} silent={rowsAfterSilence(series.timeMs)} kind="thin" />
          {stretchesAlong(series)
            .filter(({ judged, unseen }) => judged && !unseen)
            .map(({ from, to }) => (
              <path key={from} class="flown" d={pathThrough(points.slice(from, to))} />
            ))}
        </g>
        <g clip-path={`url(#${clip})`}>
          <MarkedWay cursor={cursor} timeMs={series.timeMs} points={points} />
        </g>
        <RunwaySign facts={facts} frame={frame} />
        <Nose exercise={exercise} frame={frame} />
        <Joined {...{ facts, series, points, frame }} />
        {facts.finalFix && facts.finalFix.distanceNm <= farNm && (
          <FixSign
            x={place(0, facts.finalFix.distanceNm)[0]}
            y={place(0, facts.finalFix.distanceNm)[1]}
            ident={facts.finalFix.ident}
            dx={right - place(0, 0)[0] + 8}
          />
        )}
        <CursorRing
          cursor={cursor}
          timeMs={series.timeMs}
          points={points.map((p) => (p[1] < top || p[1] > bottom || p[0] < left || p[0] > right ? OUT : p))}
        />
        <Head facts={facts} width={frame.width} />
        <ScaleBar x={8} y={frame.height - 10} pxPerMile={frame.pxPerMile} words="" />
      </Drawing>
      <p class="drawing-scale">
        {isFixed ? "Fixed scale:" : <b>Too long for the fixed scale:</b>} 1 NM ={" "}
        {millimetreText(frame.mmPerMile)}. Dashed: full scale.{silenceWords(series.timeMs)}
      </p>
    </div>
  );
}

const OUT: Point = [Number.NaN, Number.NaN];

function Miles({ frame: { place, farNm, leftNm } }: { frame: ApproachPlanFrame }) {
  return (
    <>
      {ticksWithin(1, farNm, 1).map((nm) => {
        const [x, y] = place(0, nm);
        return (
          <g key={nm}>
            <path class="axis" d={line(x - 5, y, x + 5, y)} />
            <text class="lab" x={place(leftNm, nm)[0] - 8} y={y + 4} text-anchor="end">
              {nm}
            </text>
          </g>
        );
      })}
    </>
  );
}

/** Where the needle would be at full scale, as the rows of the way in tell it. */
function FullScale({ series, frame }: { series: ApproachSeries; frame: ApproachPlanFrame }) {
  const { distanceToThresholdNm: distance, fullScaleNm } = series;
  const rows: number[] = [];
  let last = Number.POSITIVE_INFINITY;
  for (let i = 0; i < distance.length; i++) {
    if (!leadsOn(series, i) || !(distance[i] <= last - 0.1) || distance[i] < 0) continue;
    rows.push(i);
    last = distance[i];
  }
  return (
    <>
      {[-1, 1].map((side) => (
        <path
          key={side}
          class="fullscale"
          d={pathThrough(rows.map((i) => frame.place(side * fullScaleNm[i], distance[i])))}
        />
      ))}
    </>
  );
}
