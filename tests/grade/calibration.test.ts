import { expect, it } from "vitest";
import { calibrate } from "./calibration.ts";

it("simulated courses with known truth, limits drawn around it: of met and not met at most 5 % are wrong, at most 15 % cannot be told", () => {
  const { exercises, notFound, judged, wrong, cannotTell } = calibrate(5000, 30);
  expect(exercises).toBe(120);
  expect(notFound).toBe(0);
  expect(wrong / judged).toBeLessThanOrEqual(0.05);
  expect(cannotTell / exercises).toBeLessThanOrEqual(0.15);
});
