/** Several pilots together: each alone in a line, one click from the whole. */
import { useMemo } from "preact/hooks";
import { flightsByPilot, habitsOf, type ObservedFlight, pilotLine } from "../../../src/index.ts";

interface Props {
  readonly flights: readonly ObservedFlight[];
  readonly choose: (pilot: string) => void;
}

export function PilotByPilot({ flights, choose }: Props) {
  const each = useMemo(() => flightsByPilot(flights), [flights]);
  if (each.length < 2) return null;
  return (
    <section class="pilots" aria-labelledby="pilot-by-pilot">
      <h2 id="pilot-by-pilot">Pilot by pilot</h2>
      <ul>
        {each.map((own) => {
          const name = own[0]!.pilot!;
          return (
            <li key={name}>
              <button type="button" onClick={() => choose(name)}>
                {name}
              </button>
              , {pilotLine(habitsOf(own))}
            </li>
          );
        })}
      </ul>
    </section>
  );
}
