/** Real flights with measured wind: a folder of GPX logs, each with a `.truth.json` of the same name beside it. */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { findLegs, smoothTrack } from "../../src/track/index.ts";
import type { Track } from "../../src/track/track.ts";
import { estimateWind } from "../../src/wind/index.ts";
import { Meter } from "./compare.ts";

/** Standard error of the measured wind, kt, as a vector; half of its square on each axis. */
const TRUTH_KT = 2;
/** A truth sample is met by the nearest row if it is this near, s. */
const NEAR_SECONDS = 10;

interface TruthFile {
  readonly truth: {
    readonly wind?: {
      readonly series: readonly { t: string; wind_from: number; wind_kt: number; sd_kt: number }[];
    };
  };
}

/** A plain reader for these files alone, so that the meter does not lean on the importer. */
export function readPlainGpx(text: string, name: string): Track {
  const points = [...text.matchAll(/<trkpt lat="([^"]+)" lon="([^"]+)">(.*?)<\/trkpt>/gs)];
  const n = points.length;
  const inside = (body: string, tag: string) => new RegExp(`<${tag}>([^<]*)</${tag}>`).exec(body)?.[1];
  return {
    name,
    kind: "gpx",
    length: n,
    time: Float64Array.from(points, (p) => Date.parse(inside(p[3]!, "time") ?? "")),
    latitude: Float64Array.from(points, (p) => Number(p[1])),
    longitude: Float64Array.from(points, (p) => Number(p[2])),
    altitude: Float64Array.from(points, (p) => Number(inside(p[3]!, "ele") ?? Number.NaN) / 0.3048),
    segment: new Int32Array(n),
    line: new Int32Array(n),
  };
}

export interface RealScore {
  readonly flight: string;
  readonly legs: number;
  readonly score: ReturnType<Meter["report"]> | null;
  /** Share of rows with each knowledge. */
  readonly claimed: number;
  readonly along: number;
}

/** Scores each log of the folder; null where the folder is absent. */
export function scoreReal(folder: string): RealScore[] | null {
  if (!existsSync(folder)) return null;
  return readdirSync(folder)
    .filter((file) => file.endsWith(".gpx"))
    .sort()
    .map((file) => {
      const track = readPlainGpx(readFileSync(join(folder, file), "utf8"), file);
      const truthFile = join(folder, file.replace(/\.gpx$/, ".truth.json"));
      const series = existsSync(truthFile)
        ? ((JSON.parse(readFileSync(truthFile, "utf8")) as TruthFile).truth.wind?.series ?? [])
        : [];
      const motion = smoothTrack(track)!;
      const legs = findLegs(motion);
      const { alongFlight } = estimateWind(motion, legs, { airspeed: null, winds: [] });
      const meter = new Meter();
      let k = 0;
      for (const truth of series) {
        const t = Date.parse(truth.t);
        while (k < motion.length - 1 && motion.time[k]! < t) k++;
        if (Math.abs(motion.time[k]! - t) > NEAR_SECONDS * 1000) continue;
        const from = (truth.wind_from * Math.PI) / 180;
        const east = -truth.wind_kt * Math.sin(from);
        meter.sample(motion, alongFlight, k, east, -truth.wind_kt * Math.cos(from), TRUTH_KT / Math.SQRT2);
      }
      const share = (knowledge: string) =>
        alongFlight.knowledge.filter((x) => x === knowledge).length / motion.length;
      return {
        flight: file.replace(/\.gpx$/, ""),
        legs: legs.length,
        score: series.length > 0 ? meter.report() : null,
        claimed: share("full"),
        along: share("along"),
      };
    });
}
