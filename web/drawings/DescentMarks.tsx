/** Places on the profile of a descent: the height wanted and how it was crossed, where it began, and where it should have. */
import { heightOnConstant } from "./constantDescent.ts";
import { count, type DescentFacts, type DescentRecord, type DescentSeries } from "./contract.ts";
import type { DescentLayout } from "./descentLayout.ts";
import { apart } from "./holdGeometry.ts";
import { line, pathThrough } from "./path.ts";
import { LevelCoast } from "./Strip.tsx";
import type { Point } from "./windGeometry.ts";

/** A hundred feet: what the test standards that name a crossing height allow; drawn where none is named. */
const USUAL_LIMIT_FT = 100;
/** Half the length of the coasts about the height wanted, px. */
const GATE_PX = 22;
/** Least room for the name of a constant descent, px. */
const NAME_PX = 80;

interface Props {
  readonly exercise: DescentRecord;
  readonly facts: DescentFacts;
  readonly series: DescentSeries;
  readonly l: DescentLayout;
  readonly clip: string;
  readonly narrow: boolean;
}

export function DescentMarks(props: Props) {
  return (
    <g>
      <Constants {...props} />
      <Wanted {...props} />
      <Began {...props} />
      <Crossing {...props} />
    </g>
  );
}

const NAMES: Readonly<Record<string, string>> = { "as-flown": "rate flown", "usual-gradient": "3°" };

/** Each with its name on top and a leader to where it begins. */
function Constants({ facts, series, l, clip }: Props) {
  const { distanceToGoNm: toGo } = series;
  const shown = facts.constant
    .flatMap((constant) => {
      const points = Array.from(
        toGo,
        (nm, row): Point => [l.x(nm), l.y(heightOnConstant(constant, facts, series, row))],
      );
      const start = points.find(([, y]) => Number.isFinite(y));
      const rate = constant.downFpm === null ? "" : `${count(Math.round(constant.downFpm / 10) * 10)} ft/min`;
      const words = constant.basis === "usual-rate" ? rate : NAMES[constant.basis];
      return start ? [{ points, start, words }] : [];
    })
    .sort((a, b) => a.start[0] - b.start[0]);
  const names = apart(
    shown.map(({ start }) => start[0]),
    NAME_PX,
  );
  return (
    <>
      {shown.map(({ points, start, words }, k) => (
        <g key={words}>
          <path class="solved" clip-path={`url(#${clip})`} d={pathThrough(points)} />
          <path class="radius" d={line(names[k], l.top - 16, start[0], start[1])} />
          <text class="lab sol halo" x={names[k]} y={l.top - 20}>
            {words}
          </text>
        </g>
      ))}
    </>
  );
}

function Wanted({ exercise, facts, l, narrow }: Props) {
  const limit =
    exercise.verdicts.find(({ criterion }) => criterion === "descent-height")?.limit ?? USUAL_LIMIT_FT;
  const [x, y, fix] = [l.x(0), l.y(facts.toFt), l.x(-facts.beforeNm)];
  return (
    <>
      <path class="gate thin" d={line(x, l.top, x, l.axis)} />
      <LevelCoast x1={x - GATE_PX} x2={x + GATE_PX} y={l.y(facts.toFt + limit)} far={-1} />
      <LevelCoast x1={x - GATE_PX} x2={x + GATE_PX} y={l.y(facts.toFt - limit)} far={1} />
      <path class="gate" d={line(x - GATE_PX, y, narrow ? l.right : l.right + 4, y)} />
      <text
        class="lab-i halo"
        x={narrow ? x - GATE_PX - 6 : l.right + 7}
        y={narrow ? y + 2 : y + 4}
        text-anchor={narrow ? "end" : "start"}
      >
        {count(facts.toFt)} ft
      </text>
      {facts.beforeNm > 0 && <path class="gate" d={line(fix, l.bottom - 30, fix, l.bottom)} />}
      <text
        class="lab b halo"
        x={narrow ? Math.min(fix, x - GATE_PX) - 5 : fix + 5}
        y={l.bottom - 6}
        text-anchor={narrow ? "end" : "start"}
      >
        {facts.fix}
      </text>
    </>
  );
}

function Began({ facts, l }: Props) {
  const { began } = facts;
  if (!began || began.silence || began.toGoNm > l.farNm) return null;
  const [x, y] = [l.x(began.toGoNm), l.y(began.altitudeFt)];
  return (
    <>
      <circle class="ringed" cx={x} cy={y} r={3.6} />
      <text class="lab-i halo" x={x + 7} y={y - 7}>
        begun
      </text>
    </>
  );
}

/** How far off the height wanted, at the point. */
function Crossing({ facts, l, narrow }: Props) {
  const { crossing } = facts;
  if (!crossing) return null;
  const [x, y] = [l.x(0), l.y(crossing.altitudeFt)];
  // to 10 ft, as the words have it
  const off = Math.round(crossing.overFt / 10) * 10;
  if (crossing.silentS != null)
    return (
      <text class="lab-i halo" x={narrow ? l.right : x + 8} y={y - 9} text-anchor={narrow ? "end" : "start"}>
        not seen
      </text>
    );
  return (
    <>
      <path class="dim" d={line(x, l.y(facts.toFt), x, y)} />
      <circle class="ringed outer" cx={x} cy={y} r={3.4} />
      {off !== 0 && (
        <text
          class="lab out halo"
          x={narrow ? l.right : x + 8}
          y={y + (off > 0 ? -9 : 16)}
          text-anchor={narrow ? "end" : "start"}
        >
          {count(Math.abs(off))} ft {off > 0 ? "above" : "below"}
        </text>
      )}
    </>
  );
}
