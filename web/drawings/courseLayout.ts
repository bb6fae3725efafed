/** Where the charts of a course stand in a row, px: margins, heights at the fixed scales, the gap for dimension lines. */
import type { CourseFacts, CourseRecord, CourseSeries } from "./contract.ts";
import { isTimed } from "./courseColumns.ts";
import type { MomentSpan } from "./cursor.ts";
import { type FixedScales, PX_PER_MM } from "./scale.ts";
import type { Palette } from "./surroundings.ts";

export const MINUTE_MS = 60_000;
/** Three quarters of full scale: the limit that most standards name, drawn where none is named. */
const USUAL_LIMIT = 0.75;
/** The needle's limit as drawn: that of the standard which the exercise is held against; a line fitted to what was flown has none. */
export const limitDrawn = ({ source, verdicts }: CourseRecord): number | null =>
  source === "fitted"
    ? null
    : (verdicts.find(({ criterion }) => criterion === "course-needle")?.limit ?? USUAL_LIMIT);
/** Under a quarter of full scale a needle is read as centred. Common practice, no source. */
export const QUIET_SHARE = 0.25;
/** Track angle errors under this are drawn as quiet. Own choice of the look. */
export const QUIET_DEG = 3;
/** The track angle error chart shows so many degrees left and right. Own choice of the look. */
export const SHOWN_DEG = 30;
/** Between the charts there is room for two dimension lines, px. */
const GAP_PX = 64;

export interface Margins {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export const margins = (narrow: boolean): Margins =>
  narrow ? { left: 44, right: 10, top: 42, bottom: 26 } : { left: 64, right: 56, top: 42, bottom: 26 };

export interface CourseRow {
  readonly facts: CourseFacts;
  /** Of the needle, as a share of full scale; null where there is none. */
  readonly limit: number | null;
  readonly series: CourseSeries;
  readonly from: number;
  readonly to: number;
  readonly pxPerUnit: number;
  readonly scales: FixedScales;
  readonly narrow: boolean;
  readonly continued: boolean;
  readonly palette: Palette;
  readonly devicePixelRatio: number;
  /** The stretch that is marked, or null. */
  readonly marked: () => MomentSpan | null;
}

/** Size of the canvas of a row, whole px, and the heights of its charts. */
export function rowSize(row: Pick<CourseRow, "series" | "from" | "to" | "pxPerUnit" | "scales" | "narrow">) {
  const m = margins(row.narrow);
  const plot = (row.to - row.from) * row.pxPerUnit;
  const needle = 2 * row.scales.mmPerFullScale * PX_PER_MM;
  const timed = isTimed(row.series);
  const error = timed ? ((2 * SHOWN_DEG) / 10) * row.scales.mmPerTenDegrees * PX_PER_MM : 0;
  const gap = timed ? GAP_PX : 0;
  // Whole pixels, or Chart.js would round and the scale with it; the slack goes to the right and to the foot.
  // A short last row keeps room for its title.
  const width = Math.ceil(Math.max(m.left + plot + m.right, row.narrow ? 300 : 430));
  const height = Math.ceil(m.top + needle + gap + error + m.bottom);
  return { plot, needle, gap, error, width, height };
}
