/** The caution again, what was left out of the log and why, and how angles are written. */
import { count, type DebriefDocument, issueSentence, plain, shownName } from "../../src/index.ts";

function Dropped({ log }: { log: DebriefDocument["log"] }) {
  const dropped = Object.entries(log.dropped).filter(([, n]) => n > 0);
  const left = log.points - log.used;
  const reasons = dropped.map(([code, n]) => `${count(n)} ${plain(code)}`).join(", ");
  return (
    <p id="log" tabIndex={-1}>
      Log {shownName(log.file)}:{" "}
      {left === 0 ? "no point dropped" : `${count(left)} of ${count(log.points)} points dropped`}
      {reasons && `: ${reasons}`}.
    </p>
  );
}

export function Foot({ document }: { document: DebriefDocument }) {
  const issues = [...document.log.issues, ...(document.brief?.issues ?? [])];
  const { variation } = document;
  return (
    <footer class="foot">
      <p>{document.caution}</p>
      <Dropped log={document.log} />
      {issues.length > 0 && (
        <ul>
          {issues.map((issue, i) => (
            <li key={i}>{issueSentence(issue)}</li>
          ))}
        </ul>
      )}
      <p>
        M is magnetic, T is true
        {variation &&
          `; variation ${Math.abs(variation.degrees).toFixed(1)}° ${variation.degrees < 0 ? "west" : "east"} (${variation.model})`}
        . L and R are left and right of the course. Corrections and errors are differences and carry neither M
        nor T. Doubt is 95&nbsp;%. Worked out by Hindtrack from the log
        {document.brief ? " and the brief" : ""}. Nothing left this machine.
      </p>
    </footer>
  );
}
