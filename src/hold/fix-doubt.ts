/** How near to its fix a hold's turns began, beyond what its laps show by their scatter: what all of them may share, and what the log rounds off. */
import type { Metres, Seconds, Share } from "../quantity/units.ts";
import { Z95 } from "../quantity/weigh.ts";
import type { Ground } from "./ground.ts";
import { median } from "./likelihood.ts";
import { slowness } from "./slowness.ts";
import type { TurnEdges } from "./turn-edges.ts";

/** A pilot turns so soon after the fix, 95 %, at rate one, and does so on every lap; slower turns take as much longer to begin. Chosen: to see the passage, and to roll in. */
const SAME_EVERY_LAP: Seconds = 5;
/** The turning proper lies between these shares of a turn: rolling in and out are left out. Chosen. */
const PROPER: readonly [Share, Share] = [0.15, 0.85];
const STEP_MS = 1000;
const FEWEST = 5;

/** How far along the course from where they seem to begin the fix may lie, 95 %. */
export function turnsBegin95(ground: Ground, turns: readonly TurnEdges[]): Metres {
  const off = turns.flatMap((turn) => offRamp(ground, turn));
  const rounded = off.length === 0 ? 0 : Z95 * median(off);
  return Math.hypot(SAME_EVERY_LAP * slowness(ground.trueAirspeed), rounded) * ground.metres;
}

/**
 * How far in time the heading of a turn lies from a steady ramp, one standard deviation. A log of plots far apart, joined
 * by straight lines, draws turns with corners: each stands for a turn of so many seconds, and is up to half of them early
 * or late. Nothing where the turn is too short to tell.
 */
function offRamp(ground: Ground, { start, end, before, after }: TurnEdges): Seconds[] {
  const [least, most] = PROPER.map((share) => before + share * (after - before)) as [number, number];
  const side = Math.sign(after - before);
  let [n, t1, h1, tt, th, hh] = [0, 0, 0, 0, 0, 0];
  const middle = (start + end) / 2;
  for (let at = start; at <= end; at += STEP_MS) {
    const heading = ground.headingAt(at);
    if (side * (heading - least) < 0 || side * (heading - most) > 0) continue;
    const [t, h] = [(at - middle) / 1000, heading - before];
    n++;
    t1 += t;
    h1 += h;
    tt += t * t;
    th += t * h;
    hh += h * h;
  }
  const [times, both, headings] = [n * tt - t1 * t1, n * th - t1 * h1, n * hh - h1 * h1];
  if (n < FEWEST || !(times > 0) || both === 0) return [];
  // least squares of the heading over time: what is left of the heading, over the rate
  const rate = both / times;
  return [Math.sqrt(Math.max(0, headings - both * rate)) / n / Math.abs(rate)];
}
