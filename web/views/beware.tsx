/** What must be known of the log before the rest is believed. */
import { type DebriefDocument, logCautions } from "../../src/index.ts";

export function Beware({ document }: { document: DebriefDocument }) {
  const cautions = logCautions(document);
  if (cautions.length === 0) return null;
  return (
    <div class="beware" role="note" aria-label="About this log">
      {cautions.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
    </div>
  );
}
