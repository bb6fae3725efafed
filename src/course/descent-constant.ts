/** When a constant rate, or a constant gradient, would have had to begin to be at the height by the point. */
import type { DescentExercise } from "../brief/brief.ts";
import { firstAtOrAfter } from "../quantity/span.ts";
import type { Feet, FeetMsl, FeetPerMinute, Knots } from "../quantity/units.ts";
import { FINAL_GRADIENT, USUAL_RATE } from "../standard/descent.ts";
import type { ConstantDescent } from "./descent-facts.ts";
import { firstSeen } from "./descent-flown.ts";
import { type DescentRows, whereClock } from "./descent-rows.ts";

export interface AsFlown {
  readonly downFpm: FeetPerMinute | null;
  readonly downFtPerNm: Feet;
  readonly groundSpeed: Knots | null;
}

/**
 * For the rate as flown, 500 ft/min and 318 ft/NM: a straight line in time (or over the ground) that reaches the height
 * at the point. A constant rate is begun and ended at once: the softness of a hand-flown one, some 10 s, is left out.
 */
export function constantDescents(
  exercise: DescentExercise,
  rows: DescentRows,
  from: FeetMsl,
  flown: AsFlown | null,
  utc: (seconds: number) => string,
): ConstantDescent[] {
  const toLose = from - exercise.toAltitude;
  if (!(toLose > 0)) return [];
  const given = { rows, toLose, utc };
  const speed = flown?.groundSpeed ?? null;
  return [
    ...(flown && flown.downFtPerNm > 0
      ? [
          flown.downFpm !== null && flown.downFpm > 0
            ? byRate("as-flown", flown.downFpm, flown.downFtPerNm, given)
            : byGradient("as-flown", flown.downFtPerNm, null, given),
        ]
      : []),
    ...(rows.timed && speed !== null && speed > 0
      ? [byRate("usual-rate", USUAL_RATE, (USUAL_RATE / speed) * 60, given)]
      : []),
    byGradient(
      "usual-gradient",
      FINAL_GRADIENT.optimum,
      speed === null ? null : (FINAL_GRADIENT.optimum * speed) / 60,
      given,
    ),
  ];
}

interface Given {
  readonly rows: DescentRows;
  readonly toLose: Feet;
  readonly utc: (seconds: number) => string;
}

function byRate(
  basis: ConstantDescent["basis"],
  downFpm: FeetPerMinute,
  downFtPerNm: Feet,
  { rows, toLose, utc }: Given,
): ConstantDescent {
  const begin = rows.pointClock - (toLose / downFpm) * 60;
  return { basis, downFpm, downFtPerNm, ...beginning(rows, begin, utc) };
}

function byGradient(
  basis: ConstantDescent["basis"],
  downFtPerNm: Feet,
  downFpm: FeetPerMinute | null,
  { rows, toLose, utc }: Given,
): ConstantDescent {
  const miles = toLose / downFtPerNm;
  // distance to go falls along the way: looked for as its negative, which rises
  const way = rows.toGoNm.map((toGo) => -toGo);
  const begin =
    -miles >= way[0]!
      ? (whereClock(way, rows.clock, -miles) ?? rows.clock[firstAtOrAfter(way, -miles)]!)
      : null;
  return { basis, downFpm, downFtPerNm, ...beginning(rows, begin, utc), beginToGoNm: miles };
}

function beginning(rows: DescentRows, begin: number | null, utc: (seconds: number) => string) {
  const { clock, toGoNm, began, timed } = rows;
  const toGo = begin === null ? null : whereClock(clock, toGoNm, begin);
  // begun in a silence, nobody knows how late
  const seen = began !== null && firstSeen(rows) === null;
  if (begin === null || toGo === null)
    return { beginUtc: null, beginToGoNm: null, lateS: null, lateNm: null };
  return {
    beginUtc: timed ? utc(begin) : null,
    beginToGoNm: toGo,
    lateS: timed && seen ? clock[began.row]! - begin : null,
    lateNm: seen ? toGo - toGoNm[began.row]! : null,
  };
}
