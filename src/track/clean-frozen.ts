/** Positions that a receiver repeated while the aircraft flew on. */
import { METRES_PER_NAUTICAL_MILE } from "../quantity/factor.ts";
import { HOUR_MS } from "../quantity/time.ts";
import type { CleanFinding } from "./clean-finding.ts";
import { keptRows } from "./rows.ts";
import { stepBetween } from "./step.ts";
import type { Track } from "./track.ts";

/** Knots, before the stop and over it: faster than an aircraft that stops and goes on. Common practice, no source. */
const FLYING_KT = 30;
/** Knots, where only one side is known: nothing that flies stops from this in a few seconds. Common practice, no source. */
const ONE_SIDE_KT = 60;
/** Seconds: at the log's ends the neighbour must be as near as this to tell a speed at the stop. */
const ONE_SIDE_S = 5;
/** Metres: two equal positions nearer together in time than this distance flown may be one place, rounded. */
const SHORTEST_M = 10;

/**
 * Runs of exactly equal positions where the aircraft came with more than 30 kt and was, after them, as far on as
 * more than 30 kt over their time (at the log's ends: 60 kt on the known side within 5 s). The first of the run
 * is the true one and stays. A parked aircraft comes slowly and is left alone. Times must rise.
 */
export function findFrozen(track: Track, keep: Uint8Array): CleanFinding {
  const { time, latitude, longitude } = track;
  const all = keptRows(keep);
  const step = (a: number, b: number) =>
    stepBetween(latitude[a]!, longitude[a]!, latitude[b]!, longitude[b]!);
  const hours = (a: number, b: number) => (time[b]! - time[a]!) / HOUR_MS;
  const near = (a: number, b: number) => time[b]! - time[a]! <= ONE_SIDE_S * 1000;
  const rows: number[] = [];
  for (let k = 0; k < all.length; ) {
    const first = all[k]!;
    let end = k + 1;
    while (
      end < all.length &&
      latitude[all[end]!] === latitude[first] &&
      longitude[all[end]!] === longitude[first]
    )
      end++;
    if (end - k > 1) {
      const last = all[end - 1]!;
      const before = k > 0 ? all[k - 1]! : null;
      const after = end < all.length ? all[end]! : null;
      const came = before === null ? null : step(before, first) / hours(before, first);
      const went = after === null ? null : step(last, after) / hours(first, after);
      let frozen = false;
      if (came !== null && went !== null) {
        const distance = Math.min(came, went) * hours(first, last) * METRES_PER_NAUTICAL_MILE;
        frozen = came > FLYING_KT && went > FLYING_KT && distance > SHORTEST_M;
      } else if (came !== null) frozen = came > ONE_SIDE_KT && near(before!, first) && !near(first, last);
      else if (went !== null && near(last, after!)) {
        frozen = step(last, after!) / hours(last, after!) > ONE_SIDE_KT && !near(first, last);
      }
      // Before the first true fix it is the last of the run that is nearest to it in time.
      if (frozen)
        for (let i = k; i < end; i++) if (all[i] !== (came === null ? last : first)) rows.push(all[i]!);
    }
    k = end;
  }
  const facts = { flyingKt: FLYING_KT };
  return { code: "frozen-position", severity: "warning", rows, dropped: true, facts };
}
