/** Lines of the same distance off course, laid under the needle: they open toward a station, and lie level on a linear scale. */
import type { Plugin } from "chart.js";
import { acrossAt, type NeedleScaleFacts, needleOf } from "../contract.ts";
import type { Palette } from "../surroundings.ts";
import { fractionText } from "../words.ts";
import { stroke, write } from "./pen.ts";

const NICE_NM = [0.02, 0.05, 0.1, 0.25, 0.5, 1, 2, 5, 10];

/** Distances worth a line, NM: those between a fifth of full scale and a little past it at that distance. */
export function isolineMiles(scale: NeedleScaleFacts, typicalDistanceNm: number): number[] {
  const full = acrossAt(scale, 1, typicalDistanceNm);
  const most = scale.kind === "linear" ? 0.99 : 1.3;
  return NICE_NM.filter((nm) => nm >= 0.2 * full && nm <= most * full);
}

export interface IsolineOptions {
  readonly axis: string;
  readonly scale: NeedleScaleFacts;
  readonly miles: readonly number[];
  readonly x: Float64Array;
  readonly distanceNm: Float64Array;
  /** The side that the names stand on, away from the words of the moments: -1 left of course, 1 right. */
  readonly namesOn: 1 | -1;
  readonly palette: Palette;
}

export function isolines(options: IsolineOptions): Plugin<"line"> {
  const { axis, scale, miles, x, distanceNm, namesOn, palette } = options;
  return {
    id: "isolines",
    beforeDatasetsDraw(chart) {
      const c = chart.ctx;
      const area = chart.chartArea;
      const across = chart.scales.x;
      const up = chart.scales[axis];
      const [top, bottom] = [up.getPixelForValue(-1), up.getPixelForValue(1)];
      c.save();
      c.beginPath();
      c.rect(area.left, top, area.right - area.left, bottom - top);
      c.clip();
      for (const nm of miles) {
        for (const side of [-1, 1]) {
          stroke(c, { colour: palette["ink-3"], width: 0.75, dash: [5, 3] }, () => {
            for (let i = 0; i < x.length; i++) {
              const y = up.getPixelForValue(side * needleOf(scale, nm, distanceNm[i]));
              if (Number.isFinite(y)) c.lineTo(across.getPixelForValue(x[i]), y);
            }
          });
        }
      }
      miles.forEach((nm, k) => {
        const place = labelPlace(
          x,
          distanceNm,
          scale,
          nm,
          [across.min, across.max],
          (k + 1) / (miles.length + 1),
        );
        if (place === null) return;
        const style = {
          face: "small",
          colour: palette["ink-2"],
          align: "center",
          halo: palette.paper,
        } as const;
        write(
          c,
          palette,
          `${fractionText(nm)} NM`,
          across.getPixelForValue(place.x),
          up.getPixelForValue(namesOn * place.share) + 4,
          style,
        );
      });
      c.restore();
    },
  };
}

/**
 * Where the name of a line stands: where it passes half of full scale (free of the flown line
 * more often than not, and above the words of what is not judged), else, on a line that never does, at the share of the row that is given.
 */
export function labelPlace(
  x: Float64Array,
  distanceNm: Float64Array,
  scale: NeedleScaleFacts,
  nm: number,
  row: readonly [number, number],
  otherwise: number,
): { x: number; share: number } | null {
  const [from, to] = row;
  const margin = 0.08 * (to - from);
  const wanted = from + otherwise * (to - from);
  let crossing = -1;
  let nearest = -1;
  for (let i = 0; i < x.length; i++) {
    if (!(x[i] >= from + margin && x[i] <= to - margin)) continue;
    if (nearest < 0 || Math.abs(x[i] - wanted) < Math.abs(x[nearest] - wanted)) nearest = i;
    if (scale.kind === "linear" || crossing >= 0 || i === 0) continue;
    const here = needleOf(scale, nm, distanceNm[i]);
    const before = needleOf(scale, nm, distanceNm[i - 1]);
    if (before < 0.52 !== here < 0.52) crossing = i;
  }
  const i = crossing >= 0 ? crossing : nearest;
  if (i < 0) return null;
  const share = needleOf(scale, nm, distanceNm[i]);
  return share < 0.68 ? { x: x[i], share } : null;
}
