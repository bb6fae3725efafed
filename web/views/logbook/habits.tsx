/** What keeps coming back over the flights of the logbook. */
import { useEffect } from "preact/hooks";
import { standing } from "../../logbook.ts";
import { observeAll, observed } from "../../observed.ts";
import { flightsWords } from "../../outcome-words.ts";
import { aimedAddress } from "../../place.ts";
import { Habits } from "../habits/habits.tsx";
import { Naming } from "./naming.tsx";

export function LogbookHabits() {
  const rows = standing.value;
  useEffect(() => void observeAll(), [rows]);
  const now = observed.value;
  if (!now)
    return (
      <>
        <div class="rule" />
        <p class="what" role="status">
          Reading the debriefs of {flightsWords(rows.length)}
        </p>
      </>
    );
  return (
    <>
      {now.areMadeUp && <p class="fine">These flights are made up: fly some of your own.</p>}
      {now.leftOut > 0 && <p class="fine">Left out here: {flightsWords(now.leftOut)}, made up.</p>}
      <Habits
        flights={now.flights}
        address={aimedAddress}
        naming={(ids) => !now.areMadeUp && <Naming ids={ids} />}
      />
    </>
  );
}
