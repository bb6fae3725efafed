/** One sheet that carries its flight inside itself: opened from a disk, it asks nobody for anything. */
import { render } from "preact";
import { carriedFlight } from "../../src/index.ts";
import { Sheet } from "../views/sheet.tsx";
import "../tokens.css";
import "../page.css";
import "../sheet.css";
import "../notes.css";
import "../drawings/drawings.css";
import "../narrow.css";
import "../touch.css";
import "../print.css";

const carried = carriedFlight(document.getElementById("flight")!.textContent!);

render(
  <div class="page">
    <a class="skip" href="#content">
      To the content
    </a>
    <p class="top">
      <span class="name">Hindtrack</span>
    </p>
    <main id="content" tabIndex={-1}>
      <Sheet flight={carried} />
    </main>
  </div>,
  document.getElementById("page")!,
);
