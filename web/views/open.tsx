/** The view where files are opened: drop them, choose them, or look at a flight that is made up. */
import { useRef } from "preact/hooks";
import { CAUTION } from "../../src/index.ts";
import { notices } from "../flight.ts";
import { dropOnSheet, openOnSheet } from "../opening.ts";
import { address } from "../place.ts";
import { SAMPLES, type Sample, sampleFiles } from "../samples.ts";
import { SampleSign } from "./sample-sign.tsx";

function Drop() {
  const input = useRef<HTMLInputElement>(null);
  const chosen = () => {
    void dropOnSheet([...(input.current?.files ?? [])]);
    if (input.current) input.current.value = "";
  };
  return (
    <div class="drop">
      <h2>Drop a track log here</h2>
      <p>
        GPX, KML, KMZ, IGC or CSV, from any portable GPS; the brief of the lesson too, in YAML or JSON, if
        there is one. The sheet stands a few seconds later.
      </p>
      <input
        ref={input}
        class="vh"
        type="file"
        multiple
        onChange={chosen}
        tabIndex={-1}
        aria-label="Log and brief"
      />
      <button class="btn" type="button" onClick={() => input.current?.click()}>
        Choose files
      </button>
    </div>
  );
}

async function openSample(sample: Sample): Promise<void> {
  try {
    openOnSheet(await sampleFiles(sample));
  } catch {
    notices.value = [
      `${sample.title}: the sample did not arrive from the local server. Start it again and reload.`,
    ];
  }
}

function Samples() {
  return (
    <div>
      <h2>Or look at one that is made up</h2>
      <ul class="samples">
        {SAMPLES.map((sample) => (
          <li key={sample.name}>
            <button type="button" onClick={() => void openSample(sample)}>
              <SampleSign name={sample.name} />
              <span>
                <b>{sample.title}</b>
                <span class="fine">{sample.words}</span>
              </span>
            </button>
          </li>
        ))}
      </ul>
    </div>
  );
}

export function Open() {
  return (
    <>
      <div class="rule" />
      <h1 class="one" tabIndex={-1}>
        Hindtrack reads the log of a training flight and shows where the aircraft was, where it should have
        been, what the wind did, and what would have worked.
      </h1>
      <div class="start">
        <Drop />
        <Samples />
      </div>
      <p class="next">
        For the next flight: <a href={address("hold")}>a hold solved for a wind</a>, without any file.
      </p>
      <div class="priv">
        <p>
          Nothing leaves this machine. The files are read in this page, and no request is made. The flight
          opened last is kept in this browser, so that a reload loses nothing, until another takes its place.
        </p>
        <p class="c">{CAUTION}</p>
      </div>
    </>
  );
}
