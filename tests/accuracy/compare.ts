/** One meter for the estimate against the truth: errors, coverage and share claimed, for simulated and for real flights. */

import { findLegs, smoothTrack } from "../../src/track/index.ts";
import type { Motion } from "../../src/track/motion.ts";
import { varianceAlong } from "../../src/wind/ellipse.ts";
import type { WindPriors } from "../../src/wind/index.ts";
import { estimateWind } from "../../src/wind/index.ts";
import type { Flown } from "../support/flown.ts";

/** 95 % point of chi-square with 2 degrees of freedom. */
const CHI2 = -2 * Math.log(0.05);

/** A flight is sampled this often, s. */
const SAMPLED = 10;

/** The row nearest to each moment of a flight, moments so many seconds apart: a log that is dense in turns weighs them no more than their time, as the bound does. */
export function rowsByTime({ time, length }: Pick<Motion, "time" | "length">, seconds: number): number[] {
  const rows: number[] = [];
  for (let at = time[0]!, k = 0; at <= time[length - 1]!; at += seconds * 1000) {
    while (k < length - 1 && Math.abs(time[k + 1]! - at) <= Math.abs(time[k]! - at)) k++;
    rows.push(k);
  }
  return rows;
}

export class Meter {
  private readonly errors: number[] = [];
  private readonly claimedErrors: number[] = [];
  private readonly meanSpeedErrors: number[] = [];
  private readonly meanDirectionErrors: number[] = [];
  private readonly flightErrors: number[] = [];
  private readonly predicted: number[] = [];
  private readonly alongErrors: number[] = [];
  private alongInside = 0;
  private inside = 0;
  private claimedInside = 0;
  flights = 0;

  /** One sample of truth against the estimate at a row; `widened` is the truth's own standard deviation, each axis. */
  sample(
    motion: Motion,
    estimate: ReturnType<typeof estimateWind>["alongFlight"],
    row: number,
    airEast: number,
    airNorth: number,
    widened = 0,
  ): number {
    const e = estimate.airEast[row]! - airEast;
    const n = estimate.airNorth[row]! - airNorth;
    const error = Math.hypot(e, n);
    if (Number.isNaN(error)) return Number.NaN;
    const ve = estimate.varianceEast[row]! + widened ** 2;
    const vn = estimate.varianceNorth[row]! + widened ** 2;
    const c = estimate.covariance[row]!;
    const distance = (vn * e * e - 2 * c * e * n + ve * n * n) / (ve * vn - c * c);
    const inside = distance <= CHI2;
    this.errors.push(error);
    this.predicted.push(ve + vn);
    if (inside) this.inside++;
    if (estimate.knowledge[row] === "along") {
      const te = motion.velocityEast[row]! / motion.groundSpeed[row]!;
      const tn = motion.velocityNorth[row]! / motion.groundSpeed[row]!;
      this.alongErrors.push(Math.abs(e * te + n * tn));
      if ((e * te + n * tn) ** 2 <= 1.96 ** 2 * varianceAlong(ve, vn, c, te, tn)) this.alongInside++;
    }
    if (estimate.knowledge[row] === "full") {
      this.claimedErrors.push(error);
      if (inside) this.claimedInside++;
    }
    return error;
  }

  /** A simulated flight, sampled each 10 s. */
  flight(flown: Flown, priors: WindPriors = { airspeed: null, winds: [] }): void {
    const motion = smoothTrack(flown.track)!;
    const estimate = estimateWind(motion, findLegs(motion), priors);
    this.flights++;
    const { truth } = flown;
    let sum = 0;
    let count = 0;
    const mean = [0, 0, 0, 0];
    for (const k of rowsByTime(motion, SAMPLED)) {
      const error = this.sample(motion, estimate.alongFlight, k, truth.airEast[k]!, truth.airNorth[k]!);
      if (Number.isNaN(error)) continue;
      sum += error * error;
      count++;
      mean[0]! += estimate.alongFlight.airEast[k]!;
      mean[1]! += estimate.alongFlight.airNorth[k]!;
      mean[2]! += truth.airEast[k]!;
      mean[3]! += truth.airNorth[k]!;
    }
    this.flightErrors.push(sum / Math.max(1, count));
    this.meanSpeedErrors.push(Math.hypot(mean[0]! - mean[2]!, mean[1]! - mean[3]!) / count);
    const turn = Math.atan2(
      mean[0]! * mean[3]! - mean[1]! * mean[2]!,
      mean[0]! * mean[2]! + mean[1]! * mean[3]!,
    );
    this.meanDirectionErrors.push((turn * 180) / Math.PI);
  }

  report() {
    const rms = (values: readonly number[]) =>
      Math.sqrt(values.reduce((s, v) => s + v * v, 0) / values.length);
    const quantile = (values: readonly number[], q: number) =>
      values.length === 0
        ? Number.NaN
        : [...values].sort((a, b) => a - b)[Math.floor(q * (values.length - 1))]!;
    const { errors, claimedErrors } = this;
    return {
      flights: this.flights,
      samples: errors.length,
      rmse: rms(errors),
      /** Root mean square of what the estimate itself says its error is. */
      stated: Math.sqrt(this.predicted.reduce((s, v) => s + v, 0) / errors.length),
      median: quantile(errors, 0.5),
      coverage: this.inside / errors.length,
      meanWind: rms(this.meanSpeedErrors),
      meanDirection: rms(this.meanDirectionErrors),
      along: this.alongErrors.length / errors.length,
      alongMedian: quantile(this.alongErrors, 0.5),
      alongCoverage: this.alongErrors.length === 0 ? Number.NaN : this.alongInside / this.alongErrors.length,
      claimed: claimedErrors.length / errors.length,
      claimedMedian: quantile(claimedErrors, 0.5),
      claimed90: quantile(claimedErrors, 0.9),
      claimedRmse: rms(claimedErrors),
      claimedCoverage: claimedErrors.length === 0 ? Number.NaN : this.claimedInside / claimedErrors.length,
    };
  }
}
