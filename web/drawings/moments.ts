/** The moments of the excursions: A the track leaves the course, B the needle reaches a quarter, C the correction. */
import { type CourseSeries, type Excursion, worstExcursion } from "./contract.ts";
import { rowAt } from "./cursor.ts";

export type ChartName = "needle" | "error";

export interface Ring {
  readonly chart: ChartName;
  readonly x: number;
  readonly y: number;
  /** Null on all but the worst excursion, so that words stay readable. */
  readonly words: string | null;
}

export interface Dimension {
  readonly from: number;
  readonly to: number;
  readonly words: string;
  readonly bold: boolean;
  /** From the upper line of the gap between the charts to the lower one. */
  readonly level: 0 | 1;
}

export interface Moments {
  readonly rings: readonly Ring[];
  readonly dimensions: readonly Dimension[];
  /** Upright lines that tie a ring to its dimension; `fromValue` is where it begins on its chart. */
  readonly ties: readonly {
    readonly x: number;
    readonly chart: ChartName;
    readonly fromValue: number;
    readonly toLevel: 0 | 1 | "error";
    readonly toValue: number;
  }[];
}

const ms = (utc: string | null): number | null => (utc === null ? null : Date.parse(utc));

export function momentsOf(excursions: readonly Excursion[], series: CourseSeries): Moments {
  const rings: Ring[] = [];
  const dimensions: Dimension[] = [];
  const ties: Moments["ties"][number][] = [];
  const worst = worstExcursion(excursions);
  for (const e of excursions) {
    const named = e === worst;
    const valueAt = (column: Float64Array, time: number): number => {
      const row = rowAt(series.timeMs, time);
      return row === null ? Number.NaN : column[row];
    };
    const [a, b, c] = [ms(e.trackOffUtc), ms(e.quarterUtc), ms(e.correctedUtc)];
    // A chased needle makes many small ones; only those that the needle showed are marked beside the worst.
    if (!named && b === null) continue;
    const add = (chart: ChartName, x: number, words: string | null) => {
      const column = chart === "needle" ? series.needle : series.trackAngleErrorDeg;
      const y = valueAt(column, x);
      if (Number.isFinite(y)) rings.push({ chart, x, y, words: named ? words : null });
      return y;
    };
    if (a !== null) add("error", a, "A  track turns off");
    const yb = b === null ? Number.NaN : add("needle", b, "B  needle at a quarter");
    const yc = c === null ? Number.NaN : add("needle", c, "C  first correction");
    if (c !== null) add("error", c, null);
    if (!named || a === null) continue;
    const ya = valueAt(series.trackAngleErrorDeg, a);
    if (b !== null && e.silentS !== null) {
      dimensions.push({
        from: a,
        to: b,
        words: `needle silent ${Math.round(e.silentS)} s`,
        bold: false,
        level: 0,
      });
      ties.push({ x: b, chart: "needle", fromValue: yb, toLevel: 0, toValue: yb });
    }
    if (c !== null && e.leadS !== null) {
      dimensions.push({ from: a, to: c, words: `lead ${Math.round(e.leadS)} s`, bold: true, level: 1 });
      ties.push({
        x: c,
        chart: "needle",
        fromValue: yc,
        toLevel: "error",
        toValue: valueAt(series.trackAngleErrorDeg, c),
      });
    }
    if (dimensions.length > 0) {
      ties.push({ x: a, chart: "error", fromValue: ya, toLevel: dimensions[0].level, toValue: ya });
    }
  }
  return { rings, dimensions, ties };
}
