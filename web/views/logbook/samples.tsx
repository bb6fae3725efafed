/** Flights that are made up, one click away. */
import { notices } from "../../flight.ts";
import { openOnSheet } from "../../opening.ts";
import { SAMPLE_TAG, SAMPLES, type Sample, sampleFiles } from "../../samples.ts";
import { NO_LABELS } from "../../store/schema.ts";
import { SampleSign } from "../sample-sign.tsx";

async function openSample(sample: Sample): Promise<void> {
  try {
    openOnSheet(await sampleFiles(sample), {}, { ...NO_LABELS, tags: [SAMPLE_TAG] });
  } catch {
    notices.value = [
      `${sample.title}: the sample did not arrive from the local server. Start it again and reload.`,
    ];
  }
}

const FOLD = "made-up";

/** Below the list of flights: folded there, so that it stays short. */
export function FoldedSamples() {
  return (
    <details id={FOLD} class="more-of">
      <summary>Flights that are made up, to look at</summary>
      <Samples />
    </details>
  );
}

function unfold(): void {
  const fold = document.getElementById(FOLD);
  if (!(fold instanceof HTMLDetailsElement)) return;
  fold.open = true;
  fold.scrollIntoView();
  fold.querySelector<HTMLElement>("summary")?.focus({ preventScroll: true });
}

/** The way there from the head of the logbook. */
export function ToSamples() {
  return (
    <button type="button" onClick={unfold}>
      Or look at one that is made up
    </button>
  );
}

const KINDS = [...new Set(SAMPLES.map((sample) => sample.of))];

export function Samples() {
  return (
    <div class="kinds">
      {KINDS.map((kind) => (
        <section key={kind} aria-labelledby={`samples-${kind}`}>
          <h3 class="samples-of" id={`samples-${kind}`}>
            {kind}
          </h3>
          <ul class="samples">
            {SAMPLES.filter((sample) => sample.of === kind).map((sample) => (
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
        </section>
      ))}
    </div>
  );
}
