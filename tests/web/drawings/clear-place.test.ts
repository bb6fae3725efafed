/** Words on a profile stand clear of the line flown and of each other. */
import { expect, it } from "vitest";
import { type Box, boxOf, clearPlace, type Words } from "../../../web/drawings/clearPlace.ts";
import type { Point } from "../../../web/drawings/windGeometry.ts";

const at = (x: number, y: number): Words => ({ text: "2,500 ft", x, y, anchor: "start" });
const level = (y: number): Point[] => Array.from({ length: 100 }, (_, k) => [4 * k, y]);
const page = { left: 0, right: 400 };

it("the first place is taken where nothing is in the way", () => {
  expect(clearPlace([at(10, 20), at(10, 60)], [], level(100), page)).toEqual(at(10, 20));
});
it("not over the line, not over other words, not over the edge", () => {
  expect(clearPlace([at(10, 20), at(10, 60)], [], level(15), page)).toEqual(at(10, 60));
  expect(clearPlace([at(10, 20), at(10, 60)], [boxOf(at(30, 25))], level(100), page)).toEqual(at(10, 60));
  expect(clearPlace([at(390, 20), at(10, 60)], [], level(100), page)).toEqual(at(10, 60));
});
it("words placed are in the way of the next; where all is taken, the line is crossed before words are", () => {
  const taken: Box[] = [];
  clearPlace([at(10, 20)], taken, [], page);
  expect(clearPlace([at(10, 20), at(10, 60)], taken, level(55), page)).toEqual(at(10, 60));
});
