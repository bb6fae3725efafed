import { expect, it } from "vitest";
import { debriefFlight } from "../../src/debrief/index.ts";
import { destination } from "../../src/geodesy/index.ts";
import { readLog } from "../../src/import/index.ts";
import { near, nearDirection } from "../support/near.ts";

// Heading 000 at 100 kt true airspeed in a wind from 270 at 20 kt gives 102 kt over the ground (Horton, "Finding TAS
// from GPS data", flight-test article; 101.98 kt on track 011.31 by the Aviation Formulary V1.47, wind triangles).
const GROUND_SPEED = 101.98;
const TRACK = 11.31;

it("Horton's leg on heading 000 as a table with heading and airspeed: the wind is measured, from 270 at 20 kt", async () => {
  const start = { latitude: 35.6, longitude: 172.3 };
  const rows = Array.from({ length: 600 }, (_, i) => {
    const time = new Date(Date.UTC(2026, 9, 17, 1, 0, i)).toISOString();
    const { latitude, longitude } = destination(start, TRACK, (i * GROUND_SPEED * 1852) / 3600);
    return `${time},${latitude.toFixed(7)},${longitude.toFixed(7)},0,100`;
  });
  const csv = ["time,latitude,longitude,true heading (deg),TAS (kt)", ...rows].join("\n");
  const log = await readLog([new TextEncoder().encode(csv)], "air.csv");
  const { document } = debriefFlight({ log, brief: null });
  const { wind } = document.legs.find((leg) => leg.kind === "straight")!;
  expect(wind).toMatchObject({ knowledge: "full", restsOn: "measured" });
  // what the air data say, held back a little by how rare such a wind is
  nearDirection(wind.fromTrueDeg!, 270, 4);
  near(wind.speedKt!, 20, 1.5, "kt");
});
