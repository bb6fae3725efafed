import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, it } from "vitest";
import { angleOfGradient, gradientOfAngle, rateOfGradient } from "../../src/quantity/descent.ts";
import { USUAL_GRADIENT } from "../../src/standard/descent.ts";
import { near } from "../support/near.ts";

interface Truth {
  readonly speedsKt: readonly number[];
  readonly rates: Readonly<Record<string, readonly number[]>>;
  readonly gradients: Readonly<Record<string, number>>;
}
const truth: Truth = JSON.parse(
  readFileSync(join(import.meta.dirname, "../truth/descent-rates.json"), "utf8"),
);

describe("US government rate-of-descent table (older approach procedure volumes), printed to 5 ft/min", () => {
  // The table follows the sine; ours the tangent, as the ground speed is over the ground. The cosine undoes that.
  it.each(Object.entries(truth.rates))(
    "%s°: every speed within 3.5 ft/min (the largest known miss of the sine is 3)",
    (angle, rates) => {
      const degrees = Number(angle);
      const cosine = Math.cos((degrees * Math.PI) / 180);
      rates.forEach((printed, i) => {
        const rate = rateOfGradient(gradientOfAngle(degrees), truth.speedsKt[i]!);
        near(rate * cosine, printed, 3.5, "ft/min", `${truth.speedsKt[i]} kt`);
      });
    },
  );

  it("at 3° the difference of the two is 0.14 %", () => {
    near(1 - Math.cos((3 * Math.PI) / 180), 0.0014, 0.0001);
  });
});

describe("US terminal procedures, climb and descent table: ft/NM", () => {
  it.each(Object.entries(truth.gradients))("%s° is %d ft/NM", (angle, printed) => {
    near(gradientOfAngle(Number(angle)), printed, 0.75, "ft/NM"); // prints whole feet
    near(angleOfGradient(printed), Number(angle), 0.01, "°");
  });

  it("318 ft/NM is the 3.00° of FAA Order 8260.3, 400 ft/NM its 3.77°", () => {
    near(angleOfGradient(USUAL_GRADIENT), 3, 0.005, "°");
    near(angleOfGradient(400), 3.77, 0.005, "°");
  });
});

describe("rule of thumb (common practice, no source): five times the ground speed for 3°", () => {
  it.each([60, 90, 120, 180])("%d kt within 6.5 %% (exact factor 5.307)", (knots) => {
    near(rateOfGradient(USUAL_GRADIENT, knots) / (5 * knots), 1, 0.065);
  });
});
