/** What the tests of the maker share: a lesson of two fixes, the exercises of a test, and how it is read without lists of points. */
import { readMaking } from "../../../web/maker/reading.ts";
import type { Values } from "../../../web/maker/values.ts";

export const NOTHING = { points: [], runways: [], near: null };
export const TIME = Date.UTC(2026, 9, 17, 1);
const HEAD = {
  brief: 1,
  title: "Lesson 6",
  fixes: {
    TARNO: { lat: 35.6, lon: 172.3, kind: "vor", declination: "2.5" },
    BELVO: { at: "35.668, 172.069" },
  },
};
export const brief = (...exercises: Values[]): Values => ({ ...HEAD, exercises });
export const read = (values: Values) => readMaking(values, NOTHING, TIME);
