/** An approach from the side, with the needles and the rate of descent beneath, on one axis of miles to the threshold. */
import { useId, useMemo, useRef } from "preact/hooks";
import { ApproachStrips } from "./ApproachStrips.tsx";
import { profileLayout, profileMargins } from "./approachLayout.ts";
import { leadsOn, rowAtDistance, stretchesAlong } from "./approachStretches.ts";
import { approachWindow, uprightHeights } from "./approachWindow.ts";
import { CursorUpright } from "./CursorUpright.tsx";
import { type ApproachRecord, type ApproachSeries, count } from "./contract.ts";
import type { Cursor } from "./cursor.ts";
import { Drawing } from "./Drawing.tsx";
import { JudgedLine } from "./JudgedLine.tsx";
import { MarkedWay } from "./MarkedWay.tsx";
import { ProfileGround } from "./ProfileGround.tsx";
import { ProfileMarks } from "./ProfileMarks.tsx";
import { line } from "./path.ts";
import { ticksWithin } from "./rows.ts";
import { DoubtBand, stripY } from "./Strip.tsx";
import { fixedScales, PAPER_PX } from "./scale.ts";
import { surroundings } from "./surroundings.ts";
import { useWidth } from "./useWidth.ts";
import type { Point } from "./windGeometry.ts";
import { millimetreText } from "./words.ts";

const HEIGHT_TICK_FT = 500;

export function ApproachProfile(props: { exercise: ApproachRecord; series: ApproachSeries; cursor: Cursor }) {
  const { exercise, series, cursor } = props;
  const box = useRef<HTMLDivElement>(null);
  const column = useWidth(box);
  const { narrow, paper } = surroundings().value;
  const clip = useId();
  const stretches = useMemo(() => stretchesAlong(series), [series]);
  const { facts } = exercise;
  const width = paper ? PAPER_PX : column;
  if (!facts || width === 0) return <div class="approach-profile" ref={box} />;
  const scales = fixedScales(narrow);
  const { left, right } = profileMargins(narrow);
  const window = approachWindow(facts, series, width - left - right, scales);
  const l = profileLayout(window, scales, narrow, {
    glidePath: facts.glidePath !== null,
    times: Number.isFinite(series.timeMs[0]),
  });
  const heights = uprightHeights(facts, series);
  const { distanceToThresholdNm: distance, height95Ft } = series;
  const points = (from: number, to: number, y: (row: number) => number): Point[] =>
    Array.from({ length: to - from }, (_, k) => [l.x(distance[from + k]), y(from + k)]);
  // the way back would be marked over the way in
  const leadingOn = (y: (row: number) => number) =>
    points(0, distance.length, (row) => (leadsOn(series, row) ? y(row) : Number.NaN));
  const flownY = (row: number) => l.y(heights.column[row]);
  const inside = (row: number) => distance[row] <= window.farNm && distance[row] >= window.nearNm;
  const point = (event: PointerEvent) => {
    const at = event.clientX - (event.currentTarget as Element).getBoundingClientRect().left;
    const row =
      at < l.left || at > l.right
        ? null
        : rowAtDistance(series, window.farNm - (at - l.left) / window.pxPerMile);
    cursor.value = row === null || !Number.isFinite(series.timeMs[row]) ? null : series.timeMs[row];
  };
  const title = heights.aboveThreshold
    ? `Height above the threshold${narrow ? "" : ` (at ${count(heights.elevationFt)} ft)`}, ft`
    : "Altitude as logged, ft";
  const mile = millimetreText(window.mmPerMile);
  const isFixed = window.mmPerMile === scales.mmPerMileOfProfile;
  return (
    <div class="approach-profile" ref={box}>
      <div
        onPointerMove={point}
        onPointerDown={point}
        onPointerLeave={() => {
          cursor.value = null;
        }}
      >
        <Drawing
          kind="profile"
          name={`${exercise.title} from the side: height, needle${facts.glidePath ? "s" : ""}${l.rate ? " and rate of descent" : ""} against the distance to the threshold`}
          width={l.width}
          height={l.height}
        >
          <clipPath id={clip}>
            <rect x={l.left} y={l.profile.top} width={l.right - l.left} height={l.height - l.profile.top} />
          </clipPath>
          <text class="lab b" x={0} y={12}>
            {title}
          </text>
          <path class="axis" d={line(l.left, l.profile.top, l.left, l.profile.bottom)} />
          {ticksWithin(window.bottomFt, window.topFt, HEIGHT_TICK_FT).map((ft) => (
            <g key={ft}>
              <path class="axis" d={line(l.left - 4, l.y(ft), l.left, l.y(ft))} />
              <text class="lab" x={l.left - 8} y={l.y(ft) + 4} text-anchor="end">
                {count(ft)}
              </text>
            </g>
          ))}
          <g clip-path={`url(#${clip})`}>
            {stretches.map(({ from, to }) => (
              <DoubtBand
                key={from}
                upper={points(from, to, (row) => l.y(heights.column[row] + height95Ft[row]))}
                lower={points(from, to, (row) => l.y(heights.column[row] - height95Ft[row]))}
              />
            ))}
          </g>
          <ProfileGround {...{ exercise, series, heights, window, l, clip, narrow }} />
          <g clip-path={`url(#${clip})`}>
            <JudgedLine stretches={stretches} point={(row) => [l.x(distance[row]), flownY(row)]} />
            {[flownY, (row: number) => stripY(l.lateral, series.needle[row])].map((y, k) => (
              <MarkedWay key={k} cursor={cursor} timeMs={series.timeMs} points={leadingOn(y)} />
            ))}
          </g>
          <ProfileMarks {...{ facts, series, heights, window, l, narrow }} />
          <ApproachStrips {...{ exercise, series, stretches, l, clip, narrow, points }} />
          <Miles {...{ far: window.farNm, near: window.nearNm, l, pxPerMile: window.pxPerMile }} />
          <CursorUpright
            cursor={cursor}
            timeMs={series.timeMs}
            xOf={(row) => (inside(row) ? l.x(distance[row]) : Number.NaN)}
            top={l.profile.top - 4}
            bottom={l.axis}
            ringsAt={(row) => [flownY(row), stripY(l.lateral, series.needle[row])]}
          />
        </Drawing>
      </div>
      <p class="drawing-scale">
        {isFixed ? "Fixed scale:" : <b>Too long for the fixed scale:</b>} 1 NM = {mile}, 1,000 ft ={" "}
        {scales.mmPerThousandFeet} mm, full needle = {scales.mmPerFullScaleOfStrip} mm. Thick: the final that
        is judged. Grey: the doubt of the height (95 %), a needle under a quarter.
        {facts.missed && " Ring: the climb away begins."} Right of course and below the path lie below the
        line; the needles themselves move the other way. The ground beneath is not known.
      </p>
    </div>
  );
}

function Miles(props: {
  far: number;
  near: number;
  pxPerMile: number;
  l: { x: (nm: number) => number; axis: number; left: number; right: number };
}) {
  const { far, near, pxPerMile, l } = props;
  const step = [1, 2, 5].find((nm) => nm * pxPerMile >= 22) ?? 10;
  return (
    <g>
      <path class="axis" d={line(l.left, l.axis, l.right, l.axis)} />
      {ticksWithin(Math.min(0, near), far, step).map((nm) => (
        <g key={nm}>
          <path class="axis" d={line(l.x(nm), l.axis, l.x(nm), l.axis + 4)} />
          <text class="lab" x={l.x(nm)} y={l.axis + 18} text-anchor="middle">
            {nm}
          </text>
        </g>
      ))}
      <text class="lab-i" x={0} y={l.axis + 34}>
        NM to the threshold
      </text>
    </g>
  );
}
