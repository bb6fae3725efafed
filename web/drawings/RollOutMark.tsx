/** A hold in the line-up: a dot a lap where it rolled out, left or right of the inbound course, always 1 NM to each side. */
import type { HoldFacts } from "./contract.ts";
import { Drawing } from "./Drawing.tsx";
import { line } from "./path.ts";
import { fixedScales, PX_PER_MM } from "./scale.ts";

const LEFT_PX = 4;
const WIDE_PX = fixedScales(false).mmPerFullScaleOfLineUp * PX_PER_MM;
const WIDTH_PX = Math.ceil(LEFT_PX + WIDE_PX + 46);
const HEIGHT_PX = 34;
const MOST_NM = 1;
const BEYOND = 1.06;

export interface RollOutDot {
  readonly lap: number;
  readonly acrossNm: number;
  readonly across95Nm: number;
}

export const rollOuts = ({ laps }: Pick<HoldFacts, "laps">): RollOutDot[] =>
  laps.flatMap(({ rollOut }, i) =>
    rollOut ? [{ lap: i + 1, acrossNm: rollOut.acrossNm, across95Nm: rollOut.across95Nm }] : [],
  );

const x = (nm: number): number =>
  LEFT_PX + WIDE_PX / 2 + (Math.max(-BEYOND, Math.min(BEYOND, nm / MOST_NM)) * WIDE_PX) / 2;

export function RollOutMark({ facts }: { facts: HoldFacts }) {
  const dots = rollOuts(facts);
  const said = dots.map(({ lap, acrossNm }) => {
    const side = acrossNm > 0 ? "right" : "left";
    return `lap ${lap} ${Math.abs(acrossNm).toFixed(2)} NM ${side}`;
  });
  const name =
    said.length > 0 ? `rolled out ${said.join(", ")} of the inbound course` : "no roll-out measured";
  // the first lap on top, the last at the foot
  const y = (i: number) =>
    dots.length === 1 ? HEIGHT_PX / 2 : 7 + (i * (HEIGHT_PX - 14)) / (dots.length - 1);
  const radius = dots.length > 4 ? 2.4 : 3.2;
  return (
    <Drawing kind="line-up" name={name} width={WIDTH_PX} height={HEIGHT_PX}>
      {[-1, -0.5, 0.5, 1].map((nm) => (
        <path key={nm} class="hair" d={line(x(nm), 0, x(nm), HEIGHT_PX)} />
      ))}
      <path class="course" d={line(x(0), 0, x(0), HEIGHT_PX)} />
      {dots.map(({ lap, acrossNm, across95Nm }, i) => (
        <g key={lap}>
          <path class="axis" d={line(x(0), y(i), x(acrossNm), y(i))} />
          <path class="whisk" d={line(x(acrossNm - across95Nm), y(i), x(acrossNm + across95Nm), y(i))} />
          <circle class="dot" cx={x(acrossNm)} cy={y(i)} r={radius} />
        </g>
      ))}
      <text class="lab" x={x(-1) + 3} y={HEIGHT_PX - 5}>
        L
      </text>
      <text class="lab" x={x(1) - 3} y={HEIGHT_PX - 5} text-anchor="end">
        R
      </text>
      <text class="lab" x={x(1) + 10} y={HEIGHT_PX / 2 + 4}>
        1 NM
      </text>
    </Drawing>
  );
}
