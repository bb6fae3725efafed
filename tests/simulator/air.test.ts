/** The wind field against the statistics that its model states. */
import { describe, it } from "vitest";
import { windField } from "../../src/simulator/air.ts";
import { randomStream } from "../../src/simulator/random.ts";
import { near } from "../support/near.ts";

const steady = { from: 270, speed: 20, altitude: 3000, slow: { sd: 0, time: 900 }, gusts: null };
const SEEDS = Array.from({ length: 400 }, (_, i) => i);
/** Change of the wind vector from 3,000 ft to another height, over many seeds: root of the mean square, knots. */
function rmsChange(model: Parameters<typeof windField>[0], altitude: number): number {
  const squares = SEEDS.map((seed) => {
    const blow = windField(model, 0.5, randomStream(seed, "wind"));
    const low = blow(3000);
    const high = blow(altitude);
    return (high.east - low.east) ** 2 + (high.north - low.north) ** 2;
  });
  return Math.sqrt(squares.reduce((a, b) => a + b) / squares.length);
}

describe("by construction: wind and height", () => {
  it("blows from where the model says at its height", () => {
    const air = windField({ ...steady, shearRms: 3, heightWalk: 2.5 }, 0.5, randomStream(1, "wind"))(3000);
    near(air.east, 20, 1e-9, "kt");
    near(air.north, 0, 1e-9, "kt");
  });

  // 800 independent components: four standard errors of a root mean square are 10 %
  it("shears by 3 kt per 1,000 ft, root of the mean square of the vector", () => {
    near(rmsChange({ ...steady, shearRms: 3 }, 4000), 3, 0.3, "kt");
    near(rmsChange({ ...steady, shearRms: 3 }, 1000), 6, 0.6, "kt");
  });

  it("walks with height by the square root of the difference", () => {
    const model = { ...steady, shearRms: 0, heightWalk: 2.5 };
    near(rmsChange(model, 4000), 2.5 * Math.SQRT2, 0.36, "kt");
    near(rmsChange(model, 7000), 2.5 * Math.SQRT2 * 2, 0.72, "kt");
  });

  it("takes a stated shear as it is", () => {
    const blow = windField({ ...steady, shearRms: 3, shear: [1, -2] }, 0.5, randomStream(1, "wind"));
    const air = blow(5000);
    near(air.east, 22, 1e-9, "kt");
    near(air.north, -4, 1e-9, "kt");
  });
});
