/** The last column of the line-up, where no verdict stands in it. */
import { expect, it } from "vitest";
import { cameTo } from "../../web/views/line-up.tsx";
import { SAMPLES, sampleDebrief } from "../support/debriefed.ts";

it.each(SAMPLES)("%s: no exercise is left without words", async (sample) => {
  const { document } = await sampleDebrief(sample);
  for (const exercise of document.exercises)
    expect(cameTo(exercise)).toMatch(/^(?!.*(undefined|NaN|null)).+$/);
});

it("of an approach says how far the needle went, and to which side", async () => {
  const { document } = await sampleDebrief("approach-track-chased");
  const [exercise] = document.exercises;
  if (exercise?.kind !== "approach" || !exercise.facts) throw new Error("no approach");
  const { needle, crossTrack } = exercise.facts;
  const side = crossTrack.maxNm > 0 ? "R" : "L";
  expect(cameTo(exercise)).toBe(
    `needle to ${Math.abs(needle.max).toFixed(2)} of full scale, ${Math.abs(crossTrack.maxNm).toFixed(2)} NM ${side}`,
  );
});
