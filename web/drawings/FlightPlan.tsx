/** The whole flight, north-up: fixes, courses, the exercises numbered along the flown line. */

import { useRef } from "preact/hooks";
import { CursorRing } from "./CursorRing.tsx";
import type { DebriefDocument, FlightSeries } from "./contract.ts";
import type { Cursor } from "./cursor.ts";
import { Drawing } from "./Drawing.tsx";
import { FlownLine } from "./FlownLine.tsx";
import { fixesShown } from "./flightFixes.ts";
import { pathThrough } from "./path.ts";
import { planeAt, steppedScale } from "./plane.ts";
import { FixSign, NorthArrow, ScaleBar } from "./planSigns.tsx";
import { PX_PER_MM } from "./scale.ts";
import { rowsAfterSilence, silenceWords } from "./silences.ts";
import { surroundings } from "./surroundings.ts";
import { useDrawnWidth } from "./useWidth.ts";
import { WindSign } from "./WindArrow.tsx";
import type { Point } from "./windGeometry.ts";
import { millimetreText } from "./words.ts";

const PAPER_PX = 700;
const MOST_HEIGHT_MM = 130;
/** On paper it shares the first page with the head and the line-up. */
const PAPER_HEIGHT_MM = 88;
const MARGIN_PX = 48;
/** On paper the page is short, and nothing but arrows stands in the margin. */
const PAPER_MARGIN_PX = 34;
const FOOT_PX = 34;
/** Of a longer log every second point is drawn, or every third: still a second or less apart where it is one flight. */
const MOST_POINTS = 12_000;

export function FlightPlan(props: { document: DebriefDocument; series: FlightSeries; cursor?: Cursor }) {
  const { document: debrief, series, cursor } = props;
  const box = useRef<HTMLDivElement>(null);
  const width = useDrawnWidth(box, PAPER_PX);
  const { paper } = surroundings().value;
  return (
    <div class="flight-plan" ref={box}>
      {width > 0 && (
        <Drawn
          debrief={debrief}
          series={series}
          width={width}
          margin={paper ? PAPER_MARGIN_PX : MARGIN_PX}
          mostMm={paper ? PAPER_HEIGHT_MM : MOST_HEIGHT_MM}
          {...(cursor ? { cursor } : {})}
        />
      )}
      {silenceWords(series.path.timeMs) && (
        <p class="drawing-scale">{silenceWords(series.path.timeMs).trim()}</p>
      )}
    </div>
  );
}

function Drawn({
  debrief,
  series,
  width,
  margin,
  mostMm,
  cursor,
}: {
  debrief: DebriefDocument;
  series: FlightSeries;
  width: number;
  margin: number;
  mostMm: number;
  cursor?: Cursor;
}) {
  const { path } = series;
  const middle = middleOf(path.latitude, path.longitude);
  if (middle === null) return null;
  const plane = planeAt(...middle);
  const every = Math.ceil(path.latitude.length / MOST_POINTS);
  const row = (k: number) => Math.floor(k / every);
  const flown = Array.from({ length: row(path.latitude.length - 1) + 1 }, (_, k) =>
    plane.place(path.latitude[k * every], path.longitude[k * every]),
  );
  const racetracks = series.exercises.flatMap((exercise) => {
    const outline = exercise?.kind === "hold" ? exercise.stillAir : null;
    return outline
      ? [Array.from(outline.latitude, (latitude, i) => plane.place(latitude, outline.longitude[i]))]
      : [];
  });
  const { fixes, bounds } = fixesShown(debrief, [...flown, ...racetracks.flat()], plane.place);
  if (bounds === null) return null;
  const [wide, high] = [bounds.east - bounds.west, bounds.north - bounds.south];
  const mmPerMile = steppedScale(wide, high, (width - 2 * margin) / PX_PER_MM, mostMm);
  const px = mmPerMile * PX_PER_MM;
  const height = Math.ceil(high * px + 2 * margin + FOOT_PX);
  const left = (width - wide * px) / 2;
  const place = ([east, north]: readonly [number, number]): Point => [
    left + (east - bounds.west) * px,
    margin + (bounds.north - north) * px,
  ];
  const drawn = flown.map(place);
  // a silence ends at the first drawn point at its end or after
  const silent = new Set([...rowsAfterSilence(path.timeMs)].map((k) => Math.ceil(k / every)));
  const name = `The flight from above, north-up, with ${series.exercises.filter((e) => e !== null).length} exercises numbered`;
  return (
    <Drawing kind="plan" name={name} width={width} height={height}>
      {debrief.exercises.map(({ kind, facts, title }) =>
        kind === "course" && facts ? (
          <path
            key={title}
            class="iso"
            d={pathThrough([facts.line.start, facts.line.end].map((at) => place(plane.place(at[0], at[1]))))}
          />
        ) : null,
      )}
      {racetracks.map((racetrack, i) => (
        <path key={i} class="still" d={pathThrough(racetrack.map(place))} />
      ))}
      <FlownLine points={drawn} silent={silent} kind="thin" />
      {series.exercises.map((exercise) =>
        exercise === null ? null : (
          <FlownLine
            key={exercise.pathStart}
            points={drawn.slice(
              row(exercise.pathStart),
              row(exercise.pathStart + exercise.timeMs.length - 1) + 1,
            )}
            silent={shifted(silent, row(exercise.pathStart))}
          />
        ),
      )}
      {fixes.map(({ fix, at }) => {
        const [x, y] = place(at);
        return <FixSign key={fix.ident} x={x} y={y} ident={fix.ident} />;
      })}
      {series.exercises.map((exercise, k) =>
        exercise === null ? null : (
          <ExerciseNumber
            key={exercise.pathStart}
            number={k + 1}
            points={drawn}
            middle={row(exercise.pathStart + (exercise.timeMs.length >> 1))}
          />
        ),
      )}
      {cursor && <CursorRing cursor={cursor} timeMs={path.timeMs} points={drawn} every={every} />}
      {debrief.wind && <WindSign wind={debrief.wind} x={34} y={34} />}
      <NorthArrow x={width - 24} y={34} upTrueDeg={0} />
      <ScaleBar x={8} y={height - 12} pxPerMile={px} words={`1 NM = ${millimetreText(mmPerMile)}`} />
    </Drawing>
  );
}

const shifted = (rows: ReadonlySet<number>, by: number): ReadonlySet<number> =>
  new Set([...rows].map((k) => k - by));

/** The number stands beside the middle of the exercise, on the right-hand side of the flown line. */
function ExerciseNumber({
  number,
  points,
  middle,
}: {
  number: number;
  points: readonly Point[];
  middle: number;
}) {
  const at = points[middle];
  const next = points[Math.min(points.length - 1, middle + 5)];
  const before = points[Math.max(0, middle - 5)];
  if (!at || !next || !before) return null;
  const length = Math.hypot(next[0] - before[0], next[1] - before[1]) || 1;
  const [nx, ny] = [-(next[1] - before[1]) / length, (next[0] - before[0]) / length];
  return (
    <text class="plan-number halo" x={at[0] + nx * 14} y={at[1] + ny * 14 + 6} text-anchor="middle">
      {number}
    </text>
  );
}

function middleOf(latitude: Float64Array, longitude: Float64Array): [number, number] | null {
  const n = latitude.length;
  for (let i = n >> 1; i < n; i++)
    if (Number.isFinite(latitude[i]) && Number.isFinite(longitude[i])) return [latitude[i], longitude[i]];
  return n > 0 && Number.isFinite(latitude[0]) ? [latitude[0], longitude[0]] : null;
}
