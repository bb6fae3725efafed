/** What is marked on the plan: the lines that were meant, and points that are known but not yet of the brief. */
import type { BriefExercise, ListedPoint } from "../../src/index.ts";
import { pathThrough } from "../drawings/index.ts";
import { chosen, flightTime, ownPoints, reading, values } from "./making.ts";
import { type Ground, lineMeant } from "./plan-geometry.ts";
import { known } from "./points.ts";
import { exercisesOf, resolvedAt } from "./reading.ts";

/** So many known points are drawn at most, the nearest to the flight first. Own choice: more hide each other. */
const MOST_DRAWN = 150;

const isInside = ([x, y]: readonly [number, number], { width, height }: Ground): boolean =>
  x >= 0 && y >= 0 && x <= width && y <= height;

/** Points of the brief, then of the log and the lists, as far as they lie on the plan; each place once. */
export function pointsOn(ground: Ground): {
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

export function Meant({ ground }: { ground: Ground }) {
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

/** A point of the log or a list that the brief does not name yet. */
export function Known({ point, ground }: { point: ListedPoint; ground: Ground }) {
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
