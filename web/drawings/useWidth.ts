/** The width of an element, followed as it changes. */
import type { RefObject } from "preact";
import { useLayoutEffect, useState } from "preact/hooks";
import { PAPER_PX } from "./scale.ts";
import { surroundings } from "./surroundings.ts";

/** Inner width in px; 0 before the first layout. */
export function useWidth(element: RefObject<HTMLElement | null>): number {
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const target = element.current;
    if (!target) return;
    setWidth(Math.floor(target.clientWidth));
    const observer = new ResizeObserver(() => setWidth(Math.floor(target.clientWidth)));
    observer.observe(target);
    return () => observer.disconnect();
  }, [element]);
  return width;
}

/** The width to draw at, px: that of the element, or on paper a fixed one. */
export function useDrawnWidth(element: RefObject<HTMLElement | null>, paperPx = PAPER_PX): number {
  const column = useWidth(element);
  return surroundings().value.paper ? paperPx : column;
}
