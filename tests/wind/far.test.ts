/** The wind far above where the turns were, and where only a part of it is known: nothing is said of it that the flight did not tell. */
import { expect, it } from "vitest";
import { findLegs, smoothTrack } from "../../src/track/index.ts";
import { beliefOf } from "../../src/wind/belief.ts";
import { AIRSPEED, emptyFacts, SHEAR_REACH } from "../../src/wind/facts.ts";
import { estimateWind, windRecord } from "../../src/wind/index.ts";
import { walkWithHeight } from "../../src/wind/state.ts";
import { setSteps } from "../../src/wind/steps.ts";
import { fly } from "../support/flown.ts";

it("doubts the wind after a long climb as much as heights alone make it differ, however calm the climb seemed", () => {
  // by construction: 600 ft a fact, from 1,000 ft to a cruise at 20,000
  const heights = Array.from({ length: 200 }, (_, i) => Math.min(20_000, 1000 + 600 * i));
  const facts = emptyFacts(heights.length);
  facts.count = heights.length;
  facts.kind.fill(AIRSPEED);
  facts.growth.fill(1);
  facts.north.fill(200);
  facts.altitude.set(heights);
  facts.seconds.set(heights.map((_, i) => 20 * i));
  facts.thousands.set(heights.map((h) => SHEAR_REACH * Math.tanh((h - 20_000) / 1000 / SHEAR_REACH)));
  setSteps(facts, 200);
  const calm = { ...beliefOf(200, 20_000), heightUnrest: 0.3 };
  let walked = 0;
  for (let i = 1; i < heights.length; i++) walked += walkWithHeight(calm, facts, i);
  // common experience, no source: each component differs by 30 kt and more between those heights
  expect(Math.sqrt(walked)).toBeGreaterThan(28);
});

it("gives no ellipse in the document where only the part along the track is known", () => {
  const { track } = fly({ seed: 5, shear: 0, steps: [{ straight: 1500 }] });
  const motion = smoothTrack(track)!;
  const airspeed = { trueAirspeed: 105, doubt: 5 };
  const wind = estimateWind(motion, findLegs(motion), { airspeed, winds: [] });
  expect(windRecord(wind.legs[0]!)).toMatchObject({ knowledge: "along", ellipse95Kt: null });
});
