/** Descents as published: rates, gradients, rules of thumb and visual descent points, as data with citations, no logic. */
import type { AngleSize, Feet, FeetPerMinute, Knots, NauticalMiles, Seconds } from "../quantity/units.ts";

/**
 * Rate of descent by angle and ground speed, ft/min, rounded to 5.
 * Trap: from 2° to 6° the printed cells are speed * 101.27 * *sine* of the angle (within 3 ft/min: its rounding), not
 * the tangent, from which they are up to 11 ft/min off at 6°. At 3° the two differ by 0.14 %.
 */
export const RATE_TABLE = {
  speeds: [60, 75, 90, 105, 120, 135, 150, 165, 180],
  rows: [
    { angle: 2, rates: [210, 265, 320, 370, 425, 475, 530, 585, 635] },
    { angle: 2.5, rates: [265, 330, 395, 465, 530, 595, 665, 730, 795] },
    { angle: 3, rates: [320, 395, 480, 555, 635, 715, 795, 875, 955] },
    { angle: 3.5, rates: [370, 465, 555, 650, 740, 835, 925, 1020, 1110] },
    { angle: 4, rates: [425, 530, 635, 740, 845, 955, 1060, 1165, 1270] },
    { angle: 5, rates: [530, 660, 795, 925, 1060, 1190, 1325, 1455, 1590] },
    { angle: 6, rates: [635, 795, 955, 1110, 1270, 1430, 1590, 1745, 1905] },
  ],
  citation: "US government rate-of-descent table, older volumes of instrument approach procedures",
} as const satisfies {
  speeds: readonly Knots[];
  rows: readonly { angle: AngleSize; rates: readonly FeetPerMinute[] }[];
  citation: string;
};

/** Gradient by angle, feet a nautical mile: the tangent. */
export const GRADIENT_TABLE = {
  rows: [
    { angle: 2.7, gradient: 287 },
    { angle: 2.8, gradient: 297 },
    { angle: 2.9, gradient: 308 },
    { angle: 3, gradient: 318 },
    { angle: 3.1, gradient: 329 },
    { angle: 3.2, gradient: 340 },
    { angle: 3.3, gradient: 350 },
    { angle: 3.4, gradient: 361 },
  ],
  citation: "US climb/descent table, column of feet a nautical mile, as copied in operators' handouts",
} as const satisfies { rows: readonly { angle: AngleSize; gradient: Feet }[]; citation: string };

/** Final gradients of non-precision procedures, feet a nautical mile. */
export const FINAL_GRADIENT = {
  optimum: 318,
  most: 400,
  citation: "FAA Order 8260.3, as quoted: optimum 318 ft/NM (3.00°), most 400 ft/NM (3.77°)",
} as const satisfies { optimum: Feet; most: Feet; citation: string };

/** Rules of thumb: common practice. Feet a minute = this times the ground speed in knots, for 3° (exactly 5.307). */
export const RATE_RULE = {
  perKnot: 5,
  angle: 3,
  citation: "Common practice: five times the ground speed",
} as const;

/** Visual descent point: height above touchdown over this is the distance in miles, over that the seconds before the missed approach point. */
export const VISUAL_POINT_RULE = {
  feetPerMile: 300,
  feetPerSecond: 10,
  citation: "Common practice: height above touchdown over 300 is miles, over 10 is seconds",
} as const;

/**
 * Printed examples of visual descent points. Trap: those without a speed are by three miles for each 1,000 ft
 * (333 ft/NM), a third rule beside HAT/300 and HAT/318; all are rounded to a tenth of a mile.
 */
export const VISUAL_POINT_EXAMPLES: readonly {
  readonly height: Feet;
  readonly distance: NauticalMiles;
  readonly feetPerMile: readonly [least: Feet, most: Feet];
  readonly groundSpeed: Knots | null;
  readonly seconds: Seconds | null;
  readonly citation: string;
}[] = [
  ...(
    [
      [785, 2.4],
      [600, 1.8],
      [1200, 3.6],
    ] as const
  ).map(([height, distance]) => ({
    height,
    distance,
    feetPerMile: [1000 / 3, 1000 / 3] as const,
    groundSpeed: null,
    seconds: null,
    citation: "Training note on non-precision approaches, as quoted",
  })),
  {
    height: 400,
    distance: 1.3,
    feetPerMile: [300, 318],
    groundSpeed: 114,
    seconds: 41,
    citation: "Training note on timing, as quoted: 4:45 less 0:41 is 4:04",
  },
];
