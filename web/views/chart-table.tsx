/** A drawing of the sheet as a table, folded away: for those who read numbers, and for screen readers. */
import type { ComponentChildren } from "preact";

interface Props {
  /** As in "The profile as a table". */
  readonly what: string;
  /** How far its rows lie apart, as in "every mile". */
  readonly every: string;
  /** Title of the exercise. */
  readonly title: string;
  /** Cells of the head. */
  readonly head: ComponentChildren;
  /** Rows of the body. */
  readonly children: ComponentChildren;
}

export function ChartTable({ what, every, title, head, children }: Props) {
  return (
    <details class="screen">
      <summary>{`${what}, ${every}`}</summary>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by the keyboard */}
      <section class="scroll" tabIndex={0} aria-label={`${what}, ${title}`}>
        <table class="data">
          <thead>
            <tr>{head}</tr>
          </thead>
          <tbody>{children}</tbody>
        </table>
      </section>
    </details>
  );
}
