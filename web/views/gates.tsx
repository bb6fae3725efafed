/** The gates of an approach as a table: how it stood at each height, and the worst from there on. */
import { type ApproachFacts, count, plain } from "../../src/index.ts";
import { gateRows } from "../gate-rows.ts";

export function Gates({ title, facts }: { title: string; facts: ApproachFacts }) {
  const { notShown } = facts;
  const gates = facts.gates.filter(({ utc }) => utc !== null);
  const missing = facts.gates.filter(({ utc }) => utc === null);
  return (
    <>
      {gates.length > 0 && (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by the keyboard
        <section class="scroll" tabIndex={0} aria-label={`Gates, ${title}`}>
          <table class="data gates">
            <caption>Gates above the threshold: there, and the worst after</caption>
            <thead>
              <tr>
                <th scope="col">
                  <span class="vh">What</span>
                </th>
                {gates.flatMap(({ heightFt }) => [
                  <th key={heightFt} scope="col" class="r">
                    {count(heightFt)} ft
                  </th>,
                  <th key={`${heightFt} on`} scope="col" class="r">
                    after
                  </th>,
                ])}
              </tr>
            </thead>
            <tbody>
              {gateRows(gates).map(({ what, cells }) => (
                <tr key={what}>
                  <th scope="row">{what}</th>
                  {cells.flatMap(({ heightFt, there, after }) => [
                    <td key={heightFt} class="r">
                      {there}
                    </td>,
                    <td key={`${heightFt} on`} class="r u">
                      {after}
                    </td>,
                  ])}
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      )}
      {missing.length > 0 && (
        <p class="fine">
          Not passed, or not to be told without times and elevation:{" "}
          {missing.map(({ heightFt }) => `${count(heightFt)} ft`).join(", ")}.
        </p>
      )}
      {notShown.length > 0 && (
        <p class="fine not-shown">
          What stabilised criteria ask for and a track log does not show: {notShown.map(plain).join(", ")}.
        </p>
      )}
    </>
  );
}
