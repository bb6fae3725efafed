/** The flight from above, on which points are picked: by a click, or by a cross that the arrow keys move. */
import { useMemo, useRef, useState } from "preact/hooks";
import type { BriefExercise, ListedPoint, Position } from "../../src/index.ts";
import { FixSign, NorthArrow, pathThrough, ScaleBar, useWidth } from "../drawings/index.ts";
import type { Flight } from "../flight.ts";
import { chosen, flightTime, ownPoints, reading, values } from "./making.ts";
import { picked, picking } from "./picking.ts";
import { type Ground, groundOf, lineMeant } from "./plan-geometry.ts";
import { known } from "./points.ts";
import { exercisesOf, resolvedAt } from "./reading.ts";

/** A click this near to a known point means it, px: a fingertip. */
const SNAP_PX = 12;
const STEP_PX = 8;
/** So many known points are drawn at most, the nearest to the flight first. Own choice: more hide each other. */
const MOST_DRAWN = 150;

const isInside = ([x, y]: readonly [number, number], { width, height }: Ground): boolean =>
  x >= 0 && y >= 0 && x <= width && y <= height;

/** Points of the brief, then of the log and the lists, as far as they lie on the plan; each place once. */
function pointsOn(ground: Ground): {
  readonly own: readonly ListedPoint[];
  readonly others: readonly ListedPoint[];
} {
  const own = ownPoints.value;
  const taken = new Set(own.map((fix) => fix.ident));
  const others = known.value.points
    .filter((point) => !taken.has(point.ident) && isInside(ground.toPx(point), ground))
    .slice(0, MOST_DRAWN);
  return { own, others };
}

function Meant({ ground }: { ground: Ground }) {
  const count = exercisesOf(values.value).length;
  const meant = Array.from({ length: count }, (_, i) => resolvedAt(reading.value, i, flightTime.value));
  return (
    <>
      {meant.map((exercise: BriefExercise | null, i) => {
        const ends = exercise && lineMeant(exercise);
        return (
          ends && (
            <path
              key={i}
              class={i === chosen.value ? "course" : "iso"}
              d={pathThrough(ends.map(ground.toPx))}
            />
          )
        );
      })}
    </>
  );
}

export function Plan({ flight }: { flight: Flight }) {
  const box = useRef<HTMLDivElement>(null);
  const width = useWidth(box);
  const { path } = flight.series;
  const ground = useMemo(() => (width > 0 ? groundOf(path, width) : null), [path, width]);
  return (
    <div ref={box} id="brief-plan" class="plan-pick">
      {ground && <Drawn flight={flight} ground={ground} />}
    </div>
  );
}

function Drawn({ flight, ground }: { flight: Flight; ground: Ground }) {
  const { path } = flight.series;
  const [cross, setCross] = useState<readonly [number, number] | null>(null);
  const flown = useMemo(
    () =>
      pathThrough(
        Array.from(path.latitude, (latitude, i) => ground.toPx({ latitude, longitude: path.longitude[i]! })),
      ),
    [path, ground],
  );
  const { own, others } = pointsOn(ground);
  const pick = (x: number, y: number) => {
    const near = [...own, ...others]
      .map((point) => ({ point, away: Math.hypot(ground.toPx(point)[0] - x, ground.toPx(point)[1] - y) }))
      .filter(({ away }) => away <= SNAP_PX)
      .sort((a, b) => a.away - b.away)[0]?.point;
    picked(near ?? null, near ?? ground.toPlace(x, y));
  };
  const key = (event: KeyboardEvent) => {
    const at = cross ?? [ground.width / 2, ground.height / 2];
    const step = event.shiftKey ? 1 : STEP_PX;
    const moves: Record<string, readonly [number, number]> = {
      ArrowLeft: [-step, 0],
      ArrowRight: [step, 0],
      ArrowUp: [0, -step],
      ArrowDown: [0, step],
    };
    const move = moves[event.key];
    if (move) setCross([at[0] + move[0], at[1] + move[1]]);
    else if (event.key === "Enter" || event.key === " ") pick(at[0], at[1]);
    else if (event.key === "Escape") {
      setCross(null);
      picking.value = null;
    } else return;
    event.preventDefault();
  };
  const wanted = picking.value;
  const words = wanted
    ? `Click where it is: ${wanted.words}.`
    : "Click a place, or a point of the log, to take it among the points of the brief.";
  return (
    <>
      <p class="fine" aria-hidden="true">
        {words}
      </p>
      <svg
        class="drawing plan"
        role="application"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the cross is moved by keys, so the plan must take focus
        tabIndex={0}
        width={ground.width}
        height={ground.height}
        viewBox={`0 0 ${ground.width} ${ground.height}`}
        aria-label={`The flight from above, north-up. ${words} Arrow keys move a cross, with shift finely; Enter picks.`}
        onKeyDown={key}
        onBlur={() => setCross(null)}
        onClick={(event) => {
          const frame = event.currentTarget.getBoundingClientRect();
          pick(event.clientX - frame.left, event.clientY - frame.top);
        }}
      >
        <Meant ground={ground} />
        <path class="flown thin" d={flown} />
        {others.map((point) => (
          <Known key={`${point.ident} ${point.latitude}`} point={point} ground={ground} />
        ))}
        {own.map((fix) => {
          const [x, y] = ground.toPx(fix);
          return <FixSign key={fix.ident} x={x} y={y} ident={fix.ident} />;
        })}
        {cross && <path class="dim" d={crossPath(cross)} />}
        <NorthArrow x={ground.width - 20} y={38} upTrueDeg={0} />
        <ScaleBar x={8} y={ground.height - 8} pxPerMile={ground.pxPerMile} words="" />
      </svg>
      <p class="vh" role="status">
        {cross && crossWords(ground.toPlace(cross[0], cross[1]))}
      </p>
    </>
  );
}

const crossPath = ([x, y]: readonly [number, number]): string =>
  `M${x - 12} ${y}H${x + 12}M${x} ${y - 12}V${y + 12}`;

const crossWords = ({ latitude, longitude }: Position): string =>
  `${latitude.toFixed(3)}, ${longitude.toFixed(3)}`;

/** A point of the log or a list that the brief does not name yet. */
function Known({ point, ground }: { point: ListedPoint; ground: Ground }) {
  const [x, y] = ground.toPx(point);
  return (
    <g class="known-point">
      <circle class="fixdot" cx={x} cy={y} r={2} />
      <text class="lab halo" x={x + 6} y={y + 4}>
        {point.ident}
      </text>
    </g>
  );
}
