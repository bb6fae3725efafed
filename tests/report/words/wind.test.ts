/** Winds in words: what helps and what hinders is never told the wrong way round. */
import { describe, expect, it } from "vitest";
import { acrossWords, alongWords, windHeadline, windLabel, windName } from "../../../src/report/index.ts";
import { sampleDebrief } from "../../support/debriefed.ts";

describe("common practice, no source: a tailwind comes from behind, and a wind from the left pushes to the right", () => {
  it("says from where by the sign, tailwind and push to the right positive", () => {
    expect(alongWords(13)).toBe("13 kt from behind");
    expect(alongWords(-13)).toBe("13 kt from ahead");
    expect(acrossWords(7)).toBe("7 kt from the left");
    expect(acrossWords(-7)).toBe("7 kt from the right");
  });

  it("gives no direction to a wind that rounds to nothing", async () => {
    expect(alongWords(0.4)).toBe("under 1 kt from ahead or behind");
    expect(acrossWords(-0.4)).toBe("under 1 kt from either side");
    const { document } = await sampleDebrief("calm-and-tidy");
    const calm = { ...document.legs[0]!.wind, knowledge: "full", fromTrueDeg: 210, speedKt: 0.3 } as const;
    expect([windHeadline(calm), windLabel(calm)]).toEqual(["Calm, under 1 kt", "calm"]);
  });

  it("names an arrow by where the wind comes from, and only by the part that is known", async () => {
    const { document } = await sampleDebrief("calm-and-tidy");
    const wind = document.legs[0]!.wind;
    const full = { ...wind, knowledge: "full", fromTrueDeg: 359.8, speedKt: 20.2 } as const;
    expect(windName(full)).toBe("wind from 360° true, 20 kt");
    expect(windLabel(full)).toBe("360°T 20 kt");
    const along = { ...wind, knowledge: "along", fromTrueDeg: null, speedKt: null, alongKt: -13 } as const;
    expect(windName(along)).toBe("wind along the track only, 13 kt from ahead");
    expect(windLabel(along)).toBe("13 kt ahead");
  });
});
