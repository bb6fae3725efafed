import { describe, expect, it } from "vitest";
import { carriedFlight, oneFileHtml } from "../../src/report/index.ts";
import { sampleDebrief } from "../support/debriefed.ts";

const VIEWER =
  '<title>%TITLE%</title><script type="application/json" id="flight">"%FLIGHT%"</script><p>end</p>';
const carriedBy = (html: string): string => /id="flight">(.*?)<\/script>/s.exec(html)![1]!;

describe("by construction: a page that carries its flight", () => {
  it("gives back the document whole, and the columns to the digits of the document", async () => {
    const debrief = await sampleDebrief("calm-and-tidy");
    const carried = carriedFlight(carriedBy(oneFileHtml(VIEWER, debrief)));
    expect(carried.document).toEqual(JSON.parse(JSON.stringify(debrief.document)));
    const { path } = carried.series;
    expect(path.turning).toEqual(debrief.series.path.turning);
    expect(path.timeMs).toEqual(debrief.series.path.timeMs);
    path.latitude.forEach((v, i) => {
      expect(Math.abs(v - debrief.series.path.latitude[i]!)).toBeLessThan(1e-7);
    });
    const [course] = carried.series.exercises;
    const [before] = debrief.series.exercises;
    expect(course!.kind).toBe("course");
    expect(Array.from(course!.headingTrueDeg, Number.isNaN)).toEqual(
      Array.from(before!.headingTrueDeg, Number.isNaN),
    );
  });

  it("a title that would end the script, or that looks like a place for the flight, stays text", async () => {
    const { document, series } = await sampleDebrief("calm-and-tidy");
    const title = '</script><script>alert(1)</script> "%FLIGHT%" $& %TITLE%';
    const html = oneFileHtml(VIEWER, {
      document: { ...document, brief: { ...document.brief!, title } },
      series,
    });
    expect(html.match(/<script/g)).toHaveLength(1);
    expect(html.match(/<\/script>/g)).toHaveLength(1);
    expect(html.endsWith("<p>end</p>")).toBe(true);
    expect(carriedFlight(carriedBy(html)).document.brief!.title).toBe(title);
  });

  it("refuses a viewer without a place for the flight", async () => {
    const debrief = await sampleDebrief("calm-and-tidy");
    expect(() => oneFileHtml("<p></p>", debrief)).toThrow(RangeError);
  });
});
