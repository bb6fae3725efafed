/** One flight of a log that holds several: the one that was asked for, or the longest that went anywhere. */
import { type Issue, UnusableInput } from "../quantity/issue.ts";
import { spanLength } from "../quantity/span.ts";
import { utcText } from "../quantity/time.ts";
import type { NauticalMiles } from "../quantity/units.ts";
import { cutTrack, type Flight, findFlights, type Track } from "../track/index.ts";
import type { DebriefDocument } from "./document.ts";

/** A stay that never comes this far from where it began is no flight to debrief. Wider than any airfield. Common practice, no source. */
const WENT_SOMEWHERE: NauticalMiles = 2;

export interface ChosenFlight {
  readonly track: Track;
  /** Index among the flights, from 0. */
  readonly index: number;
  readonly flights: DebriefDocument["log"]["flights"];
  /** A note where other flights were left out. */
  readonly issues: readonly Issue[];
  readonly dropped: Readonly<Record<string, number>>;
}

function longest(flights: readonly Flight[]): number {
  const going = flights.filter(({ farthest }) => farthest >= WENT_SOMEWHERE);
  const best = (going.length > 0 ? going : flights).reduce((a, b) =>
    spanLength(b.span) > spanLength(a.span) ? b : a,
  );
  return flights.indexOf(best);
}

/** @throws UnusableInput, code `no-such-flight`, when the log has no flight of the index asked for. */
export function chooseFlight(track: Track, file: string, asked: number | null): ChosenFlight {
  const flights = findFlights(track);
  if (asked !== null && !flights[asked]) {
    const facts = { asked: asked + 1, flights: flights.length };
    throw new UnusableInput([{ code: "no-such-flight", severity: "error", where: { file }, facts }]);
  }
  const index = asked ?? longest(flights);
  const cut = flights.length > 1 ? cutTrack(track, flights[index]!.span) : track;
  const others = track.length - cut.length;
  const timed = Number.isFinite(track.time[0]!);
  return {
    track: cut,
    index,
    flights: flights.map(({ span, farthest }) => ({
      startUtc: timed ? utcText(track.time[span.start]!) : null,
      endUtc: timed ? utcText(track.time[span.end - 1]!) : null,
      farthestNm: farthest,
    })),
    issues:
      others > 0
        ? [
            {
              code: "other-flights",
              severity: "note",
              where: { file },
              facts: { flights: flights.length, chosen: index + 1, dropped: others },
            },
          ]
        : [],
    dropped: others > 0 ? { "other-flights": others } : {},
  };
}
