/** Arcs and descents as flown: their truth against the geodesic and against arithmetic. */
import { describe, expect, it } from "vitest";
import { destination, inverse } from "../../src/geodesy/index.ts";
import { fly } from "../../src/simulator/index.ts";
import type { ArcStep, DescentStep } from "../../src/simulator/script.ts";
import { near, nearDirection } from "../support/near.ts";
import { blowing, STILL } from "./still.ts";

const TARNO = { latitude: 35.6, longitude: 172.3 };
const NM = 1852;

/** From 10 NM out on a radial, heading along the arc. */
const round = (step: Partial<ArcStep>, from = 0, speed = 0) => {
  const arc: ArcStep = {
    do: "arc",
    station: TARNO,
    radius: 10,
    fromRadial: 300,
    toRadial: 20,
    turns: "right",
    flown: { habit: "tidy", share: 1 },
    lead: 3,
    leaves: "inbound",
    exercise: "arc",
    ...step,
  };
  const position = destination(TARNO, arc.fromRadial, arc.radius * NM);
  const heading = arc.fromRadial + (arc.turns === "right" ? 90 : -90);
  const start = { ...STILL.start, position, heading };
  const flight = fly({ ...STILL, start, wind: blowing(from, speed), script: [arc] }, 1);
  return { flight, truth: flight.truth.truth.arcs![0]! };
};

describe("GeographicLib as the authority: an arc in still air", () => {
  it.each(["right", "left"] as const)(
    "to the %s keeps its distance within 0.03 NM of the radius",
    (turns) => {
      const { flight, truth } = round({ turns, toRadial: turns === "right" ? 20 : 220 });
      const at = (utc: string) => Math.floor((Date.parse(utc) - STILL.start.time) / 1000);
      const { latitude, longitude } = flight.columns;
      let worst = 0;
      for (let i = at(truth.joinedUtc!); i <= at(truth.turnOffUtc); i++) {
        const { distance } = inverse(TARNO, { latitude: latitude[i]!, longitude: longitude[i]! });
        worst = Math.max(worst, Math.abs(distance / NM - 10));
      }
      near(worst, 0, 0.03, "NM");
      near(Math.abs(truth.maxDeviationNm), worst, 0.003, "NM");
      const end = at(truth.turnOffUtc);
      const { azimuthAtStart } = inverse(TARNO, { latitude: latitude[end]!, longitude: longitude[end]! });
      nearDirection(truth.turnOffRadialTrueDeg, azimuthAtStart, 0.3, "radial of the turn off");
      nearDirection(truth.turnOffRadialTrueDeg, turns === "right" ? 17 : 223, 0.1);
    },
  );

  it("takes as long as its length at the airspeed: 77° of a 10 NM arc at 100 kt, 484 s", () => {
    const { truth } = round({});
    const seconds = (Date.parse(truth.turnOffUtc) - Date.parse(truth.startUtc)) / 1000;
    near(seconds, ((77 * Math.PI) / 180) * 10 * 36, 3, "s");
  });
});

describe("by construction: the wind on an arc", () => {
  it("a tidy pilot corrects what the wind needs: 20 kt square to it is asin 0.2, 11.5°", () => {
    // From the station outward at the middle of a short arc (radials 350 to 010): the nose is turned in.
    const { truth } = round({ fromRadial: 350, toRadial: 10, lead: 0 }, 180, 20);
    near(truth.neededCorrectionOutDeg, -11.5, 0.3, "°");
    near(truth.flownCorrectionOutDeg, -11.5, 1.5, "°");
  });

  it("a pilot who leaves it alone goes outside in a wind from the station, inside in one toward it", () => {
    const waits = { habit: "waits", share: 0, correctsAt: 0.6, cut: 20, thenShare: 1 } as const;
    expect(
      round({ fromRadial: 340, toRadial: 20, flown: waits }, 180, 20).truth.maxDeviationNm,
    ).toBeGreaterThan(0.6);
    expect(round({ fromRadial: 340, toRadial: 20, flown: waits }, 0, 20).truth.maxDeviationNm).toBeLessThan(
      -0.6,
    );
  });
});

describe("arithmetic of a descent in still air: 100 kt, 2,200 ft at 500 ft/min", () => {
  const BELVO = destination(TARNO, 90, 20 * NM);
  const down = (step: Partial<DescentStep>) => {
    const descent: DescentStep = {
      do: "descent",
      fix: BELVO,
      to: 1800,
      before: 1,
      rate: 500,
      late: 0,
      exercise: "descent",
      ...step,
    };
    return fly({ ...STILL, script: [descent] }, 1).truth.truth.descents![0]!;
  };
  const seconds = (from: string, to: string) => (Date.parse(to) - Date.parse(from)) / 1000;

  it("begun in time it takes 264 s, 7.33 NM, and arrives there at the height", () => {
    const truth = down({});
    near(truth.beganToGoNm!, (100 / 60) * (2200 / 500 + 12 / 60), 0.15, "NM");
    near(truth.crossingAltitudeFt, 1800, 60, "ft");
    near(seconds(truth.beganUtc!, truth.crossingUtc), 264 + 12, 5, "s");
  });

  it("begun a minute late it crosses 500 ft high but for the soft end", () => {
    near(down({ late: 60 }).crossingAltitudeFt - 1800, 500 - 100, 60, "ft");
  });

  it("held up for a minute likewise", () => {
    near(down({ levelOff: { at: 3000, seconds: 60 } }).crossingAltitudeFt - 1800, 500, 200, "ft");
  });
});
