/** The words of step-downs on a profile, and how far they and the minimum were gone below: clear of the line flown and of each other. */
import type { ProfileLayout } from "./approachLayout.ts";
import { leadsOn } from "./approachStretches.ts";
import type { UprightHeights } from "./approachWindow.ts";
import { type Box, boxOf, clearPlace, type Words } from "./clearPlace.ts";
import { type ApproachFacts, type ApproachSeries, count } from "./contract.ts";
import { rowAt } from "./cursor.ts";
import type { Floor } from "./floors.ts";
import type { Point } from "./windGeometry.ts";

/** Gone below a limit: from it down to the lowest point, and by how much. `sure`: beyond the doubt of the height. */
export interface Below {
  readonly x: number;
  readonly limitY: number;
  readonly lowestY: number;
  readonly words: Words;
  readonly sure: boolean;
}

export interface ProfileWords {
  readonly floors: readonly Words[];
  readonly below: readonly Below[];
}

/** Below a limit by less is not told, of a step-down as of the minimum. As in the finding. */
const BELOW_LEAST_FT = 20;

interface Asked {
  readonly facts: ApproachFacts;
  readonly series: ApproachSeries;
  readonly heights: UprightHeights;
  readonly l: ProfileLayout;
  readonly floors: readonly Floor[];
  /** Where other words stand. */
  readonly taken: readonly Words[];
  /** Numbers alone. */
  readonly narrow: boolean;
}

export function profileWords({
  facts,
  series,
  heights,
  l,
  floors,
  taken: others,
  narrow,
}: Asked): ProfileWords {
  const taken: Box[] = others.map(boxOf);
  const flown: Point[] = [];
  for (let i = 0; i < series.distanceToThresholdNm.length; i++) {
    if (leadsOn(series, i)) flown.push([l.x(series.distanceToThresholdNm[i]), l.y(heights.column[i])]);
  }
  const yOf = (altitudeFt: number) => l.y(altitudeFt - heights.elevationFt);
  // the minimum has its name at the right edge
  const named = floors
    .filter(({ isMinimum }) => !isMinimum)
    .map(({ fromNm, toNm, altitudeFt }) => {
      const [from, to, y] = [l.x(fromNm), l.x(toNm), yOf(altitudeFt)];
      const around = (text: string): Words[] => [
        { text, x: from + 6, y: y + 18, anchor: "start" },
        { text, x: to - 2, y: y - 5, anchor: "end" },
        { text, x: from + 6, y: y - 5, anchor: "start" },
        { text, x: to - 2, y: y + 18, anchor: "end" },
      ];
      const feet = `${count(altitudeFt)} ft`;
      return clearPlace([...(narrow ? [] : around(`not below ${feet}`)), ...around(feet)], taken, flown, l);
    });
  const below = limitsOf(facts, narrow)
    .flatMap((limit) => {
      const row = limit.lowestUtc ? rowAt(series.timeMs, Date.parse(limit.lowestUtc)) : null;
      return row === null ? [] : [{ ...limit, x: l.x(series.distanceToThresholdNm[row]) }];
    })
    .map(({ x, limitFt, lowestFt, text, sure }): Below => {
      const [limitY, lowestY] = [yOf(limitFt), yOf(lowestFt)];
      const places = [14, 28, 42].flatMap((down): Words[] => [
        { text, x: x - 8, y: lowestY + down, anchor: "end" },
        { text, x: x + 8, y: lowestY + down, anchor: "start" },
      ]);
      return { x, limitY, lowestY, sure, words: clearPlace(places, taken, flown, l) };
    });
  return { floors: named, below };
}

/** What was gone below, by most first. */
function limitsOf({ stepDowns, minimum }: ApproachFacts, narrow: boolean) {
  const all = stepDowns.map(({ limitFt, lowestFt, lowestUtc, marginFt, altimeter95Ft }) => ({
    ...{ limitFt, lowestFt, lowestUtc, marginFt, altimeter95Ft },
    of: narrow ? "" : ` ${count(limitFt)} ft`,
  }));
  if (minimum?.kind === "descent") {
    const { altitudeFt: limitFt, lowestFt, lowestUtc, marginFt, altimeter95Ft } = minimum;
    all.push({ limitFt, lowestFt, lowestUtc, marginFt, altimeter95Ft, of: "" });
  }
  return all
    .flatMap(({ marginFt, lowestFt, altimeter95Ft, of, ...rest }) => {
      if (marginFt === null || lowestFt === null || marginFt >= -BELOW_LEAST_FT) return [];
      const text = `${count(-marginFt)} ft below${of}`;
      return [{ ...rest, lowestFt, text, belowFt: -marginFt, sure: -marginFt > (altimeter95Ft ?? Infinity) }];
    })
    .sort((a, b) => b.belowFt - a.belowFt);
}
