/** What would have worked on a course, drawn on its plan: the heading that holds it, and the cut that rejoins it. */
import type { CourseRecord, CourseSeries } from "./contract.ts";
import { flownHeading } from "./contract.ts";
import { rowAt } from "./cursor.ts";
import { line } from "./path.ts";
import type { Point } from "./windGeometry.ts";

/** Length of the stroke that shows the nose, px. */
const NOSE_PX = 64;

/** The words stand under the name of the course, clear of the lines. */
const WORDS_X = 84;

interface Props {
  readonly exercise: CourseRecord;
  readonly series: CourseSeries;
  readonly place: (alongNm: number, acrossNm: number) => Point;
  /** Where along the nose is shown. */
  readonly noseAtNm: number;
}

const degrees = (size: number): string => `${Math.abs(Math.round(size))}°`;

export function WorkedWay({ exercise, series, place, noseAtNm }: Props) {
  const { facts, whatWouldHaveWorked: worked } = exercise;
  if (!facts || !worked) return null;
  const { rejoin, windCorrectionDeg: correction } = worked;
  const [x, y] = place(noseAtNm, 0);
  const angle = (correction * Math.PI) / 180;
  const { variation } = facts;
  const row = rejoin && rowAt(series.timeMs, Date.parse(rejoin.fromUtc));
  return (
    <g>
      <path class="solved" d={line(x, y, x + NOSE_PX * Math.cos(angle), y + NOSE_PX * Math.sin(angle))} />
      <text class="lab sol halo" x={WORDS_X} y={37}>
        nose on {flownHeading(worked.headingTrueDeg, variation)} holds it
      </text>
      {rejoin && row !== null && (
        <Rejoin
          from={place(series.alongNm[row], series.crossTrackNm[row])}
          to={place(series.alongNm[row] + rejoin.distanceNm, 0)}
          words={`from the ring ${degrees(rejoin.cutDeg)} back on ${flownHeading(rejoin.headingTrueDeg, variation)}, ${rejoin.distanceNm.toFixed(1)} NM`}
        />
      )}
    </g>
  );
}

function Rejoin({ from, to, words }: { from: Point; to: Point; words: string }) {
  return (
    <>
      <path class="solved" d={line(...from, ...to)} />
      <circle class="moment" cx={from[0]} cy={from[1]} r={3} />
      <text class="lab sol halo" x={WORDS_X} y={54}>
        {words}
      </text>
    </>
  );
}
