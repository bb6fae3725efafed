/** Places on a profile: the final fix, the gates, the decision altitude, the lowest point, and where the climb began. */
import type { ProfileLayout } from "./approachLayout.ts";
import type { ApproachWindow, UprightHeights } from "./approachWindow.ts";
import type { Words } from "./clearPlace.ts";
import { type ApproachFacts, type ApproachSeries, count } from "./contract.ts";
import { line } from "./path.ts";
import type { ProfileWords } from "./profileWords.ts";

interface Props {
  readonly facts: ApproachFacts;
  readonly series: ApproachSeries;
  readonly heights: UprightHeights;
  readonly window: ApproachWindow;
  readonly l: ProfileLayout;
  readonly narrow: boolean;
  readonly words: ProfileWords;
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
      <GoneBelow {...props} />
      <ClimbAway {...props} />
    </g>
  );
}

type Placed = Pick<Props, "facts" | "l" | "heights" | "window" | "narrow">;

const fixWords = ({ facts: { finalFix }, l, window }: Placed): Words | null =>
  finalFix && finalFix.distanceNm <= window.farNm
    ? {
        text: `${finalFix.ident}${finalFix.altitudeFt === null ? "" : `, ${count(finalFix.altitudeFt)} ft`}`,
        ...{ x: l.x(finalFix.distanceNm) + 5, y: l.profile.bottom - 14, anchor: "start" },
      }
    : null;

const gateWords = ({ facts, l, window, narrow }: Placed): Words[] =>
  facts.gates.flatMap(({ heightFt, distanceNm }): Words[] => {
    if (distanceNm === null || distanceNm > window.farNm) return [];
    const text = narrow ? `${count(heightFt)} ft` : `gate ${count(heightFt)} ft`;
    return [{ text, x: l.x(distanceNm) + 4, y: l.y(heightFt) - 28, anchor: "start" }];
  });

function minimumAt({ facts: { minimum }, l, heights }: Placed) {
  if (!minimum) return null;
  const from = l.x(minimum.passedNm ?? 1);
  return { minimum, from, y: l.y(minimum.altitudeFt - heights.elevationFt) };
}

/** Without room at the edge: over the level, or before the coast. */
function minimumWords(props: Placed): Words[] {
  const at = minimumAt(props);
  if (!at) return [];
  const { minimum, from, y } = at;
  const { right } = props.l;
  const isDecision = minimum.kind === "decision";
  const [name, feet] = [isDecision ? "decision" : "minimum", `${count(minimum.altitudeFt)} ft`];
  if (!props.narrow)
    return [
      { text: name, x: right + 6, y: y - 2, anchor: "start" },
      { text: feet, x: right + 6, y: y + 11, anchor: "start" },
    ];
  if (!isDecision) return [{ text: `min. ${feet}`, x: from - 10, y: y + 12, anchor: "end" }];
  return [
    { text: name, x: right, y: y - 19, anchor: "end" },
    { text: feet, x: right, y: y - 6, anchor: "end" },
  ];
}

/** The words at places, which have no other room. */
export function placeWords(at: Placed): Words[] {
  const fix = fixWords(at);
  return [...(fix ? [fix] : []), ...gateWords(at), ...minimumWords(at)];
}

function FinalFix(props: Props) {
  const { facts, l, heights } = props;
  const { finalFix } = facts;
  const words = fixWords(props);
  if (!finalFix || !words) return null;
  const x = l.x(finalFix.distanceNm);
  const { altitudeFt } = finalFix;
  const y = altitudeFt === null ? null : l.y(altitudeFt - heights.elevationFt);
  return (
    <>
      <path class="gate thin" d={line(x, l.profile.top, x, l.profile.bottom)} />
      {y !== null && <path class="gate" d={line(x - 12, y, x + 12, y)} />}
      <text class="lab b halo" x={words.x} y={words.y}>
        {words.text}
      </text>
    </>
  );
}

function Gates(props: Props) {
  const { facts, l, window } = props;
  return (
    <>
      {facts.gates.map(({ heightFt, distanceNm }) => {
        if (distanceNm === null || distanceNm > window.farNm) return null;
        const [x, y] = [l.x(distanceNm), l.y(heightFt)];
        return <path key={heightFt} class="gate" d={line(x - 12, y, x + 12, y)} />;
      })}
      {gateWords(props).map(({ text, x, y }) => (
        <text key={text} class="lab-i halo" x={x} y={y}>
          {text}
        </text>
      ))}
    </>
  );
}

/** The minimum at the right edge: a decision altitude with its level, a minimum descent altitude beside its coast. */
function Minimum(props: Placed) {
  const { facts, l, narrow } = props;
  const at = minimumAt(props);
  const level = facts.minimum?.kind === "decision" && at && (
    <path class="gate" d={line(at.from - 8, at.y, narrow ? l.right : l.right + 4, at.y)} />
  );
  return (
    <>
      {level}
      {minimumWords(props).map(({ text, x, y, anchor }) => (
        <text key={text} class="lab-i halo" x={x} y={y} text-anchor={anchor}>
          {text}
        </text>
      ))}
    </>
  );
}

/** How far below a limit, where it was lowest: as a dimension down from it, in the colour of what is out where that is beyond doubt. */
function GoneBelow({ words }: Props) {
  return (
    <>
      {words.below.map(({ x, limitY, lowestY, sure, words: { text, anchor, ...at } }) => (
        <g key={text}>
          <path class={sure ? "dim" : "gate"} d={line(x, limitY, x, lowestY)} />
          <circle class={sure ? "ringed outer" : "ringed"} cx={x} cy={lowestY} r={3.2} />
          <text class={sure ? "lab out halo" : "lab halo"} {...at} text-anchor={anchor}>
            {text}
          </text>
        </g>
      ))}
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
