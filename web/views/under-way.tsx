/** Above the content: what is under way, a newer version, and what there is to say. */
import { adding } from "../adding.ts";
import { notices, work } from "../flight.ts";
import { renew, renewal } from "../offline/renewal.ts";
import { cancel } from "../show.ts";

/** The button goes with the work: whoever works by keyboard goes on from the content. */
function stop(end: () => void): void {
  end();
  document.getElementById("content")?.focus();
}

interface UnderWayProps {
  readonly words: string;
  readonly share: number | null;
  readonly end: () => void;
}

function UnderWay({ words, share, end }: UnderWayProps) {
  return (
    <p>
      <span>{words}</span> <progress value={share ?? undefined} max={1} aria-label={words} />{" "}
      <button type="button" onClick={() => stop(end)}>
        Cancel
      </button>
    </p>
  );
}

/** What is done for the sheet, and what is done for the logbook meanwhile. */
export function AllUnderWay() {
  const now = work.value;
  const many = adding.value;
  return (
    <div class="underway screen" role="status">
      {now && <UnderWay words={now.words} share={now.share} end={cancel} />}
      {many && (
        <UnderWay
          words={many.of > 1 ? `${many.words}, ${many.done + 1} of ${many.of}` : many.words}
          share={many.of > 1 ? many.done / many.of : null}
          end={many.stop}
        />
      )}
    </div>
  );
}

export function Renewal() {
  const now = renewal.value;
  return (
    <div class="renewal screen" aria-live="polite">
      {now !== "none" && (
        <p>
          {now === "ready" ? "A new version of Hindtrack is ready." : "Hindtrack was renewed in another tab."}{" "}
          <button type="button" onClick={renew}>
            {now === "ready" ? "Take it now" : "Reload this one"}
          </button>
        </p>
      )}
    </div>
  );
}

export function Notices() {
  return (
    <div class="notices screen" role="alert">
      {notices.value.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
    </div>
  );
}
