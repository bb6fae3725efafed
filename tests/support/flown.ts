/** Flies a list of headings, turns and climbs through wandering wind and airspeed, and logs it as a receiver would: a track with its truth beside it. */
import type { Track } from "../../src/track/track.ts";

/** A small seeded generator: mulberry32, and normal deviates by Box and Muller. */
export function seeded(seed: number): { uniform: () => number; normal: () => number } {
  let a = (seed * 2654435761) >>> 0;
  const uniform = () => {
    a = (a + 0x6d2b79f5) >>> 0;
    let t = Math.imul(a ^ (a >>> 15), a | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  const normal = () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
  return { uniform, normal };
}

export type FlownStep =
  | { readonly straight: number }
  | { readonly turn: number; readonly rate?: number }
  | { readonly climbTo: number; readonly feetPerMinute: number }
  | { readonly speed: number };

export interface FlownOptions {
  readonly seed: number;
  readonly steps: readonly FlownStep[];
  /** Knots, true, and where the nose points first. */
  readonly airspeed?: number;
  readonly heading?: number;
  readonly altitude?: number;
  /** Mean wind, from, kt. Drawn (5 to 35 kt from anywhere) where not given. */
  readonly wind?: { readonly from: number; readonly speed: number };
  readonly slowWind?: { readonly sd: number; readonly seconds: number };
  /** kt per 1,000 ft, rms of the vector. */
  readonly shear?: number;
  /** Random walk of the wind with height, kt per axis and square root of 1,000 ft. */
  readonly windWalk?: number;
  readonly gusts?: number;
  readonly airspeedWander?: number;
  readonly lostInTurns?: number;
  /** The indicated airspeed is held in climbs instead of the true one. */
  readonly indicated?: boolean;
  readonly headingWander?: number;
  readonly every?: number | "adaptive";
  readonly white?: number;
  readonly bias?: number;
  /** Rounded to 1e-5 degrees where not false. */
  readonly rounded?: boolean;
  readonly start?: { readonly latitude: number; readonly longitude: number };
}

export interface Flown {
  readonly track: Track;
  /** At the rows of the track: kt. Wind as the velocity of the air, without the gusts: nobody asks for those. */
  readonly truth: {
    readonly airEast: Float64Array;
    readonly airNorth: Float64Array;
    readonly trueAirspeed: Float64Array;
    readonly heading: Float64Array;
    readonly velocityEast: Float64Array;
    readonly velocityNorth: Float64Array;
    readonly turning: Uint8Array;
    /** True airspeed without its wander and what turns cost: changes are the pilot's. */
    readonly level: Float64Array;
  };
}

const KT = 1852 / 3600;
const RAD = Math.PI / 180;
/** Time constant of a roll into or out of a turn, s. */
const ROLL_LAG = 1.5;

/** Metres in a degree at a latitude, by the radii of curvature of WGS84 (NGA.STND.0036). */
function perDegree(latitude: number): { readonly east: number; readonly north: number } {
  const s = Math.sin(latitude * RAD);
  const w2 = 1 - 0.00669437999014 * s * s;
  const n = 6378137 / Math.sqrt(w2);
  return { east: n * Math.cos(latitude * RAD) * RAD, north: ((n * (1 - 0.00669437999014)) / w2) * RAD };
}

export function fly(options: FlownOptions): Flown {
  const o = {
    airspeed: 105,
    heading: 0,
    altitude: 3000,
    slowWind: { sd: 2, seconds: 900 },
    shear: 3,
    windWalk: 0,
    gusts: 0,
    airspeedWander: 1.5,
    lostInTurns: 0,
    indicated: false,
    headingWander: 2,
    every: 1 as number | "adaptive",
    white: 0.4,
    bias: 2.5,
    rounded: true,
    start: { latitude: 35.6, longitude: 172.3 },
    ...options,
  };
  const random = seeded(o.seed);
  const drawn = o.wind ?? { from: 360 * random.uniform(), speed: 5 + 30 * random.uniform() };
  const mean = [-drawn.speed * Math.sin(drawn.from * RAD), -drawn.speed * Math.cos(drawn.from * RAD)];
  const perAxis = o.shear / Math.SQRT2;
  const shear = [perAxis * random.normal(), perAxis * random.normal()];
  const wander = (sd: number, seconds: number, step: number) => {
    const keep = Math.exp(-step / seconds);
    const kick = sd * Math.sqrt(1 - keep * keep);
    let value = sd * random.normal();
    return () => {
      value = keep * value + kick * random.normal();
      return value;
    };
  };
  const step = 0.5;
  const slow = [0, 1].map(() => wander(o.slowWind.sd, o.slowWind.seconds, step));
  const gust = [0, 1].map(() => wander(o.gusts, 8, step));
  const airspeedWander = wander(o.airspeedWander, 60, step);
  const headingWander = wander(o.headingWander, 20, step);
  const biasSeconds = 60 + 240 * random.uniform();
  const bias = [0, 1, 2].map((i) => wander(i === 2 ? 2 * o.bias : o.bias, biasSeconds, step));

  const rows: number[][] = [];
  const tenth = o.rounded ? 1e5 : 1e9;
  let time = 0;
  let heading = o.heading;
  let rate = 0;
  let level = o.airspeed;
  let wanted = o.airspeed;
  let bled = 0;
  let altitude = o.altitude;
  let climbTo = o.altitude;
  let climbRate = 0;
  let latitude = o.start.latitude;
  let longitude = o.start.longitude;
  let walk = [0, 0];
  let logged = { time: -Infinity, east: 0, north: 0, vEast: 0, vNorth: 0 };
  let east = 0;
  let north = 0;
  let wanders = 0;
  let before: readonly [number, number] | null = null;

  const tick = (wantedRate: number) => {
    rate += (wantedRate - rate) * (1 - Math.exp(-step / ROLL_LAG));
    heading += rate * step;
    level += Math.max(-0.5 * step, Math.min(0.5 * step, wanted - level));
    bled += (((o.lostInTurns * Math.abs(rate)) / 3 - bled) * step) / 5;
    const climb = Math.max(-1, Math.min(1, (climbTo - altitude) / 20)) * (climbRate / 60) * step;
    altitude += climb;
    if (o.windWalk > 0) {
      const kick = o.windWalk * Math.sqrt(Math.abs(climb) / 1000);
      walk = walk.map((w) => w + kick * random.normal());
    }
    const thousands = (altitude - 3000) / 1000;
    const gusts = gust.map((f) => f());
    const wind = [0, 1].map((i) => mean[i]! + slow[i]!() + gusts[i]! + shear[i]! * thousands + walk[i]!);
    const density = o.indicated
      ? (1 - 6.8756e-6 * o.altitude) ** 2.128 / (1 - 6.8756e-6 * altitude) ** 2.128
      : 1;
    const airspeed = (level + airspeedWander() - bled) * density;
    wanders += ((headingWander() - wanders) * step) / ROLL_LAG; // a wing is not lowered at once
    const nose = heading + wanders;
    const vEast = airspeed * Math.sin(nose * RAD) + wind[0]!;
    const vNorth = airspeed * Math.cos(nose * RAD) + wind[1]!;
    // the path is the integral of the velocities logged as truth: trapezoids
    const [eastBefore, northBefore] = before ?? [vEast, vNorth];
    before = [vEast, vNorth];
    const goneEast = ((vEast + eastBefore) / 2) * KT * step;
    const goneNorth = ((vNorth + northBefore) / 2) * KT * step;
    latitude += goneNorth / perDegree(latitude).north;
    longitude += goneEast / perDegree(latitude).east;
    east += goneEast;
    north += goneNorth;
    time += step;
    const b = bias.map((f) => f());
    let due: boolean;
    if (o.every === "adaptive") {
      const age = time - logged.time;
      const off = Math.abs(
        ((east - logged.east) * logged.vNorth - (north - logged.north) * logged.vEast) /
          Math.hypot(logged.vEast, logged.vNorth),
      );
      due = Number.isInteger(time) && (!(age < 12) || off > 12);
    } else due = time % o.every === 0;
    if (!due) return;
    logged = { time, east, north, vEast, vNorth };
    const noisyLatitude = latitude + (b[0]! + o.white * random.normal()) / perDegree(latitude).north;
    const noisyLongitude = longitude + (b[1]! + o.white * random.normal()) / perDegree(latitude).east;
    rows.push([
      time,
      Math.round(noisyLatitude * tenth) / tenth,
      Math.round(noisyLongitude * tenth) / tenth,
      altitude + (b[2]! + 2 * o.white * random.normal()) / 0.3048,
      wind[0]! - gusts[0]!,
      wind[1]! - gusts[1]!,
      airspeed,
      ((nose % 360) + 360) % 360,
      vEast,
      vNorth,
      Math.abs(rate) > 1 ? 1 : 0,
      level * density,
    ]);
  };

  for (const s of o.steps) {
    if ("speed" in s) wanted = s.speed;
    else if ("climbTo" in s) {
      climbTo = s.climbTo;
      climbRate = s.feetPerMinute;
    } else if ("straight" in s) for (let t = 0; t < s.straight; t += step) tick(0);
    else {
      const speed = (s.rate ?? 3) * (1 + 0.08 * random.normal());
      const target = heading + s.turn;
      const side = Math.sign(s.turn);
      // roll out early by what the roll lag still turns
      while (side * (target - heading) > Math.abs(rate) * ROLL_LAG && time < 1e6) tick(side * speed);
    }
  }

  const column = (i: number) => Float64Array.from(rows, (r) => r[i]!);
  const n = rows.length;
  return {
    track: {
      name: "invented",
      kind: "simulated",
      length: n,
      time: Float64Array.from(rows, (r) => Date.UTC(2026, 9, 17, 9) + r[0]! * 1000),
      latitude: column(1),
      longitude: column(2),
      altitude: column(3),
      segment: new Int32Array(n),
      line: new Int32Array(n),
    },
    truth: {
      airEast: column(4),
      airNorth: column(5),
      trueAirspeed: column(6),
      heading: column(7),
      velocityEast: column(8),
      velocityNorth: column(9),
      turning: Uint8Array.from(rows, (r) => r[10]!),
      level: column(11),
    },
  };
}
