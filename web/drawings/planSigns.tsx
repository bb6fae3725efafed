/** Signs that plans share: scale bar, north arrow, a named fix. */
import { line, pathThrough } from "./path.ts";
import { barMiles } from "./plane.ts";
import { hachures } from "./plugins/coast.ts";
import { onPaper, type Point } from "./windGeometry.ts";

export function ScaleBar({
  x,
  y,
  pxPerMile,
  words,
}: {
  x: number;
  y: number;
  pxPerMile: number;
  words: string;
}) {
  const miles = barMiles(pxPerMile, 120);
  const end = x + miles * pxPerMile;
  return (
    <g class="scale-bar">
      <path
        class="scalebar"
        d={pathThrough([
          [x, y - 4],
          [x, y],
          [end, y],
          [end, y - 4],
        ])}
      />
      <text class="lab halo" x={end + 8} y={y + 3}>
        {miles} NM{words && ` (${words})`}
      </text>
    </g>
  );
}

/** A slim arrow to true north, its middle at x, y. */
export function NorthArrow(props: { x: number; y: number; upTrueDeg: number; words?: string }) {
  const { x, y, upTrueDeg, words = "N" } = props;
  const [ux, uy] = onPaper(0, upTrueDeg);
  const [tipX, tipY] = [x + ux * 18, y + uy * 18];
  const [neckX, neckY] = [x + ux * 7, y + uy * 7];
  return (
    <g class="north-arrow">
      <path class="northline" d={line(x - ux * 18, y - uy * 18, tipX, tipY)} />
      <path
        class="northhead"
        d={`${pathThrough([
          [tipX, tipY],
          [neckX - uy * 3, neckY + ux * 3],
          [neckX, neckY],
        ])}Z`}
      />
      <text class="lab-i" x={tipX + ux * 9} y={tipY + uy * 9 + 4} text-anchor="middle">
        {words}
      </text>
    </g>
  );
}

/** Longer idents run out of the drawing: a published one has five letters, a receiver's perhaps twelve. Own choice. */
const LONGEST_IDENT = 16;
const shortIdent = (ident: string): string =>
  ident.length > LONGEST_IDENT ? `${ident.slice(0, LONGEST_IDENT - 1)}…` : ident;

export function FixSign(props: {
  x: number;
  y: number;
  ident: string;
  dx?: number;
  dy?: number;
  anchor?: "start" | "middle" | "end";
}) {
  const { x, y, ident, dx = 9, dy = 4, anchor = "start" } = props;
  return (
    <g class="fix-sign">
      <circle class="fixhole" cx={x} cy={y} r={4.6} />
      <circle class="fixdot" cx={x} cy={y} r={1.6} />
      <text class="lab b halo" x={x + dx} y={y + dy} text-anchor={anchor}>
        {shortIdent(ident)}
      </text>
    </g>
  );
}

/** A coast along any line; hachures on its far side: above on the left of the course, below on the right. */
export function Coast({ from, to, side }: { from: Point; to: Point; side: 1 | -1 }) {
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const turn = (Math.atan2(to[1] - from[1], to[0] - from[0]) * 180) / Math.PI;
  const teeth = hachures(0, length, 0, side)
    .map(([x1, y1, x2, y2]) => line(x1, y1, x2, y2))
    .join("");
  return (
    <g transform={`translate(${from[0].toFixed(1)} ${from[1].toFixed(1)}) rotate(${turn.toFixed(2)})`}>
      <path class="limit" d={line(0, 0, length, 0)} />
      <path class="hach" d={teeth} />
    </g>
  );
}
