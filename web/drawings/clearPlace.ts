/** Where words stand clear of a line and of each other: the first place that is free, else the one that is least taken. */
import type { Point } from "./windGeometry.ts";

export interface Words {
  readonly text: string;
  readonly x: number;
  /** Of their foot. */
  readonly y: number;
  readonly anchor: "start" | "end";
}

export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Of words 12.5 to 13 px high: the mean width of a letter, and how far they reach over and under their foot. */
const LETTER_PX = 5.4;
const OVER_PX = 11;
const UNDER_PX = 3;

export function boxOf({ text, x, y, anchor }: Words): Box {
  const width = text.length * LETTER_PX;
  const left = anchor === "start" ? x : x - width;
  return { left, right: left + width, top: y - OVER_PX, bottom: y + UNDER_PX };
}

const touch = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

/** Takes one of the places for the words, and marks it as taken. A line hides as much as its points lie in them. */
export function clearPlace(
  places: readonly Words[],
  taken: Box[],
  flown: readonly Point[],
  within: Pick<Box, "left" | "right">,
): Words {
  const hidden = places.map((words) => {
    const box = boxOf(words);
    const on = flown.filter(
      ([x, y]) => x > box.left && x < box.right && y > box.top && y < box.bottom,
    ).length;
    const outside = box.left < within.left || box.right > within.right;
    return 1000 * (taken.filter((other) => touch(box, other)).length + Number(outside)) + on;
  });
  const place = places[hidden.indexOf(Math.min(...hidden))];
  taken.push(boxOf(place));
  return place;
}
