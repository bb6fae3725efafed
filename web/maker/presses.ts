/** A press counts for the button on which it began: what is said as a field is left may move the button under the pointer. */

/** Farther than this the pointer was drawn away, and nothing was meant, px. Chosen. */
const STILL_PX = 6;

interface Press {
  readonly button: HTMLButtonElement;
  readonly x: number;
  readonly y: number;
}

function pressOn(within: HTMLElement, { target, button, clientX, clientY }: MouseEvent): Press | null {
  const its = target instanceof Element ? target.closest("button") : null;
  return its && button === 0 && within.contains(its) ? { button: its, x: clientX, y: clientY } : null;
}

/** Returns what ends it. */
export function honourPresses(within: HTMLElement): () => void {
  let press: Press | null = null;
  const begin = (event: MouseEvent) => {
    press = pressOn(within, event);
  };
  // a press that ends on another element is a click on what holds both
  const end = (event: MouseEvent) => {
    const begun = press;
    press = null;
    if (!begun || begun.button.contains(event.target as Node)) return;
    if (Math.hypot(event.clientX - begun.x, event.clientY - begun.y) > STILL_PX) return;
    event.stopPropagation();
    begun.button.click();
  };
  addEventListener("mousedown", begin, { capture: true });
  addEventListener("click", end, { capture: true });
  return () => {
    removeEventListener("mousedown", begin, { capture: true });
    removeEventListener("click", end, { capture: true });
  };
}
