import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { leadOffArc, leadOntoArc } from "../../src/course/arc-lead.ts";
import { near } from "../support/near.ts";

const CALM = { along: 0, across: 0 };
const RADIANS = Math.PI / 180;
/** Radius of a turn, NM: V / (rate in radians an hour). */
const radius = (knots: number, rate: number) => knots / (rate * RADIANS * 3600);

describe("geometry of two touching circles: leads in still air", () => {
  it.each([
    ["100 kt, 10 NM, standard rate", 10, 100, 3],
    ["150 kt, 15 NM, standard rate", 15, 150, 3],
    ["120 kt, 7 NM, half rate", 7, 120, 1.5],
  ])("%s: sin(lead) = r / (R - r) inward, r / (R + r) outward", (_, R, knots, rate) => {
    const turn = { rate, trueAirspeed: knots, air: CALM };
    const r = radius(knots, rate);
    near(leadOffArc(R, "inbound", turn)!, Math.asin(r / (R - r)) / RADIANS, 1e-6, "°");
    near(leadOffArc(R, "outbound", turn)!, Math.asin(r / (R + r)) / RADIANS, 1e-6, "°");
  });

  it("onto the arc from inside: R - sqrt((R - r)^2 - r^2); from outside sqrt((R + r)^2 - r^2) - R", () => {
    const [R, r] = [10, radius(100, 3)];
    const turn = { rate: 3, trueAirspeed: 100, air: CALM };
    near(leadOntoArc(R, 0, turn)!, R - Math.sqrt((R - r) ** 2 - r ** 2), 1e-6, "NM");
    near(leadOntoArc(R, 180, turn)!, Math.sqrt((R + r) ** 2 - r ** 2) - R, 1e-6, "NM");
  });

  it("a track along the arc needs no lead onto it", () => {
    expect(leadOntoArc(10, 90, { rate: 3, trueAirspeed: 100, air: CALM })).toBeNull();
  });
});

describe("rules of thumb (common practice, no source)", () => {
  it.each([90, 100, 120, 150])("lead onto an arc of 0.5 %% of the speed: %d kt within 0.1 NM", (knots) => {
    const lead = leadOntoArc(12, 0, { rate: 3, trueAirspeed: knots, air: CALM })!;
    near(lead, 0.005 * knots, 0.12, "NM");
  });

  it("a degree is a mile at 60 NM: half a mile of lead at 10 NM is 3° of radial", () => {
    near(leadOffArc(10, "inbound", { rate: 3, trueAirspeed: 94, air: CALM })!, (0.5 * 60) / 10, 0.3, "°");
  });
});

/** Flies a turn second by second, straight from the definition: heading at a constant rate, wind added. */
function flyTurn(
  start: { u: number; v: number },
  from: number,
  to: number,
  side: number,
  turn: { rate: number; trueAirspeed: number; air: { along: number; across: number } },
) {
  const dt = 0.01;
  let { u, v } = start;
  let heading = from;
  const total = (((side * (to - from)) % 360) + 360) % 360;
  const steps = Math.round(total / turn.rate / dt);
  for (let k = 0; k < steps; k++) {
    const h = (heading + (side * turn.rate * dt) / 2) * RADIANS;
    u += ((turn.trueAirspeed * Math.cos(h) + turn.air.along) * dt) / 3600;
    v += ((turn.trueAirspeed * Math.sin(h) + turn.air.across) * dt) / 3600;
    heading += side * turn.rate * dt;
  }
  return { u, v };
}
/** Heading that makes a ground track: E. Williams, Aviation Formulary V1.47, "Wind Triangles". */
const headingOn = (
  track: number,
  { trueAirspeed, air }: { trueAirspeed: number; air: { along: number; across: number } },
) => {
  const fromLeft = -air.along * Math.sin(track * RADIANS) + air.across * Math.cos(track * RADIANS);
  return track - Math.asin(fromLeft / trueAirspeed) / RADIANS;
};

describe("by construction: a turn flown second by second in a wind ends where it should", () => {
  const wind = fc.record({
    R: fc.double({ min: 6, max: 20, noNaN: true }),
    trueAirspeed: fc.double({ min: 80, max: 160, noNaN: true }),
    rate: fc.double({ min: 1.5, max: 3.5, noNaN: true }),
    along: fc.double({ min: -30, max: 30, noNaN: true }),
    across: fc.double({ min: -30, max: 30, noNaN: true }),
  });

  it.each(["inbound", "outbound"] as const)("off the arc, %s: on the radial within 0.005 NM", (to) => {
    fc.assert(
      fc.property(wind, ({ R, trueAirspeed, rate, along, across }) => {
        const turn = { rate, trueAirspeed, air: { along, across } };
        const lead = leadOffArc(R, to, turn)!;
        const start = { u: R * Math.cos(lead * RADIANS), v: -R * Math.sin(lead * RADIANS) };
        const from = headingOn(90 - lead, turn);
        const end = flyTurn(
          start,
          from,
          headingOn(to === "inbound" ? 180 : 0, turn),
          to === "inbound" ? 1 : -1,
          turn,
        );
        near(end.v, 0, 0.005, "NM off the radial");
      }),
      { numRuns: 60, seed: 5000 },
    );
  });

  it.each([0, 180, 30, 150])(
    "onto the arc on a track of %d° from the radial: at the radius within 0.005 NM",
    (track) => {
      fc.assert(
        fc.property(wind, ({ R, trueAirspeed, rate, along, across }) => {
          const turn = { rate, trueAirspeed, air: { along, across } };
          const lead = leadOntoArc(R, track, turn)!;
          const start = { u: R - lead * Math.cos(track * RADIANS), v: 0 };
          const side = track < 90 ? 1 : -1;
          // the tangent where it ends: by rounds, apart from the solver
          let end = { u: R, v: 0 };
          for (let k = 0; k < 20; k++) {
            const tangent = Math.atan2(end.v, end.u) / RADIANS + 90;
            end = flyTurn(start, headingOn(track, turn), headingOn(tangent, turn), side, turn);
          }
          near(Math.hypot(end.u, end.v), R, 0.005, "NM");
        }),
        { numRuns: 8, seed: 5000 },
      );
    },
  );
});
