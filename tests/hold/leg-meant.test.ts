/** What legs a hold without a brief was meant to have. ICAO Doc 8168: outbound timing begins over or abeam the fix, or at wings level where that is later; one minute to 14,000 ft. */
import { expect, it } from "vitest";
import type { LapMoments } from "../../src/hold/lap.ts";
import { legOf } from "../../src/hold/leg-meant.ts";
import { HOLDING } from "../../src/standard/holding.ts";

const turn = (from: number, to: number) => ({
  from: 1000 * from,
  to: 1000 * to,
  rate: 3,
  bank: 15,
  seconds: to - from,
});
/** Over the fix at 0, wings level at 60 s, abeam the fix so many seconds after that, and out so many more; seconds. */
const lap = (abeam: number | null, out: number): LapMoments =>
  ({
    start: { time: 0 },
    outboundTurn: turn(0, 60),
    inboundTurn: turn(60 + out, 120 + out),
    end: { time: 1000 * (180 + out) },
    abeam: abeam === null ? null : 1000 * (60 + abeam),
  }) as unknown as LapMoments;

it.each([
  [
    "abeam 40 s after wings level, as a wind behind the turn makes it: a minute by the clock",
    lap(40, 100),
    60,
  ],
  ["abeam in the turn: by the clock from wings level", lap(-10, 100), 100],
  ["never abeam: from wings level", lap(null, 100), 100],
])("%s", (_, flown, seconds) => {
  expect(legOf(null, [flown], HOLDING.icao, 4000)).toEqual({ by: "time", seconds });
});
