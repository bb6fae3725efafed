/** Blocks of a straight: how they scatter about a line, and the direction that they share. */
import type { Facts } from "./facts.ts";

/** The direction of a block is that of the straight this far around it, s. */
const DIRECTION_REACH = 240;

/** A line through some values, and how they scatter about it. */
export class Trend {
  private n = 0;
  private t = 0;
  private v = 0;
  private tt = 0;
  private tv = 0;
  private vv = 0;

  add(t: number, v: number): void {
    this.n++;
    this.t += t;
    this.v += v;
    this.tt += t * t;
    this.tv += t * v;
    this.vv += v * v;
  }

  /** Variance about the line. */
  scatter(): number {
    const { n, t, v } = this;
    const tt = this.tt - (t * t) / n;
    const tv = this.tv - (t * v) / n;
    const vv = this.vv - (v * v) / n;
    return Math.max(0, vv - (tt > 0 ? (tv * tv) / tt : 0)) / Math.max(1, n - 2);
  }
}

/**
 * Blocks keep their speed, and take the direction of the straight around them: a line through the directions within
 * reach, so that an arc flown slowly keeps its curve, while what wanders across a straight is not taken for a turn.
 */
export function straighten(facts: Facts, first: number): void {
  const { count, east, north, excess, seconds } = facts;
  const n = count - first;
  const angle = new Float64Array(n);
  const speed = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const a = Math.atan2(east[first + i]!, north[first + i]!);
    const turn = i === 0 ? 0 : a - angle[i - 1]!;
    angle[i] = i === 0 ? a : angle[i - 1]! + Math.atan2(Math.sin(turn), Math.cos(turn));
    speed[i] = Math.hypot(east[first + i]!, north[first + i]!);
  }
  for (let i = 0, low = 0, high = 0; i < n; i++) {
    const at = seconds[first + i]!;
    while (at - seconds[first + low]! > DIRECTION_REACH) low++;
    while (high < n && seconds[first + high]! - at <= DIRECTION_REACH) high++;
    let t = 0;
    let a = 0;
    let v = 0;
    let tt = 0;
    let ta = 0;
    for (let j = low; j < high; j++) {
      const dt = seconds[first + j]! - at;
      t += dt;
      a += angle[j]!;
      v += speed[j]!;
      tt += dt * dt;
      ta += dt * angle[j]!;
    }
    const m = high - low;
    const spread = tt - (t * t) / m;
    const slope = m > 2 && spread > 0 ? (ta - (t * a) / m) / spread : 0;
    const direction = (a - slope * t) / m;
    east[first + i] = (v / m) * Math.sin(direction);
    north[first + i] = (v / m) * Math.cos(direction);
    excess[first + i] = speed[i]! * Math.cos(angle[i]! - direction) - v / m;
  }
}
