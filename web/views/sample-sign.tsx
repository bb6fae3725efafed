/** One sample as a small drawing: the course, its coasts where the needle is drawn, and what was flown. */
import { SAMPLE_DRAWINGS } from "../sample-drawings.ts";

/** Three quarters of 24 px, off the course line at 30. */
const COAST_PX = 18;

function Coast({ side }: { side: 1 | -1 }) {
  const y = 30 + side * COAST_PX;
  const marks = Array.from({ length: 15 }, (_, i) => `M${7 + 6 * i} ${y}l-1.5 ${5 * side}`).join("");
  return (
    <>
      <path class="limit" d={`M4 ${y}L96 ${y}`} />
      <path class="hach" d={marks} />
    </>
  );
}

export function SampleSign({ name }: { name: string }) {
  const drawing = SAMPLE_DRAWINGS[name];
  if (!drawing) return null;
  return (
    <svg class="drawing" width="100" height="60" viewBox="0 0 100 60" aria-hidden="true">
      {drawing.of === "needle" && (
        <>
          <Coast side={-1} />
          <Coast side={1} />
        </>
      )}
      <path class="course" d={drawing.course ?? "M4 30L96 30"} />
      <path class="flown" d={drawing.path} />
    </svg>
  );
}
