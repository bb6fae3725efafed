/** The gates of an approach as rows of a table: each quantity at the gate, and its worst from there on. */
import { type ApproachFacts, clockSeconds, count, duration, plusMinus, sided } from "../src/index.ts";

type Gate = ApproachFacts["gates"][number];

export interface GateRow {
  readonly what: string;
  readonly cells: readonly { readonly heightFt: number; readonly there: string; readonly after: string }[];
}

/** Null where the value is not known: a cell of a table says so by a dash. */
const or = (value: number | null | undefined, words: (value: number) => string): string =>
  value === null || value === undefined ? "–" : words(value);

/** A needle of the glide path as size and side. */
export const high = (needle: number): string => {
  const size = Math.abs(needle).toFixed(2);
  return Number(size) === 0 ? size : `${size} ${needle > 0 ? "high" : "low"}`;
};
const tens = (fpm: number): string => count(Math.round(Math.abs(fpm) / 10) * 10);
/** A vertical speed without its unit, as in "420 down". */
export const upOrDown = (fpm: number): string => `${tens(fpm)} ${fpm > 0 ? "up" : "down"}`;
const share = (value: number): string => Math.abs(value).toFixed(2);

type Cells = (gate: Gate) => readonly [there: string, after: string];

const ROWS: readonly (readonly [what: string, cells: Cells])[] = [
  ["At, UTC", ({ utc }) => [utc === null ? "–" : clockSeconds(utc), ""]],
  ["In a silence of the log of", ({ silentS }) => [or(silentS, duration), ""]],
  ["NM to the threshold", ({ distanceNm }) => [or(distanceNm, (nm) => nm.toFixed(1)), ""]],
  [
    "Off the final, scale",
    ({ lateral, after }) => [
      or(lateral?.value, (v) => `${sided(v, 2)} ${plusMinus(lateral!.doubt95, 2)}`),
      or(after?.lateral, share),
    ],
  ],
  [
    "Off the path, scale",
    ({ vertical, after }) => [
      or(vertical?.value, (v) => `${high(v)} ${plusMinus(vertical!.doubt95, 2)}`),
      or(after?.vertical, share),
    ],
  ],
  [
    "Rate, ft/min",
    ({ verticalFpm, after }) => [or(verticalFpm, upOrDown), or(after?.mostSinkFpm, (v) => `${tens(v)} down`)],
  ],
  [
    "Over the ground, kt",
    ({ groundSpeedKt, after }) => [
      or(groundSpeedKt, (v) => v.toFixed(0)),
      or(after?.groundSpeedRangeKt, (v) => `range ${v.toFixed(0)}`),
    ],
  ],
  [
    "Changed in 30 s, kt",
    ({ groundSpeedChangeKt }) => [
      or(groundSpeedChangeKt, (v) => {
        const size = Math.abs(v).toFixed(0);
        return size === "0" ? size : `${size} ${v > 0 ? "faster" : "slower"}`;
      }),
      "",
    ],
  ],
  [
    "Bank, from the track",
    ({ bankDeg, after }) => [
      or(bankDeg, (v) => sided(v, 0, "°")),
      or(after?.mostBankDeg, (v) => `${Math.abs(v).toFixed(0)}°`),
    ],
  ],
  ["Track unsteady by", ({ trackUnsteadyDeg }) => [or(trackUnsteadyDeg, (v) => `${v.toFixed(1)}°`), ""]],
];

/** Rows in which at least one gate has something to tell. */
export const gateRows = (gates: readonly Gate[]): GateRow[] =>
  ROWS.map(([what, of]) => ({
    what,
    cells: gates.map((gate) => {
      const [there, after] = of(gate);
      return { heightFt: gate.heightFt, there, after };
    }),
  })).filter(({ cells }) => cells.some(({ there }) => there !== "–"));
