/** The page asks to be kept on this machine, and hears when a newer one is ready. */
import { signal } from "@preact/signals";

/** `ready`: a newer page waits to be taken. `taken`: another tab has taken it, and this one is still the old. */
export const renewal = signal<"none" | "ready" | "taken">("none");

let waiting: ServiceWorker | null = null;
let isWanted = false;

/** Takes the newer page: it is loaded at once, at the same address. */
export function renew(): void {
  isWanted = true;
  if (renewal.value === "taken" || !waiting) location.reload();
  else waiting.postMessage("take over");
}

function ready(worker: ServiceWorker | null): void {
  waiting = worker;
  renewal.value = "ready";
}

function watch(registration: ServiceWorkerRegistration): void {
  registration.addEventListener("updatefound", () => {
    const coming = registration.installing;
    coming?.addEventListener("statechange", () => {
      // The first one of all replaces nothing.
      if (coming.state === "installed" && navigator.serviceWorker.controller) ready(coming);
    });
  });
}

/** A page that is left open asks now and then whether there is a newer one. Chosen: an hour. */
const ASK_MS = 3_600_000;

/** Where the browser lets a page be kept: not in a private window of some, nor without a secure address. */
export async function keepOffline(): Promise<void> {
  const { serviceWorker } = navigator;
  if (!serviceWorker || import.meta.env.MODE !== "production") return;
  const hadOne = serviceWorker.controller !== null;
  serviceWorker.addEventListener("controllerchange", () => {
    if (isWanted) location.reload();
    else if (hadOne) renewal.value = "taken";
  });
  try {
    const registration = await serviceWorker.register("./service-worker.js", { updateViaCache: "none" });
    watch(registration);
    if (registration.waiting && hadOne) {
      // It waited since the last visit; nothing has begun on this page that could be disturbed.
      ready(registration.waiting);
      renew();
    }
    setInterval(() => void registration.update().catch(() => {}), ASK_MS);
  } catch {
    // Then the page needs its server, as before.
  }
}
