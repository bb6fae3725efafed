/** A wind arrow as points on paper: open ring where it comes from, head where it blows, oval for the 95 % doubt. */
import { isFull, type WindRecord } from "./contract.ts";

export type Point = readonly [x: number, y: number];

export interface WindArrowGeometry {
  /** Null where nothing is known but the ring. */
  readonly arrow: { readonly tail: Point; readonly head: Point } | null;
  readonly ring: Point;
  readonly oval: {
    readonly centre: Point;
    readonly rx: number;
    readonly ry: number;
    readonly turn: number;
  } | null;
  /** Where only the part along the track is known: the line across it on which the tip may lie anywhere. */
  readonly openDoubt: readonly [Point, Point] | null;
}

/** Half the length of the dashed line across the track. Own choice of the look, px. */
const OPEN_HALF_PX = 24;

/** The direction as a unit vector on paper (x right, y down) when `upTrue` points up. */
export function onPaper(trueDegrees: number, upTrue: number): Point {
  const a = ((trueDegrees - upTrue) * Math.PI) / 180;
  return [Math.sin(a), -Math.cos(a)];
}

const at = (direction: Point, length: number): Point => [direction[0] * length, direction[1] * length];

/**
 * The arrow about its own middle, px. `track` is the mean track of the leg, true degrees, needed where only the
 * part along it is known; without it such a wind is drawn as not known.
 */
export function windGeometry(
  wind: WindRecord,
  upTrue: number,
  pxPerKnot: number,
  track: number | null,
): WindArrowGeometry {
  if (isFull(wind)) {
    const from = onPaper(wind.fromTrueDeg, upTrue);
    const half = (wind.speedKt * pxPerKnot) / 2;
    const head = at(from, -half);
    const e = wind.ellipse95Kt;
    const oval =
      e === null
        ? null
        : {
            centre: head,
            rx: e.majorKt * pxPerKnot,
            ry: e.minorKt * pxPerKnot,
            // An SVG ellipse lies with its long axis to the right, which is 90° from up.
            turn: e.majorTrueDeg - upTrue - 90,
          };
    return { arrow: { tail: at(from, half), head }, ring: at(from, half), oval, openDoubt: null };
  }
  if (wind.knowledge === "along" && wind.alongKt !== null && track !== null) {
    const along = onPaper(track, upTrue);
    const half = (wind.alongKt * pxPerKnot) / 2;
    const head = at(along, half);
    const [acrossX, acrossY] = onPaper(track + 90, upTrue);
    return {
      arrow: { tail: at(along, -half), head },
      ring: at(along, -half),
      oval: null,
      openDoubt: [
        [head[0] - acrossX * OPEN_HALF_PX, head[1] - acrossY * OPEN_HALF_PX],
        [head[0] + acrossX * OPEN_HALF_PX, head[1] + acrossY * OPEN_HALF_PX],
      ],
    };
  }
  return { arrow: null, ring: [0, 0], oval: null, openDoubt: null };
}
