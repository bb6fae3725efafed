/** The big run for holds, `npm run accuracy -- --holds`: 400 holds, the same at jet speed, 200 flights of each kind that holds nowhere, real ones. */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { cleanTrack } from "../../src/track/index.ts";
import { falseHolds, HoldMeter, holdsIn, NO_HOLDS, seedsFrom } from "../hold/finding-meter.ts";
import { legErrorsOf, within95 } from "../hold/leg-times.ts";
import { readPlainGpx } from "./real.ts";

/** Never used for tuning: that was done on 1 to 600. */
const FIRST_SEED = 20_000;
/** Runway 22 at Lindholt, where the simulated circuits are flown. */
const RUNWAY = { latitude: 35.672, longitude: 172.395 };

export function printHolds(count: number, write: (line: string) => void): void {
  const figure = (v: number) => v.toFixed(3);
  for (const name of ["hold-any", "hold-any-fast"]) {
    const meter = new HoldMeter();
    for (const seed of seedsFrom(FIRST_SEED, count)) meter.flight(name, seed);
    const report = meter.report();
    write(`${name}, ${count} flights logged at 1 s, 5 s and adaptively`);
    for (const [key, value] of Object.entries(report)) write(`  ${key} ${figure(value)}`);
    for (const [how, briefed] of [
      ["in a brief", true],
      ["without one", false],
    ] as const) {
      const { outbound, inbound } = legErrorsOf(name, seedsFrom(FIRST_SEED, count), briefed);
      const figures = [outbound, inbound, [...outbound, ...inbound]].map((e) => figure(within95(e)));
      write(`  legs as told, ${how}, outbound, inbound and all, 95 in 100 within s: ${figures.join(" ")}`);
    }
  }
  const seeds = seedsFrom(FIRST_SEED, Math.ceil(count / 2));
  write(`flights that hold nowhere, ${seeds.length} each: with a hold found, of those called doubtful`);
  for (const name of NO_HOLDS) {
    const { found, maybe } = falseHolds(name, seeds);
    write(`  ${name} ${found} ${maybe}`);
  }
  for (const name of ["rectangular-circuits", "narrow-circuits", "oval-circuits"]) {
    const runway = falseHolds(name, seeds, { heights: false, hints: { runways: [RUNWAY] } });
    write(`  ${name}, no heights, runway known: ${runway.found} ${runway.maybe}`);
    const blind = falseHolds(name, seeds, { heights: false, hints: {} });
    write(`  ${name}, neither heights nor runway: ${blind.found} ${blind.maybe}`);
  }
}

/** What is found in the logs of a folder, to be read beside their truth. */
export function printRealHolds(folder: string, write: (line: string) => void): void {
  if (!existsSync(folder)) {
    write(`no folder ${folder}: no real flights looked at`);
    return;
  }
  const clock = (t: number) => new Date(t).toISOString().slice(11, 19);
  for (const file of readdirSync(folder).sort()) {
    if (!file.endsWith(".gpx")) continue;
    const { track } = cleanTrack(readPlainGpx(readFileSync(join(folder, file), "utf8"), file));
    const holds = holdsIn(track);
    write(`${file}: ${holds.length === 0 ? "no hold" : ""}`);
    for (const h of holds) {
      const place = `${h.fix.latitude.toFixed(4)} ${h.fix.longitude.toFixed(4)} +-${h.fix95.toFixed(2)} NM`;
      const course = `${h.inbound.toFixed(1)} +-${h.inbound95.toFixed(1)} deg true${h.sure ? ", sure" : ""}`;
      write(`  ${h.turns} turns, entry ${h.entry}, inbound ${course}, fix ${place}, ${h.laps.length} laps`);
      for (const { times } of h.laps) write(`    ${Object.values(times).map(clock).join(" ")}`);
    }
  }
}
