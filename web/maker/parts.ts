/** What the sheet needs of the maker, in one piece that is loaded when a brief is first made. */

export { history } from "./making.ts";
export { mean, openMaker, takeUpKept } from "./opened.ts";
export { Panel } from "./panel.tsx";
export { isReworking } from "./rework.ts";
