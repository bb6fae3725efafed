/** Room for the instructor's words, ruled, and the signature rules. */
import { useState } from "preact/hooks";
import type { DebriefDocument } from "../../src/index.ts";
import { keepRemark, remarkOf } from "../remark.ts";

export function Remarks({ document }: { document: DebriefDocument }) {
  const [kept, setKept] = useState(true);
  return (
    <section class="remarks" aria-labelledby="remarks-title">
      <div />
      <div>
        <h2 id="remarks-title">
          <label for="remark">Remarks</label>
        </h2>
        <textarea
          id="remark"
          // Another flight is another sheet of paper.
          key={`${document.log.file} ${document.log.startUtc}`}
          defaultValue={remarkOf(document)}
          onInput={(event) => setKept(keepRemark(document, event.currentTarget.value))}
        />
        {!kept && (
          <p class="fine screen">This browser keeps nothing: print or save before leaving the page.</p>
        )}
        <div class="sign">
          <span>instructor</span>
          <span>pilot</span>
          <span>date</span>
        </div>
      </div>
    </section>
  );
}
