/** Short series for the tests of the drawings, spelled out so that what is expected can be read off. */
import type { CourseFacts, CourseSeries } from "../../../src/index.ts";
import type { Palette } from "../../../web/drawings/surroundings.ts";

export const vor = { id: "vor", kind: "angular", fullScaleDeg: 10, label: "VOR, ±10°" } as const;
export const rnav1 = { id: "rnav-1", kind: "linear", fullScaleNm: 1, label: "RNAV terminal, ±1 NM" } as const;

/** One row a minute to a fix, a mile a minute. */
export function seriesOf(crossTrackNm: number[], timed = true): CourseSeries {
  const n = crossTrackNm.length;
  const column = (value: (i: number) => number) => Float64Array.from({ length: n }, (_, i) => value(i));
  const none = column(() => Number.NaN);
  return {
    kind: "course",
    pathStart: 0,
    timeMs: timed ? column((i) => Date.UTC(2026, 9, 17, 9, 44) + i * 60_000) : none,
    alongNm: column((i) => i - n + 1),
    distanceToFixNm: column((i) => n - 1 - i),
    crossTrackNm: Float64Array.from(crossTrackNm),
    needle: Float64Array.from(crossTrackNm),
    trackAngleErrorDeg: timed ? column(() => 4) : none,
    trackTrueDeg: none,
    headingTrueDeg: none,
    groundSpeedKt: timed ? column(() => 60) : none,
    altitudeFt: none,
    judged: Uint8Array.from({ length: n }, (_, i) => (i === n - 1 ? 0 : 1)),
  };
}

export const factsOf = (scale: CourseFacts["scale"], form: CourseFacts["form"] = "to"): CourseFacts =>
  ({
    form,
    fix: "TARNO",
    fromFix: null,
    courseTrueDeg: 220,
    scale,
    judged: { begins: "start-of-match", ends: "near-station" },
    excursions: [],
    groundSpeedKt: 60,
    crossTrack: { rmsNm: 0.2 },
    needle: { max: -0.5, doubt95: 0.04 },
  }) as unknown as CourseFacts;

export const palette = {
  paper: "paper",
  wash: "wash",
  ink: "ink",
  "ink-2": "ink-2",
  "ink-3": "ink-3",
  hair: "hair",
  wind: "wind",
  "wind-wash": "wind-wash",
  solved: "solved",
  outside: "outside",
  "outside-wash": "outside-wash",
  serif: "serif",
  sans: "sans",
} satisfies Palette;
