/** Places on a profile: the final fix, the gates, the decision altitude, the lowest point, and where the climb began. */
import type { ProfileLayout } from "./approachLayout.ts";
import type { ApproachWindow, UprightHeights } from "./approachWindow.ts";
import { type ApproachFacts, type ApproachSeries, count } from "./contract.ts";
import { rowAt } from "./cursor.ts";
import { line } from "./path.ts";

interface Props {
  readonly facts: ApproachFacts;
  readonly series: ApproachSeries;
  readonly heights: UprightHeights;
  readonly window: ApproachWindow;
  readonly l: ProfileLayout;
  readonly narrow: boolean;
}

/** The uprights at the gates, beneath everything: the words of the ground keep clear of them by their halo. */
export function GateUprights({ facts, l, window }: Pick<Props, "facts" | "l" | "window">) {
  return (
    <g>
      {facts.gates.map(({ heightFt, distanceNm }) => {
        if (distanceNm === null || distanceNm > window.farNm) return null;
        const x = l.x(distanceNm);
        return (
          <g key={heightFt}>
            <path class="gate" d={line(x, l.y(heightFt) - 26, x, l.profile.bottom)} />
            <path class="gate thin" d={line(x, l.lateral.top, x, l.axis)} />
          </g>
        );
      })}
    </g>
  );
}

export function ProfileMarks(props: Props) {
  return (
    <g>
      <FinalFix {...props} />
      <Gates {...props} />
      <Minimum {...props} />
      <Lowest {...props} />
      <ClimbAway {...props} />
    </g>
  );
}

function FinalFix({ facts, l, heights, window }: Props) {
  const { finalFix } = facts;
  if (!finalFix || finalFix.distanceNm > window.farNm) return null;
  const x = l.x(finalFix.distanceNm);
  const { altitudeFt } = finalFix;
  const y = altitudeFt === null ? null : l.y(altitudeFt - heights.elevationFt);
  return (
    <>
      <path class="gate thin" d={line(x, l.profile.top, x, l.profile.bottom)} />
      {y !== null && <path class="gate" d={line(x - 12, y, x + 12, y)} />}
      <text class="lab b halo" x={x + 5} y={l.profile.bottom - 14}>
        {finalFix.ident}
        {altitudeFt !== null && `, ${count(altitudeFt)} ft`}
      </text>
    </>
  );
}

function Gates({ facts, l, window, narrow }: Props) {
  return (
    <>
      {facts.gates.map(({ heightFt, distanceNm }) => {
        if (distanceNm === null || distanceNm > window.farNm) return null;
        const [x, y] = [l.x(distanceNm), l.y(heightFt)];
        return (
          <g key={heightFt}>
            <path class="gate" d={line(x - 12, y, x + 12, y)} />
            <text class="lab-i halo" x={x + 4} y={y - 28}>
              {narrow ? `${count(heightFt)} ft` : `gate ${count(heightFt)} ft`}
            </text>
          </g>
        );
      })}
    </>
  );
}

/** The minimum at the right edge: a decision altitude with its level, a minimum descent altitude beside its coast. */
function Minimum({ facts, l, heights, narrow }: Props) {
  const { minimum } = facts;
  if (!minimum) return null;
  const y = l.y(minimum.altitudeFt - heights.elevationFt);
  const isDecision = minimum.kind === "decision";
  const from = minimum.passedNm === null ? l.x(1) : l.x(minimum.passedNm);
  const name = isDecision ? "decision" : "minimum";
  const feet = `${count(minimum.altitudeFt)} ft`;
  const level = isDecision && <path class="gate" d={line(from - 8, y, narrow ? l.right : l.right + 4, y)} />;
  // without room at the edge: over the level, or before the coast
  const words: readonly (readonly [text: string, x: number, y: number])[] = !narrow
    ? [
        [name, l.right + 6, y - 2],
        [feet, l.right + 6, y + 11],
      ]
    : isDecision
      ? [
          [name, l.right, y - 19],
          [feet, l.right, y - 6],
        ]
      : [[`min. ${feet}`, from - 10, y + 12]];
  return (
    <>
      {level}
      {words.map(([text, x, at]) => (
        <text key={text} class="lab-i halo" x={x} y={at} text-anchor={narrow ? "end" : "start"}>
          {text}
        </text>
      ))}
    </>
  );
}

/** How far below the minimum, where it was: as a dimension down from it. */
function Lowest({ facts, series, l, heights }: Props) {
  const { minimum } = facts;
  if (minimum?.kind !== "descent" || minimum.marginFt === null || minimum.lowestFt === null) return null;
  const row = minimum.lowestUtc === null ? null : rowAt(series.timeMs, Date.parse(minimum.lowestUtc));
  if (minimum.marginFt >= 0 || row === null) return null;
  const limit = l.y(minimum.altitudeFt - heights.elevationFt);
  const lowest = l.y(minimum.lowestFt - heights.elevationFt);
  const x = l.x(series.distanceToThresholdNm[row]);
  return (
    <>
      <path class="dim" d={line(x, limit, x, lowest)} />
      <circle class="ringed outer" cx={x} cy={lowest} r={3.2} />
      <text class="lab out halo" x={x} y={lowest + 17} text-anchor="middle">
        {count(-minimum.marginFt)} ft below
      </text>
    </>
  );
}

function ClimbAway({ facts, l, heights, window }: Props) {
  const { missed } = facts;
  // nobody saw where a climb was begun in a silence
  if (!missed || missed.silence || missed.distanceNm > window.farNm || missed.distanceNm < window.nearNm)
    return null;
  const [x, y] = [l.x(missed.distanceNm), l.y(missed.altitudeFt - heights.elevationFt)];
  return <circle class="ringed" cx={x} cy={y} r={3.6} />;
}
