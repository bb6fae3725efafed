/** One row of the table of facts, and the few words that the facts of every kind of exercise share. */
import { type CourseFacts, clockSeconds, count } from "../src/index.ts";

export interface FactRow {
  readonly fact: string;
  readonly value: string;
  readonly note: string;
}

/** As in "at 09:44:10"; nothing where the log has no times. */
export const at = (utc: string | null): string => (utc === null ? "" : `at ${clockSeconds(utc)}`);

export const feet = (ft: number): string => `${count(ft)} ft`;

/** Rounded to tens: no log tells a vertical speed more closely. */
export const feetPerMinute = (fpm: number): string => `${count(Math.round(fpm / 10) * 10)} ft/min`;

type WentOn = NonNullable<CourseFacts["intercept"]>["wentOn"];
/** How far past its line an intercept went on after the turn onto it, and when; nothing where it did not. */
export const onward = (wentOn: WentOn): string =>
  wentOn ? `, then on to ${wentOn.nm.toFixed(2)} NM ${at(wentOn.utc)}` : "";

type Reached = NonNullable<CourseFacts["altitude"]>["reached"];
/** From when a height is judged that was climbed or descended to, as in "from 09:14:20 on, "; nothing where all of it is. */
export const sinceReached = (reached: Reached): string =>
  reached ? `from ${reached.utc ? clockSeconds(reached.utc) : "where it is judged"} on, ` : "";
