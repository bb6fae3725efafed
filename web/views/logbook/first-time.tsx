/** The logbook before its first flight: drop a file, choose one, or look at a flight that is made up. */
import { address } from "../../place.ts";
import { FirstDrop } from "./drop.tsx";
import { Samples } from "./samples.tsx";

export function FirstTime() {
  return (
    <>
      <div class="rule" />
      <h1 class="one" tabIndex={-1}>
        Hindtrack reads the log of a training flight and shows where the aircraft was, where it should have
        been, what the wind did, and what would have worked.
      </h1>
      <div class="start">
        <FirstDrop />
        <div>
          <h2>Or look at one that is made up</h2>
          <Samples />
        </div>
      </div>
      <p class="next">
        For the next flight: <a href={address("hold")}>a hold solved for a wind</a>, without any file.
      </p>
    </>
  );
}
