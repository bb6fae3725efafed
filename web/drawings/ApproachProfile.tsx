/** An approach from the side, with the needles and the rate of descent beneath, on one axis of miles to the threshold. */
import { useId, useMemo, useRef } from "preact/hooks";
import { ApproachStrips } from "./ApproachStrips.tsx";
import { profileLayout, profileMargins } from "./approachLayout.ts";
import { leadsOn, rowAtDistance, stretchesAlong } from "./approachStretches.ts";
import { approachWindow, uprightHeights } from "./approachWindow.ts";
import { CursorUpright } from "./CursorUpright.tsx";
import { type ApproachRecord, type ApproachSeries, count } from "./contract.ts";
import { type Cursor, rowAt } from "./cursor.ts";
import { Drawing } from "./Drawing.tsx";
import { floors } from "./floors.ts";
import { JudgedLine } from "./JudgedLine.tsx";
import { LeadMarks, leadWords } from "./LeadMarks.tsx";
import { MarkedWay } from "./MarkedWay.tsx";
import { PointedAlong } from "./PointedAlong.tsx";
import { HeightAxis, MileAxis } from "./ProfileAxes.tsx";
import { ProfileGround } from "./ProfileGround.tsx";
import { GateUprights, ProfileMarks, placeWords } from "./ProfileMarks.tsx";
import { profileWords } from "./profileWords.ts";
import { tickStep, ticksWithin } from "./rows.ts";
import { DoubtBand, stripY } from "./Strip.tsx";
import { fixedScales } from "./scale.ts";
import { silenceWords } from "./silences.ts";
import { surroundings } from "./surroundings.ts";
import { useDrawnWidth } from "./useWidth.ts";
import type { Point } from "./windGeometry.ts";
import { millimetreText } from "./words.ts";

const HEIGHT_TICK_FT = 500;

export function ApproachProfile(props: { exercise: ApproachRecord; series: ApproachSeries; cursor: Cursor }) {
  const { exercise, series, cursor } = props;
  const box = useRef<HTMLDivElement>(null);
  const width = useDrawnWidth(box);
  const { narrow } = surroundings().value;
  const clip = useId();
  const stretches = useMemo(() => stretchesAlong(series), [series]);
  const { facts } = exercise;
  if (!facts || width === 0) return <div class="approach-profile" ref={box} />;
  const scales = fixedScales(narrow);
  const { left, right } = profileMargins(narrow);
  const window = approachWindow(facts, series, width - left - right, scales);
  const l = profileLayout(window, scales, narrow, {
    glidePath: facts.glidePath !== null,
    times: Number.isFinite(series.timeMs[0]),
  });
  const heights = uprightHeights(facts, series);
  const words = profileWords({
    ...{ facts, series, heights, l, narrow },
    floors: floors(facts, window),
    taken: placeWords({ facts, l, heights, window, narrow }),
  });
  const { distanceToThresholdNm: distance, height95Ft } = series;
  const points = (from: number, to: number, y: (row: number) => number): Point[] =>
    Array.from({ length: to - from }, (_, k) => [l.x(distance[from + k]), y(from + k)]);
  // the way back would be marked over the way in
  const leadingOn = (y: (row: number) => number) =>
    points(0, distance.length, (row) => (leadsOn(series, row) ? y(row) : Number.NaN));
  const flownY = (row: number) => l.y(heights.column[row]);
  const inside = (row: number) => distance[row] <= window.farNm && distance[row] >= window.nearNm;
  const shown = (facts.excursions ?? []).filter(({ trackOffUtc }) => {
    const row = rowAt(series.timeMs, Date.parse(trackOffUtc));
    return row !== null && inside(row);
  });
  const title = heights.aboveThreshold
    ? `Height above the threshold${narrow ? "" : ` (at ${count(heights.elevationFt)} ft)`}, ft`
    : "Altitude as logged, ft";
  const mileStep = tickStep(window.pxPerMile, 22, [1, 2, 5, 10]);
  const mile = millimetreText(window.mmPerMile);
  const isFixed = window.mmPerMile === scales.mmPerMileOfProfile;
  return (
    <div class="approach-profile" ref={box}>
      <PointedAlong
        cursor={cursor}
        timeMs={series.timeMs}
        plot={l}
        rowAt={(px) => rowAtDistance(series, window.farNm - px / window.pxPerMile)}
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
          <HeightAxis
            {...{ title, left: l.left, ...l.profile, y: l.y }}
            ticks={ticksWithin(window.bottomFt, window.topFt, HEIGHT_TICK_FT)}
          />
          <g clip-path={`url(#${clip})`}>
            {stretches
              .filter(({ unseen }) => !unseen)
              .map(({ from, to }) => (
                <DoubtBand
                  key={from}
                  upper={points(from, to, (row) => l.y(heights.column[row] + height95Ft[row]))}
                  lower={points(from, to, (row) => l.y(heights.column[row] - height95Ft[row]))}
                />
              ))}
          </g>
          <GateUprights {...{ facts, window, l }} />
          <ProfileGround {...{ exercise, series, heights, window, l, clip, narrow, words }} />
          <g clip-path={`url(#${clip})`}>
            <JudgedLine stretches={stretches} point={(row) => [l.x(distance[row]), flownY(row)]} />
            {[flownY, (row: number) => stripY(l.lateral, series.needle[row])].map((y, k) => (
              <MarkedWay key={k} cursor={cursor} timeMs={series.timeMs} points={leadingOn(y)} />
            ))}
          </g>
          <ProfileMarks {...{ facts, series, heights, window, l, narrow, words }} />
          <ApproachStrips {...{ exercise, series, stretches, l, clip, narrow, points }} />
          <LeadMarks
            excursions={shown}
            timeMs={series.timeMs}
            off={(row) => [l.x(distance[row]), stripY(l.lateral, series.needle[row])]}
            zero={{ off: stripY(l.lateral, 0) }}
          />
          <MileAxis
            words="NM to the threshold"
            {...{ left: l.left, right: l.right, axis: l.axis, x: l.x }}
            ticks={ticksWithin(Math.min(0, window.nearNm), window.farNm, mileStep)}
          />
          <CursorUpright
            cursor={cursor}
            timeMs={series.timeMs}
            xOf={(row) => (inside(row) ? l.x(distance[row]) : Number.NaN)}
            top={l.profile.top - 4}
            bottom={l.axis}
            ringsAt={(row) => [flownY(row), stripY(l.lateral, series.needle[row])]}
          />
        </Drawing>
      </PointedAlong>
      <p class="drawing-scale">
        {isFixed ? "Fixed scale:" : <b>Too long for the fixed scale:</b>} 1 NM = {mile}, 1,000 ft ={" "}
        {scales.mmPerThousandFeet} mm, full needle = {scales.mmPerFullScaleOfStrip} mm. Thick: the final that
        is judged. Grey: the doubt of the height (95 %), a needle under a quarter.
        {facts.missed && " Ring: the climb away begins."} Right of course and below the path lie below the
        line; the needles themselves move the other way. The ground beneath is not known.
        {leadWords(shown, "the needle at a quarter")}
        {silenceWords(series.timeMs)}
      </p>
    </div>
  );
}
