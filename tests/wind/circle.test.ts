import { describe, expect, it } from "vitest";
import { circleOfThree, fitCircle, fromThreeHeadings, groundOf, windOfAir } from "../../src/wind/index.ts";
import { seeded } from "../support/flown.ts";
import { near, nearDirection } from "../support/near.ts";
import truth from "../truth/airspeed-from-gps.json" with { type: "json" };

const RAD = Math.PI / 180;
type Three = Parameters<typeof circleOfThree>[0];
const legsOf = (groundSpeed: readonly number[], track: readonly number[], which: readonly number[]) =>
  which.map((i) => ({ groundSpeed: groundSpeed[i]!, trackAngle: track[i]! })) as unknown as Three;

describe("D. Gray, Using GPS to accurately establish true airspeed, 1998", () => {
  const { groundSpeed, track, tas, headings, wind } = truth.gray;
  const legs = legsOf(groundSpeed, track, [0, 1, 2]);
  const circle = circleOfThree(legs)!;
  it("gives the printed airspeed and wind", () => {
    near(circle.trueAirspeed, tas, 0.05, "kt");
    const found = windOfAir(circle.airEast, circle.airNorth);
    nearDirection(found.from, wind[0]!, 0.06);
    near(found.speed, wind[1]!, 0.05, "kt");
  });
  it("gives the printed headings", () => {
    legs.forEach((leg, i) => {
      const east = leg.groundSpeed * Math.sin(leg.trackAngle * RAD) - circle.airEast;
      const north = leg.groundSpeed * Math.cos(leg.trackAngle * RAD) - circle.airNorth;
      nearDirection(Math.atan2(east, north) / RAD, headings[i]!, i === 0 ? 0.5 : 0.06); // the first is printed whole
    });
  });
});

describe("National Test Pilot School, GPS position error correction, four legs", () => {
  const { groundSpeed, track, triples, winds, meanTas, tasSd } = truth.ntps;
  const circles = triples.map((t) => circleOfThree(legsOf(groundSpeed, track, t))!);
  it("gives the printed wind of each three legs", () => {
    circles.forEach((c, i) => {
      const found = windOfAir(c.airEast, c.airNorth);
      nearDirection(found.from, winds[i]![0]!, 1e-5);
      near(found.speed, winds[i]![1]!, 1e-5, "kt");
    });
  });
  it("gives the printed mean and standard deviation of the airspeeds", () => {
    const tas = circles.map((c) => c.trueAirspeed);
    const mean = tas.reduce((s, v) => s + v, 0) / 4;
    near(mean, meanTas, 1e-8, "kt");
    near(Math.sqrt(tas.reduce((s, v) => s + (v - mean) ** 2, 0) / 3), tasSd, 1e-8, "kt");
  });
});

describe("newsgroup example, tracks 000, 120 and 240", () => {
  it("gives airspeed 100 and wind 045/30 back", () => {
    const { track, groundSpeed, tas, wind } = truth.usenet;
    const circle = circleOfThree(legsOf(groundSpeed, track, [0, 1, 2]))!;
    near(circle.trueAirspeed, tas, 0.001, "kt");
    const found = windOfAir(circle.airEast, circle.airNorth);
    nearDirection(found.from, wind[0]!, 0.002);
    near(found.speed, wind[1]!, 0.001, "kt");
  });
});

describe("Aviation Formulary V1.47, three headings 120 degrees apart", () => {
  it("gives airspeed 100 and wind 20 back from the formulary's own forward triangle", () => {
    const speeds = [40, 160, 280].map(
      (heading) => groundOf({ heading, trueAirspeed: 100 }, { from: 270, speed: 20 })!.groundSpeed,
    );
    // computed with the formulary's formulas, independently of this code
    [113.890959, 108.480784, 80.378909].forEach((v, i) => {
      near(speeds[i]!, v, 1e-6, "kt");
    });
    const found = fromThreeHeadings(speeds as [number, number, number])!;
    near(found.trueAirspeed, 100, 1e-9, "kt");
    near(found.windSpeed, 20, 1e-9, "kt");
  });
  it("has no answer for speeds that no wind explains", () => {
    expect(fromThreeHeadings([300, 1, 1])).toBeNull();
  });
});

describe("by construction: tips on a circle", () => {
  it("agrees with the exact circle of three", () => {
    const legs = legsOf(truth.gray.groundSpeed, truth.gray.track, [0, 1, 2]);
    const exact = circleOfThree(legs)!;
    const fitted = fitCircle(
      legs.map((l) => l.groundSpeed * Math.sin(l.trackAngle * RAD)),
      legs.map((l) => l.groundSpeed * Math.cos(l.trackAngle * RAD)),
    )!;
    near(fitted.airEast, exact.airEast, 1e-6, "kt");
    near(fitted.airNorth, exact.airNorth, 1e-6, "kt");
    near(fitted.trueAirspeed, exact.trueAirspeed, 1e-6, "kt");
    near(fitted.rms, 0, 1e-6, "kt");
  });
  it("finds the centre of a noisy half circle within its standard error", () => {
    const { normal } = seeded(4);
    const angle = Array.from({ length: 60 }, (_, i) => (i * Math.PI) / 60);
    const fitted = fitCircle(
      angle.map((a) => 100 * Math.sin(a) + 12 + 0.5 * normal()),
      angle.map((a) => 100 * Math.cos(a) - 7 + 0.5 * normal()),
    )!;
    // 0.5 kt over 60 tips of a half circle: about 0.2 kt across, 0.3 kt along; four of those
    near(fitted.airEast, 12, 1.2, "kt");
    near(fitted.airNorth, -7, 0.8, "kt");
    near(fitted.rms, 0.5, 0.2, "kt");
  });
  it("has no circle for points on a line, or too few", () => {
    expect(fitCircle([0, 1, 2, 3], [0, 1, 2, 3])).toBeNull();
    expect(fitCircle([0, 1], [1, 0])).toBeNull();
    const line = [90, 90, 90].map((trackAngle, i) => ({
      trackAngle,
      groundSpeed: 90 + i,
    })) as unknown as Three;
    expect(circleOfThree(line)).toBeNull();
  });
});
