/** What stands on the plan of an approach beside its lines: the runway, where it was joined and left, the heading that holds it, and the wind. */
import type { ApproachPlanFrame } from "./approachPlanFrame.ts";
import {
  type ApproachFacts,
  type ApproachRecord,
  type ApproachSeries,
  flownDirection,
  isFull,
  METRES_PER_FOOT,
  nauticalMilesFromMetres,
  windLabel,
  windName,
} from "./contract.ts";
import { rowAt } from "./cursor.ts";
import { line } from "./path.ts";
import { NorthArrow } from "./planSigns.tsx";
import { WindSign } from "./WindArrow.tsx";
import { onPaper, type Point } from "./windGeometry.ts";

export function RunwaySign({ facts, frame }: { facts: ApproachFacts; frame: ApproachPlanFrame }) {
  const { ident, lengthFt } = facts.runway;
  const [x, y] = frame.place(0, 0);
  const [, end] = frame.place(0, -nauticalMilesFromMetres(lengthFt * METRES_PER_FOOT));
  return (
    <>
      <rect class="runway" x={x - 2.6} y={end} width={5.2} height={y - end} />
      {ident && (
        <text class="lab b halo" x={x - 9} y={(y + end) / 2 + 4} text-anchor="end">
          {ident}
        </text>
      )}
    </>
  );
}

/** Rings where the final was joined and where the climb away began. */
export function Joined(props: {
  facts: ApproachFacts;
  series: ApproachSeries;
  points: readonly Point[];
  frame: ApproachPlanFrame;
}) {
  const { facts, series, points, frame } = props;
  const { intercept, missed } = facts;
  const marks = [
    ...(intercept
      ? [
          {
            utc: intercept.joinedUtc,
            words: ["established,", `cut ${Math.round(Math.abs(intercept.angleDeg))}°`],
          },
        ]
      : []),
    ...(missed && !missed.silence ? [{ utc: missed.startUtc, words: ["climbs away"] }] : []),
  ];
  const right = frame.place(frame.rightNm, 0)[0];
  return (
    <>
      {marks.map(({ utc, words }) => {
        const row = rowAt(series.timeMs, Date.parse(utc));
        const distance = row === null ? Number.NaN : series.distanceToThresholdNm[row];
        if (row === null || !(distance <= frame.farNm && distance >= frame.nearNm)) return null;
        const [x, y] = points[row];
        return (
          <g key={utc}>
            <circle class="ringed" cx={x} cy={y} r={3.6} />
            {words.map((text, k) => (
              <text key={text} class="lab-i halo" x={right + 8} y={y + 4 + 15 * k}>
                {text}
              </text>
            ))}
          </g>
        );
      })}
    </>
  );
}

/** The heading that holds the final in its wind, as a stroke of this length on the course, px. */
const NOSE_PX = 64;
/** Where it stands: so far before the threshold, as a share of the way from the fix. */
const NOSE_SHARE = 0.62;

export function Nose({ exercise, frame }: { exercise: ApproachRecord; frame: ApproachPlanFrame }) {
  const { facts, whatWouldHaveWorked: worked } = exercise;
  if (!facts || worked?.headingTrueDeg == null || worked.windCorrectionDeg === null) return null;
  const [x, y] = frame.place(0, (facts.finalFix?.distanceNm ?? 5) * NOSE_SHARE);
  const [ux, uy] = onPaper(worked.windCorrectionDeg, 0);
  const right = frame.place(frame.rightNm, 0)[0];
  return (
    <>
      <path class="solved" d={line(x, y, x + ux * NOSE_PX, y + uy * NOSE_PX)} />
      {["nose on", `${flownDirection(worked.headingTrueDeg, worked.headingMagneticDeg)}`, "holds it"].map(
        (text, k) => (
          <text key={text} class="lab sol halo" x={right + 8} y={y - 30 + 15 * k}>
            {text}
          </text>
        ),
      )}
    </>
  );
}

/** Wind, course and north, over the plan. */
export function Head({ facts, width }: { facts: ApproachFacts; width: number }) {
  const { wind, finalCourseTrueDeg: course } = facts;
  const words = wind
    ? isFull(wind)
      ? `from ${windLabel(wind)}`.split(/ (?=\d+ kt)/)
      : [windLabel(wind)]
    : ["wind not known"];
  return (
    <g>
      {wind && (
        <g>
          <title>{windName(wind)}</title>
          <WindSign wind={wind} upTrueDeg={course} trackTrueDeg={course} x={26} y={30} />
        </g>
      )}
      {words.map((text, k) => (
        <text key={text} class="lab wi halo" x={58} y={16 + 15 * k}>
          {text}
        </text>
      ))}
      <text class="lab-i halo" x={58} y={16 + 15 * words.length}>
        up: {flownDirection(course, facts.finalCourseMagneticDeg)}
      </text>
      <NorthArrow x={width - 30} y={30} upTrueDeg={course} />
    </g>
  );
}
