/** A lap flown step by step, knowing nothing of the closed form: heading, wind, small steps of time. */
const RAD = Math.PI / 180;

export interface FlownLap {
  east: number;
  north: number;
  /** At the end of the inbound turn, metres, right of the course. */
  acrossAtRollOut: number;
  seconds: number;
}

/** Midpoint rule; metres. `rate` right positive, deg/s; wind from, true; speeds in knots. */
export function flyLap(
  inbound: number,
  headings: { inbound: number; outbound: number },
  seconds: { inbound: number; outbound: number },
  rate: number,
  tas: number,
  wind: { from: number; speed: number },
  stepsATurn = 150,
): FlownLap {
  const knot = 1852 / 3600;
  const we = -wind.speed * Math.sin(wind.from * RAD) * knot;
  const wn = -wind.speed * Math.cos(wind.from * RAD) * knot;
  let east = 0;
  let north = 0;
  let time = 0;
  const turn = (from: number, to: number): void => {
    const angle = ((((to - from) * Math.sign(rate)) % 360) + 360) % 360;
    const dt = angle / Math.abs(rate) / stepsATurn;
    for (let i = 0; i < stepsATurn; i++) {
      const heading = (from + rate * dt * (i + 0.5)) * RAD;
      east += (tas * knot * Math.sin(heading) + we) * dt;
      north += (tas * knot * Math.cos(heading) + wn) * dt;
    }
    time += angle / Math.abs(rate);
  };
  const straight = (heading: number, dt: number): void => {
    east += (tas * knot * Math.sin(heading * RAD) + we) * dt;
    north += (tas * knot * Math.cos(heading * RAD) + wn) * dt;
    time += dt;
  };
  turn(headings.inbound, headings.outbound);
  straight(headings.outbound, seconds.outbound);
  turn(headings.outbound, headings.inbound);
  const acrossAtRollOut = east * Math.cos(inbound * RAD) - north * Math.sin(inbound * RAD);
  straight(headings.inbound, seconds.inbound);
  return { east, north, acrossAtRollOut, seconds: time };
}
