/** A wind as an arrow, 10 kt = 5 mm everywhere. */

import { type WindRecord, windName } from "./contract.ts";
import { Drawing } from "./Drawing.tsx";
import { line, pathThrough } from "./path.ts";
import { PX_PER_KNOT } from "./scale.ts";
import { type Point, windGeometry } from "./windGeometry.ts";

const RING_PX = 2.6;
const HEAD_PX = 11;
const HEAD_HALF_WIDTH_PX = 3.6;

interface SignProps {
  readonly wind: WindRecord;
  /** What points up on the drawing, true degrees; 0 is north-up, the course less 90 lays the course to the right. */
  readonly upTrueDeg?: number;
  /** Mean track of the leg, true; draws the part along it where only that is known. */
  readonly trackTrueDeg?: number | null;
  readonly x: number;
  readonly y: number;
  readonly pxPerKnot?: number;
  /** Put the ring, not the arrow's middle, at x, y. */
  readonly fromRing?: boolean;
}

/** The sign alone, to be set into a larger drawing with its middle at x, y. */
export function WindSign(props: SignProps) {
  const { wind, upTrueDeg = 0, trackTrueDeg = null, pxPerKnot = PX_PER_KNOT } = props;
  const g = windGeometry(wind, upTrueDeg, pxPerKnot, trackTrueDeg);
  const [x, y] = props.fromRing ? [props.x - g.ring[0], props.y - g.ring[1]] : [props.x, props.y];
  return (
    <g class="wind-sign" transform={`translate(${x.toFixed(1)} ${y.toFixed(1)})`}>
      {g.oval && (
        <ellipse
          class="doubt"
          cx={g.oval.centre[0]}
          cy={g.oval.centre[1]}
          rx={g.oval.rx}
          ry={g.oval.ry}
          transform={`rotate(${g.oval.turn.toFixed(1)} ${g.oval.centre[0].toFixed(1)} ${g.oval.centre[1].toFixed(1)})`}
        />
      )}
      {g.openDoubt && <path class="doubtopen" d={pathThrough(g.openDoubt)} />}
      {g.arrow && <Shaft tail={g.arrow.tail} head={g.arrow.head} />}
      <circle class="windtail" cx={g.ring[0]} cy={g.ring[1]} r={RING_PX} />
    </g>
  );
}

function Shaft({ tail, head }: { tail: Point; head: Point }) {
  const length = Math.hypot(head[0] - tail[0], head[1] - tail[1]);
  if (length < 1) return null;
  const ux = (head[0] - tail[0]) / length;
  const uy = (head[1] - tail[1]) / length;
  // A light wind keeps its true length; its head shrinks with it.
  const size = Math.min(HEAD_PX, length * 0.6);
  const half = HEAD_HALF_WIDTH_PX * (size / HEAD_PX);
  const neckX = head[0] - ux * size;
  const neckY = head[1] - uy * size;
  return (
    <>
      <path class="windline" d={line(tail[0], tail[1], neckX, neckY)} />
      <path
        class="windhead"
        d={`${pathThrough([head, [neckX - uy * half, neckY + ux * half], [neckX + uy * half, neckY - ux * half]])}Z`}
      />
    </>
  );
}

/**
 * A wind arrow as a figure of its own. `size` is the least side of its square in px; it grows where the arrow
 * and its doubt need more, never the other way round: the scale stays.
 */
export function WindArrow(props: {
  wind: WindRecord;
  upTrueDeg?: number;
  trackTrueDeg?: number | null;
  size?: number;
}) {
  const { wind, upTrueDeg = 0, trackTrueDeg = null, size = 50 } = props;
  const g = windGeometry(wind, upTrueDeg, PX_PER_KNOT, trackTrueDeg);
  const reach = Math.max(
    ...[g.ring, g.arrow?.head ?? g.ring, ...(g.openDoubt ?? [])].map((p) => Math.hypot(p[0], p[1])),
    g.oval ? Math.hypot(...g.oval.centre) + g.oval.rx : 0,
  );
  // Beyond 200 px the doubt is larger than any wind: the oval is cut by the frame, and the words say the number.
  const side = Math.ceil(Math.max(size, Math.min(2 * (reach + 4), 200)));
  return (
    <Drawing kind="wind-arrow" name={windName(wind)} width={side} height={side}>
      <WindSign wind={wind} upTrueDeg={upTrueDeg} trackTrueDeg={trackTrueDeg} x={side / 2} y={side / 2} />
    </Drawing>
  );
}
