/** A flight of 3,600 points from the bytes of its file to the debrief, against the reference libraries that only parse the same bytes. */
import { gpx } from "@tmcw/togeojson";
import { DOMParser } from "@xmldom/xmldom";
import { readBrief, resolveBrief } from "../../src/brief/index.ts";
import { debriefFlight } from "../../src/debrief/index.ts";
import { readLog } from "../../src/import/index.ts";
import { flyScenario, SCENARIOS } from "../../src/simulator/index.ts";
import { cleanTrack, findLegs, smoothTrack } from "../../src/track/index.ts";
import { estimateWind } from "../../src/wind/index.ts";
import type { Line } from "./time.ts";

const POINTS = 3600;
const RUNS = 5;

/** A simulated flight cut to so many points; flown on straight ahead where the lesson is shorter. */
function flight(): { bytes: Uint8Array; brief: string } {
  const name = "strong-crosswind-badly-corrected";
  const script = [...SCENARIOS[name]!.script, { do: "heading", heading: 130, seconds: POINTS / 2 } as const];
  const { gpx: text, brief } = flyScenario(name, 1, { script });
  let left = POINTS;
  const cut = text.replace(/[ \t]*<trkpt[\s\S]*?<\/trkpt>\r?\n?/g, (point) => (left-- > 0 ? point : ""));
  const points = cut.match(/<trkpt/g)?.length ?? 0;
  if (points !== POINTS) throw new RangeError(`invalid number of points: ${points}`);
  return { bytes: new TextEncoder().encode(cut), brief: brief! };
}

const timed = async (work: () => unknown): Promise<number> => {
  const start = performance.now();
  await work();
  return performance.now() - start;
};

async function best(work: () => unknown): Promise<number> {
  let least = Number.POSITIVE_INFINITY;
  for (let run = 0; run < RUNS; run++) least = Math.min(least, await timed(work));
  return least;
}

export default async function bench(): Promise<Line[]> {
  const { bytes, brief } = flight();
  const reference = () => gpx(new DOMParser().parseFromString(new TextDecoder().decode(bytes), "text/xml"));
  const ours = async () => {
    const log = await readLog([bytes], "log.gpx");
    return debriefFlight({ log, brief: readBrief(brief, "brief.yaml") });
  };
  // cold against cold first, each once, then best against best
  const oursCold = await timed(ours);
  const referenceCold = await timed(reference);
  const oursBest = await best(ours);
  const referenceBest = await best(reference);

  const log = await readLog([bytes], "log.gpx");
  const read = await best(() => readLog([bytes], "log.gpx"));
  const track = await best(() => {
    const motion = smoothTrack(cleanTrack(log.track).track)!;
    return findLegs(motion);
  });
  const motion = smoothTrack(cleanTrack(log.track).track)!;
  const legs = findLegs(motion);
  const draft = readBrief(brief, "brief.yaml");
  const { aircraft, winds } = resolveBrief(draft, { time: motion.time[0]! });
  const wind = await best(() => estimateWind(motion, legs, { airspeed: aircraft, winds }));
  const whole = await best(() => debriefFlight({ log, brief: draft }));
  const ms = (value: number) => `${value.toFixed(1)} ms`;
  const against = (mine: number, theirs: number) => ({
    text: `${ms(mine)}; xmldom + togeojson only to parse the same bytes ${ms(theirs)} (${(theirs / mine).toFixed(1)} times ours)`,
    ok: mine <= theirs,
  });
  const cold = against(oursCold, referenceCold);
  const warm = against(oursBest, referenceBest);
  return [
    { text: `${POINTS} points, ${(bytes.length / 1000).toFixed(0)} kB, bytes to document` },
    { text: `first run ${cold.text}`, ok: cold.ok },
    { text: `best of ${RUNS} ${warm.text}`, ok: warm.ok },
    { text: `read ${ms(read)}` },
    { text: `clean, smooth, legs ${ms(track)}` },
    { text: `wind ${ms(wind)}` },
    { text: `exercises, brief and document ${ms(Math.max(0, whole - track - wind))}` },
  ];
}
