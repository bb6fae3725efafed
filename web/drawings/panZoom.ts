/** Moving and enlarging a plan by pointer, wheel and keys; the plan always says when it has left its fixed scale. */
import { useState } from "preact/hooks";

export interface View {
  /** 1 is the plan's own scale. */
  readonly zoom: number;
  /** Shift of the drawing on the page, px. */
  readonly x: number;
  readonly y: number;
}

export const HOME: View = { zoom: 1, x: 0, y: 0 };
const LEAST_ZOOM = 0.25;
const MOST_ZOOM = 16;
const KEY_STEP_PX = 40;
const KEY_FACTOR = 1.25;

/** Enlarges about a point that stays where it is. */
export function zoomAbout(view: View, factor: number, x: number, y: number): View {
  const zoom = Math.max(LEAST_ZOOM, Math.min(MOST_ZOOM, view.zoom * factor));
  const real = zoom / view.zoom;
  return { zoom, x: x - (x - view.x) * real, y: y - (y - view.y) * real };
}

/** The view after a key, or null where the key means nothing to a plan. */
export function viewAfterKey(view: View, key: string, width: number, height: number): View | null {
  switch (key) {
    case "ArrowLeft":
      return { ...view, x: view.x + KEY_STEP_PX };
    case "ArrowRight":
      return { ...view, x: view.x - KEY_STEP_PX };
    case "ArrowUp":
      return { ...view, y: view.y + KEY_STEP_PX };
    case "ArrowDown":
      return { ...view, y: view.y - KEY_STEP_PX };
    case "+":
    case "=":
      return zoomAbout(view, KEY_FACTOR, width / 2, height / 2);
    case "-":
      return zoomAbout(view, 1 / KEY_FACTOR, width / 2, height / 2);
    case "0":
    case "Home":
      return HOME;
    default:
      return null;
  }
}

/** State of a view, with the handlers for the element that shows it. Ctrl and wheel (or a pinch) zooms, so that the page still scrolls. */
export function usePanZoom(width: number, height: number, start: View = HOME) {
  const [changed, setView] = useState<View | null>(null);
  const view = changed ?? start;
  const [grip, setGrip] = useState<{ x: number; y: number } | null>(null);
  return {
    view,
    moved: changed !== null,
    reset: () => setView(null),
    handlers: {
      onKeyDown: (event: KeyboardEvent) => {
        if (event.ctrlKey || event.metaKey || event.altKey) return;
        const next = viewAfterKey(view, event.key, width, height);
        if (next === null) return;
        event.preventDefault();
        setView(next === HOME ? null : next);
      },
      onWheel: (event: WheelEvent) => {
        if (!event.ctrlKey) return;
        event.preventDefault();
        const box = (event.currentTarget as Element).getBoundingClientRect();
        setView(
          zoomAbout(view, Math.exp(-event.deltaY / 300), event.clientX - box.left, event.clientY - box.top),
        );
      },
      onPointerDown: (event: PointerEvent) => {
        if (event.button !== 0) return;
        (event.currentTarget as Element).setPointerCapture(event.pointerId);
        setGrip({ x: event.clientX, y: event.clientY });
      },
      onPointerMove: (event: PointerEvent) => {
        if (grip === null) return;
        setGrip({ x: event.clientX, y: event.clientY });
        setView({ ...view, x: view.x + event.clientX - grip.x, y: view.y + event.clientY - grip.y });
      },
      onPointerUp: () => setGrip(null),
      onPointerCancel: () => setGrip(null),
      onDblClick: () => setView(null),
    },
  };
}
