/** A runway given by its course alone: where its far end is nobody said, and with it how wide a localizer tailored to 700 ft at the threshold is. */
import { expect, it } from "vitest";
import { readBrief, resolveBrief } from "../../src/brief/index.ts";
import { gradeApproach } from "../../src/grade/index.ts";
import { readPoints } from "../../src/import/index.ts";
import { TEST_STANDARDS } from "../../src/standard/tolerance.ts";
import { approachTo, beam, FIELD, measured, straightIn } from "../support/flown-approach.ts";

const us = TEST_STANDARDS.find(({ id }) => id === "instrument-rating-us")!;
const runway = { ...approachTo(FIELD).runway, lengthAssumed: true } as const;
const rows = straightIn(9, () => 0.2, beam);
const lateral = (antenna: number | null) => {
  const guidance = { kind: "localizer", width: null, antenna, station: null, rnp: null } as const;
  const { facts } = measured(approachTo(FIELD, { runway, guidance }), rows);
  const verdicts = gradeApproach(facts, us).filter(
    ({ criterion }) => /needle$/.test(criterion) && !/glide/.test(criterion),
  );
  return { untold: facts.cannotTell, verdicts };
};

it("its needle is not judged, and that is said", () => {
  const { untold, verdicts } = lateral(null);
  expect(untold).toContainEqual({ fact: "needle", reason: "runway-length-assumed" });
  expect(verdicts.length).toBe(3);
  for (const { verdict, reason } of verdicts)
    expect([verdict, reason]).toEqual(["cannot tell", "runway-length-assumed"]);
});
it("an antenna given beside it makes the width known", () => {
  const { untold, verdicts } = lateral(8000);
  expect(untold.map(({ reason }) => reason)).not.toContain("runway-length-assumed");
  expect(verdicts[0]!.verdict).toBe("not met");
});
it("is told from the list, or the brief, to what is measured", async () => {
  const table = "ident,lat,lon,kind,elevation_ft,course\nLIND 22,35.7,172.2,runway,410,220T\n";
  const known = await readPoints([new TextEncoder().encode(table)], "vale.csv");
  const named = "{ runway: LIND 22, guidance: localizer }";
  const whole =
    "{ runway: { threshold: [35.7, 172.2], end: [35.69, 172.19], elevation_ft: 410, length_assumed: true }, guidance: localizer }";
  for (const approach of [named, whole]) {
    const draft = readBrief(`brief: 1\nexercises:\n  - { approach: ${approach} }\n`, "brief.yaml", {
      ...known,
      near: null,
    });
    const [exercise] = resolveBrief(draft, { time: null }).exercises;
    expect(exercise).toMatchObject({ runway: { lengthAssumed: true } });
  }
});
