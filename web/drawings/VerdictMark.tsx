/** One verdict as a mark of 46 by 16 px: where the value lies against its limit, inside, across or outside. */
import type { Verdict } from "./contract.ts";
import { line } from "./path.ts";
import { verdictPlace } from "./verdictGeometry.ts";

const WIDTH = 46;
const HEIGHT = 16;
const MIDDLE = HEIGHT / 2;
const LEFT = 2;
/** Where the limit stands; the line goes on to half as much again. */
const LIMIT_X = 26;
const RIGHT = 42;

const x = (limits: number): number => Math.min(RIGHT, LEFT + limits * (LIMIT_X - LEFT));

export function VerdictMark({ verdict }: { verdict: Verdict }) {
  const place = verdictPlace(verdict);
  return (
    <svg
      class="drawing verdict-mark"
      width={WIDTH}
      height={HEIGHT}
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      aria-hidden="true"
    >
      <path
        class="axis"
        d={line(LEFT, MIDDLE, LIMIT_X, MIDDLE)}
        stroke-dasharray={place ? undefined : "2 2"}
      />
      <path class="limit" d={line(LIMIT_X, 1, LIMIT_X, HEIGHT - 1)} />
      {[3, 7.5, 12].map((y) => (
        <path key={y} class="hach" d={line(LIMIT_X, y, LIMIT_X + 4, y + 1.5)} />
      ))}
      {place && (
        <>
          <path class="whisk" d={line(x(place.whisker[0]), MIDDLE, x(place.whisker[1]), MIDDLE)} />
          <circle class="dot" cx={x(place.at)} cy={MIDDLE} r={3.4} />
        </>
      )}
    </svg>
  );
}
