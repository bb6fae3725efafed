/** A log that carries routes and came without a brief: one click makes a route the brief. */
import type { Flight } from "../flight.ts";
import { openAnew } from "../opening.ts";

export function RouteOffers({ flight }: { flight: Flight }) {
  if (flight.routes.length === 0) return null;
  return (
    <div class="fine save screen">
      {flight.routes.map((route, i) => (
        <p key={route.name}>
          The log carries a route, {route.name ? `${route.name}: ` : ""}
          {route.idents.join(", ")}.{" "}
          <button type="button" onClick={() => void openAnew({ route: i })}>
            Take it as the brief
          </button>
        </p>
      ))}
    </div>
  );
}
