/** Short words for what every plugin does with a canvas: dashed lines, texts with a halo of paper. */
import type { Palette } from "../surroundings.ts";

/** Least size of a text on a drawing, px; names of isolines are 11.5. */
export const TEXT_PX = 12.5;
const ITALIC_PX = 13;

export type Face = "plain" | "bold" | "italic" | "small";

function fontOf(face: Face, palette: Palette): string {
  if (face === "italic") return `italic ${ITALIC_PX}px ${palette.serif}`;
  if (face === "small") return `11.5px ${palette.sans}`;
  return `${face === "bold" ? "600 " : ""}${TEXT_PX}px ${palette.sans}`;
}

export interface Stroke {
  readonly colour: string;
  readonly width: number;
  readonly dash?: readonly number[];
}

export function stroke(
  c: CanvasRenderingContext2D,
  style: Stroke,
  path: (c: CanvasRenderingContext2D) => void,
): void {
  c.save();
  c.strokeStyle = style.colour;
  c.lineWidth = style.width;
  c.setLineDash([...(style.dash ?? [])]);
  c.lineJoin = "round";
  c.beginPath();
  path(c);
  c.stroke();
  c.restore();
}

export function segment(
  c: CanvasRenderingContext2D,
  style: Stroke,
  x1: number,
  y1: number,
  x2: number,
  y2: number,
): void {
  stroke(c, style, () => {
    c.moveTo(x1, y1);
    c.lineTo(x2, y2);
  });
}

export interface TextStyle {
  readonly face: Face;
  readonly colour: string;
  readonly align?: CanvasTextAlign;
  /** Colour of a halo that frees the text from the lines beneath it. */
  readonly halo?: string;
}

/** Text on its baseline. */
export function write(
  c: CanvasRenderingContext2D,
  palette: Palette,
  text: string,
  x: number,
  y: number,
  style: TextStyle,
): void {
  c.save();
  c.font = fontOf(style.face, palette);
  c.textAlign = style.align ?? "left";
  c.textBaseline = "alphabetic";
  if (style.halo) {
    c.strokeStyle = style.halo;
    c.lineWidth = 4;
    c.lineJoin = "round";
    c.strokeText(text, x, y);
  }
  c.fillStyle = style.colour;
  c.fillText(text, x, y);
  c.restore();
}

export function widthOf(c: CanvasRenderingContext2D, palette: Palette, text: string, face: Face): number {
  c.save();
  c.font = fontOf(face, palette);
  const { width } = c.measureText(text);
  c.restore();
  return width;
}
