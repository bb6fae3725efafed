/** What a profile is held against: the glide path with its limits, or heights not to be gone below, and the minimum. */
import type { ProfileLayout } from "./approachLayout.ts";
import { leadsOn } from "./approachStretches.ts";
import type { ApproachWindow, UprightHeights } from "./approachWindow.ts";
import {
  type ApproachFacts,
  type ApproachRecord,
  type ApproachSeries,
  METRES_PER_FOOT,
  nauticalMilesFromMetres,
  THRESHOLD_CROSSING,
} from "./contract.ts";
import { floors } from "./floors.ts";
import { needleLimit } from "./needleLimit.ts";
import { line, pathThrough } from "./path.ts";
import { Coast } from "./planSigns.tsx";
import type { ProfileWords } from "./profileWords.ts";
import { LevelCoast } from "./Strip.tsx";
import type { Point } from "./windGeometry.ts";

interface Props {
  readonly exercise: ApproachRecord;
  readonly series: ApproachSeries;
  readonly heights: UprightHeights;
  readonly window: ApproachWindow;
  readonly l: ProfileLayout;
  readonly clip: string;
  readonly narrow: boolean;
  readonly words: ProfileWords;
}

export function ProfileGround(props: Props) {
  const { facts } = props.exercise;
  if (!facts) return null;
  const all = floors(facts, props.window);
  return (
    <g>
      <Runway facts={facts} {...props} />
      <g clip-path={`url(#${props.clip})`}>
        {facts.glidePath && <GlidePath {...props} />}
        {all.map(({ fromNm, toNm, altitudeFt }) => (
          <LevelCoast
            key={fromNm}
            x1={props.l.x(fromNm)}
            x2={props.l.x(toNm)}
            y={props.l.y(altitudeFt - props.heights.elevationFt)}
            far={1}
          />
        ))}
        <FromMinimum facts={facts} {...props} />
      </g>
      {props.words.floors.map(({ text, x, y, anchor }) => (
        <text key={`${x} ${y}`} class="lab-i halo" x={x} y={y} text-anchor={anchor}>
          {text}
        </text>
      ))}
    </g>
  );
}

function Runway({ facts, l, heights }: Props & { facts: ApproachFacts }) {
  if (!heights.aboveThreshold) return null;
  const y = l.y(0);
  const end = Math.min(l.right, l.x(-nauticalMilesFromMetres(facts.runway.lengthFt * METRES_PER_FOOT)));
  return (
    <>
      <path class="hair" d={line(l.left, y, l.right, y)} />
      <rect class="runway" x={l.x(0)} y={y - 2} width={end - l.x(0)} height={4} />
    </>
  );
}

/** The path and its limits as they stand over each row of the way in. */
function GlidePath({ exercise, series, heights, l, window }: Props) {
  const limit = needleLimit(exercise.verdicts, "approach-glide-path");
  const { glidePathDeviationFt: off, glidePathFullScaleFt: full, distanceToThresholdNm: distance } = series;
  const rows: number[] = [];
  let last = Number.POSITIVE_INFINITY;
  // a tenth of a mile apart, nearer and nearer: the path is all but straight
  for (let i = 0; i < distance.length; i++) {
    const known = Number.isFinite(off[i]) && distance[i] <= window.farNm + 1;
    if (!known || !leadsOn(series, i) || distance[i] > last - 0.1) continue;
    rows.push(i);
    last = distance[i];
  }
  const at = (share: number): Point[] =>
    rows.map((i) => [l.x(distance[i]), l.y(heights.column[i] - off[i] + share * full[i])]);
  const [upper, lower] = [at(limit), at(-limit)];
  const ends = (points: Point[]): readonly [Point, Point] | null =>
    points.length > 1 ? [points[0], points[points.length - 1]] : null;
  const [above, below] = [ends(upper), ends(lower)];
  return (
    <>
      <path class="course" d={pathThrough(at(0))} />
      {above && <Coast from={above[0]} to={above[1]} side={-1} />}
      {below && <Coast from={below[0]} to={below[1]} side={1} />}
    </>
  );
}

/** From the minimum down to the threshold as it would fit: it begins at the visual descent point. */
function FromMinimum({ facts, heights, l }: Props & { facts: ApproachFacts }) {
  const point = facts.descent?.visualDescentPointNm;
  if (facts.minimum?.kind !== "descent" || typeof point !== "number" || !heights.aboveThreshold) return null;
  const start = l.y(facts.minimum.altitudeFt - heights.elevationFt);
  return <path class="solved" d={line(l.x(point), start, l.x(0), l.y(THRESHOLD_CROSSING))} />;
}
