/** The wind against time over the whole flight, row under row at the fixed scale. */
import { Chart, LinearScale, LineController, LineElement, PointElement } from "chart.js";
import { useLayoutEffect, useMemo, useRef } from "preact/hooks";
import type { DocumentLeg } from "./contract.ts";
import { margins } from "./courseLayout.ts";
import { drawnLater, InTurn } from "./InTurn.tsx";
import { cutRows } from "./rows.ts";
import { fixedScales, PAPER_PIXEL_RATIO, PX_PER_MM } from "./scale.ts";
import { surroundings } from "./surroundings.ts";
import { useDrawnWidth } from "./useWidth.ts";
import { TEN_MINUTES_MS, type WindRow, windRowSize, windWindow } from "./windChartLayout.ts";
import { legSpans, windStrokes } from "./windStrokes.ts";
import { windTimeChart } from "./windTimeChart.ts";
import { clockText } from "./words.ts";

Chart.register(LineController, LineElement, PointElement, LinearScale);

/** Nothing where no leg has a wind: the sentence of the sheet says why. */
export function WindChart({ legs }: { legs: readonly DocumentLeg[] }) {
  const box = useRef<HTMLDivElement>(null);
  const width = useDrawnWidth(box);
  const { narrow, palette, paper } = surroundings().value;
  const strokes = useMemo(() => windStrokes(legSpans(legs)), [legs]);
  const window = useMemo(() => windWindow(strokes), [strokes]);
  const [from, to] = [strokes[0]?.from ?? 0, strokes.at(-1)?.to ?? 0];
  if (!(to > from) || strokes.every(({ known }) => known === "none")) return null;
  const scales = fixedScales(narrow);
  const m = margins(narrow);
  const { rows, pxPerUnit: pxPerMs } = cutRows({
    from,
    to,
    pxPerUnit: (scales.mmPerTenMinutesOfWind * PX_PER_MM) / TEN_MINUTES_MS,
    step: TEN_MINUTES_MS,
    roomPx: Math.max(40, width - m.left - m.right - 1),
    fit: false,
  });
  return (
    <div class="course-figure" ref={box}>
      <InTurn>
        {width > 0 &&
          rows.map((row, k) => (
            <div class="course-row" key={row.from}>
              <RowCanvas
                {...{ strokes, window, ...row, pxPerMs, scales, narrow, palette, paper }}
                continued={k > 0}
              />
            </div>
          ))}
      </InTurn>
      <p class="drawing-scale">
        Fixed scale: 10 min = {scales.mmPerTenMinutesOfWind} mm, 30° = {scales.mmPerThirtyDegreesOfWind} mm,
        10 kt = {scales.mmPerTenKnots} mm.{rows.length > 1 && " The flight goes on in the next row."}
      </p>
    </div>
  );
}

function RowCanvas(props: Omit<WindRow, "devicePixelRatio"> & { paper: boolean }) {
  const { strokes, window, from, to, pxPerMs, narrow, palette, paper } = props;
  const canvas = useRef<HTMLCanvasElement>(null);
  const size = windRowSize(props);
  useLayoutEffect(() => {
    if (!canvas.current) return;
    canvas.current.width = size.width;
    canvas.current.height = size.height;
    const ratio = paper ? PAPER_PIXEL_RATIO : Math.max(1, devicePixelRatio);
    const picture = canvas.current;
    return drawnLater(() => {
      const drawn = new Chart(picture, windTimeChart({ ...props, devicePixelRatio: ratio }) as never);
      return () => drawn.destroy();
    });
  }, [strokes, window, from, to, pxPerMs, narrow, palette, paper, size.width, size.height]);
  const name = `Wind against time, ${clockText(from)} to ${clockText(to)} UTC: ${window.direction ? "direction and speed" : "speed"} of each leg with 95 % doubt; the table of the straights has the numbers`;
  return <canvas ref={canvas} role="img" aria-label={name} />;
}
