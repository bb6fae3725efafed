/** What every chart of the sheet leaves out: Chart.js's own sizing, motion, events, legend and tooltip. */

interface Padding {
  readonly top: number;
  readonly right: number;
}

/** Options common to all charts; the plot's place is exact, so that its millimetres are. Lengths in px. */
export const bareOptions = (devicePixelRatio: number, { top, right }: Padding) => ({
  responsive: false,
  animation: false as const,
  events: [],
  devicePixelRatio,
  layout: { autoPadding: false, padding: { top, left: 0, bottom: 0, right } },
  plugins: { legend: { display: false }, tooltip: { enabled: false }, title: { display: false } },
});
