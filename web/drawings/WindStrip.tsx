/** The wind of each leg under its span of a course chart, turned with the course to the right. */

import { type DocumentLeg, windLabel, windName } from "./contract.ts";
import { Drawing } from "./Drawing.tsx";
import { line } from "./path.ts";
import { WindSign } from "./WindArrow.tsx";

const HEIGHT_PX = 122;
const ARROW_Y = 60;
const BRACKET_Y = 92;
/** An arrow needs so much room, a label so much, px. */
const LEAST_ARROW_PX = 22;
const LEAST_LABEL_PX = 78;
const LEAST_DOUBT_PX = 146;

export interface StripLeg {
  readonly leg: DocumentLeg;
  readonly x1: number;
  readonly x2: number;
}

/** The straight legs inside a span of time, with their places in px; turns, and legs too short to draw, are left out. */
function stripLegs(legs: readonly DocumentLeg[], from: number, to: number, pxPerMs: number): StripLeg[] {
  return legs
    .filter((leg) => leg.kind === "straight")
    .map((leg) => ({
      leg,
      x1: (Math.max(from, Date.parse(leg.startUtc)) - from) * pxPerMs,
      x2: (Math.min(to, Date.parse(leg.endUtc)) - from) * pxPerMs,
    }))
    .filter(({ x1, x2 }) => x2 - x1 >= LEAST_ARROW_PX);
}

export function WindStrip(props: {
  legs: readonly DocumentLeg[];
  from: number;
  to: number;
  pxPerMs: number;
  left: number;
  width: number;
  courseTrueDeg: number;
}) {
  const { legs, from, to, pxPerMs, left, width, courseTrueDeg } = props;
  const shown = stripLegs(legs, from, to, pxPerMs);
  if (shown.length === 0) return null;
  const name = `Wind on each leg, drawn with the course to the right: ${shown.map(({ leg }) => windName(leg.wind)).join("; ")}`;
  return (
    <Drawing kind="wind-strip" name={name} width={width} height={HEIGHT_PX}>
      <text class="lab b" x="0" y="13">
        {width < 500
          ? "Wind on each leg"
          : "Wind on each leg, drawn with the course to the right; 10 kt = 5 mm"}
      </text>
      {shown.map(({ leg, x1, x2 }) => (
        <g key={leg.startUtc} transform={`translate(${left} 0)`}>
          <path class="axis" d={line(x1 + 1, BRACKET_Y, x2 - 1, BRACKET_Y)} />
          <path class="axis" d={line(x1 + 1, BRACKET_Y - 4, x1 + 1, BRACKET_Y)} />
          <path class="axis" d={line(x2 - 1, BRACKET_Y - 4, x2 - 1, BRACKET_Y)} />
          <WindSign
            wind={leg.wind}
            upTrueDeg={courseTrueDeg - 90}
            trackTrueDeg={leg.trackTrueDeg}
            x={(x1 + x2) / 2}
            y={ARROW_Y}
          />
          {x2 - x1 >= LEAST_LABEL_PX && (
            <text class="lab wi" x={(x1 + x2) / 2} y={BRACKET_Y + 15} text-anchor="middle">
              {windLabel(leg.wind)}
            </text>
          )}
          {x2 - x1 >= LEAST_DOUBT_PX && (
            <text class="lab" x={(x1 + x2) / 2} y={BRACKET_Y + 29} text-anchor="middle">
              {doubtText(leg)}
            </text>
          )}
        </g>
      ))}
    </Drawing>
  );
}

function doubtText({ wind }: DocumentLeg): string {
  if (wind.knowledge === "full" && wind.along95Kt !== null && wind.across95Kt !== null) {
    return `± ${wind.along95Kt.toFixed(1)} along, ${wind.across95Kt.toFixed(1)} across`;
  }
  if (wind.knowledge === "along" && wind.along95Kt !== null)
    return `± ${wind.along95Kt.toFixed(1)}, across not known`;
  return "";
}
