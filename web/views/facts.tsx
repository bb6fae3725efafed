/** The facts of one exercise as a table. */
import { bound } from "../bound.ts";
import type { FactRow } from "../fact-row.ts";

export function Facts({ title, rows }: { title: string; rows: readonly FactRow[] }) {
  return (
    <div class="scroll">
      <table class="data facts figures">
        <caption>In figures, {title}</caption>
        <thead>
          <tr>
            <th>Fact</th>
            <th class="r">Value</th>
            <th>When, or of what</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row, i) => (
            <tr key={`${row.fact} ${i}`}>
              <th scope="row">{row.fact}</th>
              <td class="r">{bound(row.value)}</td>
              <td class="cite">{row.note}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
