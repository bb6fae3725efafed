/** The page begins here. */
import "./jitless.ts";
import { render } from "preact";
import { App } from "./app.tsx";
import "./tokens.css";
import "./page.css";
import "./open.css";
import "./sheet.css";
import "./next-hold.css";
import "./logbook.css";
import "./habits.css";
import "./notes.css";
import "./maker/maker.css";
import "./drawings/drawings.css";
import "./narrow.css";
import "./touch.css";
import "./print.css";

render(<App />, document.getElementById("page")!);
