/** An arc from above, north-up: the arc with its limits, its radials, what was flown, where it was joined and left, the wind. */
import { useId, useRef } from "preact/hooks";
import { type ArcPlanFrame, alongArc, arcPlanFrame, BEYOND_NM } from "./arcPlanFrame.ts";
import { arcLimit } from "./arcWindow.ts";
import { CursorRing } from "./CursorRing.tsx";
import { coastPath } from "./coastPath.ts";
import {
  type ArcFacts,
  type ArcRecord,
  type ArcSeries,
  flownDirection,
  isFull,
  windLabel,
  windName,
} from "./contract.ts";
import { type Cursor, rowAt } from "./cursor.ts";
import { Drawing } from "./Drawing.tsx";
import { JudgedLine } from "./JudgedLine.tsx";
import { MarkedWay } from "./MarkedWay.tsx";
import { stretchesOf } from "./nearestRow.ts";
import { pathThrough } from "./path.ts";
import { FixSign, NorthArrow, ScaleBar } from "./planSigns.tsx";
import { fixedScales } from "./scale.ts";
import { silenceWords } from "./silences.ts";
import { surroundings } from "./surroundings.ts";
import { useDrawnWidth } from "./useWidth.ts";
import { WindSign } from "./WindArrow.tsx";
import { onPaper } from "./windGeometry.ts";
import { millimetreText } from "./words.ts";

export function ArcPlan(props: { exercise: ArcRecord; series: ArcSeries; cursor: Cursor }) {
  const { exercise, series, cursor } = props;
  const box = useRef<HTMLDivElement>(null);
  const width = useDrawnWidth(box);
  const { narrow } = surroundings().value;
  const clip = useId();
  const { facts } = exercise;
  if (!facts || width === 0) return <div class="arc-plan" ref={box} />;
  const fixed = fixedScales(narrow).mmPerMileOfPlan;
  const frame = arcPlanFrame(facts, series, width, fixed);
  const limit = arcLimit(exercise.verdicts);
  const points = Array.from(series.radialTrueDeg, (radial, i) => frame.place(radial, series.distanceNm[i]));
  const arcAt = (distance: number) =>
    alongArc(facts, distance).map(([radial, nm]) => frame.place(radial, nm));
  // on a right-hand arc the station lies on the right of it
  const outward = facts.turns === "right" ? -1 : 1;
  const [cx, cy] = frame.place(0, 0);
  const isFixed = frame.mmPerMile === fixed;
  return (
    <div class="arc-plan" ref={box}>
      <Drawing
        kind="plan"
        name={`${exercise.title} from above, north-up`}
        width={frame.width}
        height={frame.height}
      >
        <clipPath id={clip}>
          <rect x={0} y={0} width={frame.width} height={frame.height} />
        </clipPath>
        <g clip-path={`url(#${clip})`}>
          <circle class="ring" cx={cx} cy={cy} r={facts.radiusNm * frame.pxPerMile} />
          <Radials facts={facts} frame={frame} />
        </g>
        {([outward, -outward] as const).map((far) => {
          const coast = coastPath(arcAt(facts.radiusNm + (far === outward ? limit : -limit)), far as 1 | -1);
          return (
            <g key={far}>
              <path class="limit" d={coast.line} />
              <path class="hach" d={coast.hachures} />
            </g>
          );
        })}
        <path class="course" d={pathThrough(arcAt(facts.radiusNm))} />
        <JudgedLine stretches={stretchesOf(series.judged, series.timeMs)} point={(row) => points[row]} />
        <MarkedWay cursor={cursor} timeMs={series.timeMs} points={points} />
        <Turns facts={facts} series={series} points={points} />
        {frame.hasStation && <FixSign x={cx} y={cy} ident={facts.fix} dy={18} dx={0} anchor="middle" />}
        <CursorRing cursor={cursor} timeMs={series.timeMs} points={points} />
        <Head facts={facts} width={frame.width} />
        <ScaleBar x={8} y={frame.height - 8} pxPerMile={frame.pxPerMile} words="" />
      </Drawing>
      <p class="drawing-scale">
        {isFixed ? "Fixed scale:" : <b>Too large for the fixed scale:</b>} 1 NM ={" "}
        {millimetreText(frame.mmPerMile)}, north-up. The coasts lie {limit} NM outside and inside the arc.
        {facts.turnIn || facts.turnOff ? " Rings: where a turn onto it or off it began." : ""}
        {silenceWords(series.timeMs)}
      </p>
    </div>
  );
}

/** First and last radial from near the station to beyond the arc, with their names; the lead radial dashed. */
function Radials({ facts, frame }: { facts: ArcFacts; frame: ArcPlanFrame }) {
  const { radiusNm, turnOff, turns, sweepDeg, fromRadialTrueDeg } = facts;
  const ends = [
    [facts.fromRadialTrueDeg, facts.fromRadialMagneticDeg],
    [facts.toRadialTrueDeg, facts.toRadialMagneticDeg],
  ] as const;
  const lead =
    turnOff?.neededDeg == null
      ? null
      : fromRadialTrueDeg + (turns === "right" ? 1 : -1) * (sweepDeg - turnOff.neededDeg);
  return (
    <>
      {ends.map(([radial, magnetic]) => {
        const [x, y] = frame.place(radial, radiusNm + BEYOND_NM);
        const [ux, uy] = onPaper(radial, 0);
        return (
          <g key={radial}>
            <path class="axis" d={pathThrough([frame.place(radial, 0.4), [x, y]])} />
            <text
              class="lab halo"
              x={x + ux * 10}
              y={y + uy * 10 + 4}
              text-anchor={ux > 0.3 ? "start" : ux < -0.3 ? "end" : "middle"}
            >
              {flownDirection(radial, magnetic)}
            </text>
          </g>
        );
      })}
      {lead !== null && (
        <path
          class="solved"
          d={pathThrough([frame.place(lead, radiusNm - BEYOND_NM), frame.place(lead, radiusNm + BEYOND_NM)])}
        />
      )}
    </>
  );
}

function Turns(props: {
  facts: ArcFacts;
  series: ArcSeries;
  points: readonly (readonly [number, number])[];
}) {
  const { facts, series, points } = props;
  return (
    <>
      {[facts.turnIn?.utc, facts.turnOff?.utc].map((utc) => {
        const row = utc == null ? null : rowAt(series.timeMs, Date.parse(utc));
        if (row === null) return null;
        return <circle key={utc} class="ringed outer" cx={points[row][0]} cy={points[row][1]} r={3.4} />;
      })}
    </>
  );
}

function Head({ facts, width }: { facts: ArcFacts; width: number }) {
  const { wind } = facts;
  return (
    <g>
      {wind && (
        <g>
          <title>{windName(wind)}</title>
          <WindSign wind={wind} x={30} y={34} />
        </g>
      )}
      <text class="lab wi halo" x={64} y={24}>
        {wind ? `${isFull(wind) ? "from " : ""}${windLabel(wind)}` : "wind not known"}
      </text>
      <NorthArrow x={width - 26} y={34} upTrueDeg={0} />
    </g>
  );
}
