/** Ground velocities in turns lie on a circle: its middle is the wind, its radius the true airspeed. North-up. */

import { type DebriefDocument, type FlightSeries, isFull, windName } from "./contract.ts";
import { Drawing } from "./Drawing.tsx";
import { line } from "./path.ts";
import { fixedScales, PX_PER_MM } from "./scale.ts";
import { surroundings } from "./surroundings.ts";
import { turnVelocities } from "./turnVelocities.ts";
import { WindSign } from "./WindArrow.tsx";
import { onPaper } from "./windGeometry.ts";

const MARGIN_PX = 14;
const HEAD_PX = 20;
const FOOT_PX = 34;
/** Widest drawing that stands beside the table, and in the column of a window of 360 px; its margins apart. Own choice. */
const WIDEST_PX = 500;
const WIDEST_NARROW_PX = 300;
/** Direction in which the radius is drawn: below east, clear of the arrow of most winds. Own choice. */
const RADIUS_AT_DEG = 118;

export function VelocityCircle({
  series,
  document: debrief,
}: {
  series: FlightSeries;
  document: DebriefDocument;
}) {
  const { narrow, paper } = surroundings().value;
  const velocities = turnVelocities(series.path, debrief.wind?.altitudeFt ?? null);
  const { wind } = debrief;
  if (velocities.length === 0) return null;
  const known = wind !== null && isFull(wind) ? wind : null;
  // The circle's middle lies where the wind blows to; paper counts downward.
  const [toEast, toSouth] = known ? onPaper(known.fromTrueDeg + 180, 0) : [0, 0];
  const speed = known?.speedKt ?? 0;
  const [east, north] = [toEast * speed, -toSouth * speed];
  const airspeed = wind?.tasKt ?? null;
  const circles =
    airspeed === null
      ? []
      : [
          [0, 0],
          [east, north],
        ].flatMap(([e, n]) => [
          [e - airspeed, n - airspeed],
          [e + airspeed, n + airspeed],
        ]);
  const corners = [...velocities.map(({ east: e, north: n }) => [e, n]), ...circles];
  const [west, right] = [Math.min(0, ...corners.map((v) => v[0])), Math.max(0, ...corners.map((v) => v[0]))];
  const [south, top] = [Math.min(0, ...corners.map((v) => v[1])), Math.max(0, ...corners.map((v) => v[1]))];
  // A fast aircraft would not fit: its scale goes down by whole millimetres, and the scale bar says so.
  const fixedMm = fixedScales(narrow || paper).mmPerTenKnotsOfCircle;
  const widest = (narrow ? WIDEST_NARROW_PX : WIDEST_PX) / PX_PER_MM;
  const fitting = Math.max(1, Math.floor((widest * 10) / (right - west)));
  const mm = Math.min(fixedMm, fitting);
  const px = (mm / 10) * PX_PER_MM;
  const x = (kt: number) => MARGIN_PX + (kt - west) * px;
  const y = (kt: number) => HEAD_PX + (top - kt) * px;
  const width = Math.ceil(x(right) + MARGIN_PX);
  const height = Math.ceil(y(south) + MARGIN_PX + FOOT_PX);
  const a = (RADIUS_AT_DEG * Math.PI) / 180;
  const tip =
    airspeed === null ? null : ([east + Math.sin(a) * airspeed, north + Math.cos(a) * airspeed] as const);
  const name = `Velocity circle, north-up: ${velocities.length} ground velocities in turns, ${wind ? windName(wind) : "wind not known"}${airspeed === null ? "" : `, true airspeed ${Math.round(airspeed)} kt`}`;
  return (
    <Drawing kind="velocity-circle" name={name} width={width} height={height}>
      <path class="hair" d={line(x(west), y(0), x(right), y(0))} />
      <path class="hair" d={line(x(0), HEAD_PX - 2, x(0), y(south))} />
      {airspeed !== null && <circle class="still" cx={x(0)} cy={y(0)} r={airspeed * px} />}
      {airspeed !== null && known && <circle class="solved" cx={x(east)} cy={y(north)} r={airspeed * px} />}
      {velocities.map(({ east: e, north: n, near }, i) => (
        <circle key={i} class={near ? "gv" : "dot-o"} cx={x(e)} cy={y(n)} r={1.9} />
      ))}
      <text class="lab-i" x={x(0)} y={12} text-anchor="middle">
        north, T
      </text>
      {tip && airspeed !== null && known && (
        <>
          <path class="radius" d={line(x(east), y(north), x(tip[0]), y(tip[1]))} />
          <text
            class="lab sol halo"
            x={(x(east) + x(tip[0])) / 2}
            y={(y(north) + y(tip[1])) / 2 - 6}
            text-anchor="middle"
          >
            airspeed {Math.round(airspeed)} kt
          </text>
        </>
      )}
      {known && <WindSign wind={known} x={x(0)} y={y(0)} pxPerKnot={px} fromRing />}
      <text
        class="lab halo"
        x={x(0) + (east < 0 ? 8 : -8)}
        y={y(0) + (north < 0 ? -6 : 15)}
        text-anchor={east < 0 ? "start" : "end"}
      >
        0
      </text>
      <path class="scalebar" d={`M14 ${height - 18}V${height - 14}H${14 + 50 * px}V${height - 18}`} />
      <text class="lab" x={14 + 50 * px + 8} y={height - 10}>
        50 kt (10 kt = {mm} mm{mm < fixedMm && ", fitted"})
      </text>
    </Drawing>
  );
}
