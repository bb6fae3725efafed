/** A hold as found, made from the simulator's own truth: what measuring it takes, without the finder. */
import type { FoundHold, FoundLap } from "../../src/hold/index.ts";
import { firstAtOrAfter, type Span } from "../../src/quantity/span.ts";
import type { TrueHold } from "../../src/simulator/truth.ts";
import type { Leg } from "../../src/track/leg.ts";
import type { Motion } from "../../src/track/motion.ts";

/** Turns are those of the legs about the true moments. */
export function foundFromTruth(hold: TrueHold, motion: Motion, legs: readonly Leg[]): FoundHold {
  const row = (utc: string) => Math.min(motion.length - 1, firstAtOrAfter(motion.time, Date.parse(utc)));
  const turnIn = (from: number, to: number): Span => {
    const turns = legs.filter((l) => l.kind === "turn" && l.span.start < to && l.span.end > from);
    return turns.length > 0
      ? { start: turns[0]!.span.start, end: turns.at(-1)!.span.end }
      : { start: from, end: to };
  };
  const laps = hold.laps.map((lap): FoundLap => {
    const [start, outbound, inbound, end] = [lap.utc, lap.outboundUtc, lap.inboundUtc, lap.endUtc].map(
      row,
    ) as [number, number, number, number];
    const turnBack = row(lap.inboundTurnUtc);
    const outboundTurn = turnIn(start + 5, outbound - 5);
    const inboundTurn = turnIn(turnBack + 5, inbound - 5);
    return {
      outboundTurn,
      outbound: { start: outboundTurn.end, end: inboundTurn.start },
      inboundTurn,
      inbound: { start: inboundTurn.end, end: end + 1 },
      times: {
        start: Date.parse(lap.utc),
        outbound: Date.parse(lap.outboundUtc),
        inboundTurn: Date.parse(lap.inboundTurnUtc),
        inbound: Date.parse(lap.inboundUtc),
        end: Date.parse(lap.endUtc),
      },
      complete: true,
    };
  });
  return {
    span: { start: row(hold.t0), end: row(hold.t1) + 1 },
    turns: hold.turn,
    fix: { latitude: hold.fix[0], longitude: hold.fix[1] },
    fix95: 0.05,
    inbound: hold.inboundTrueDeg,
    inbound95: 1,
    sure: true,
    maybeCircuit: false,
    alone: false,
    entry: hold.entry,
    laps,
  };
}
