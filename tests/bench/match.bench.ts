/** How long it takes to find when each exercise was flown. */
import { readBrief, resolveBrief } from "../../src/brief/index.ts";
import { matchExercises } from "../../src/match/index.ts";
import { fly, scenarioNamed } from "../../src/simulator/index.ts";
import { bestOf, type Line } from "./time.ts";

export default function bench(): Line[] {
  const scenario = scenarioNamed("calm-and-tidy");
  const { track } = fly(scenario, 1);
  const { latitude, longitude } = track;
  const path = { time: null, latitude, longitude, trackAngle: null, legs: null };
  const brief = resolveBrief(readBrief(scenario.brief!, "brief.yaml"), { time: track.time[0]! });
  const seconds = bestOf(5, () => matchExercises(brief, path));
  return [
    {
      text: `${track.length} points against ${brief.exercises.length} exercises: ${(seconds * 1000).toFixed(1)} ms`,
    },
  ];
}
