// How do speeds and torques run in time?  Loaded only when a start or a seizure is opened.
import uPlot from "uplot";
import "uplot/dist/uPlot.min.css";
import { colourOf as colour } from "../show/colour";
import { onPaper } from "../show/paper";
import type { Line } from "../state/course";

export interface TimeChart { size(width: number, height: number): void; cursor(t: number): void; close(): void }

const DASHES = [[], [7, 4], [2, 3], [10, 3, 2, 3], [5, 2]];
const INKS = ["ink", "power", "back", "link", "ink3"];
/** The colour of links is near that of ink: its first line is dashed. */
const NEAR_INK = 3;

function seconds(t: number): string {
  const size = Math.abs(t);
  if (size === 0) return "0";
  return size < 1e-3 ? `${+(t * 1e6).toPrecision(3)} \u00b5s` : size < 1 ? `${+(t * 1e3).toPrecision(3)} ms` : `${+t.toPrecision(3)} s`;
}

/** A tick as every other number of the page is written. */
function level(value: number): string {
  const [whole = "", part] = String(Math.abs(+value.toPrecision(9))).split(".");
  const apart = whole.length > 4 ? whole.replace(/\B(?=(\d{3})+$)/g, "\u2009") : whole;
  return `${value < 0 ? "\u2212" : ""}${apart}${part === undefined ? "" : `.${part}`}`;
}

/** Of a scale that is drawn out, lines at the powers of ten only: the nine between them would hide what is drawn. */
function decades(ticks: number[]): (number | null)[] {
  return ticks.map((one) => (Math.abs(Math.log10(one) - Math.round(Math.log10(one))) < 1e-6 ? one : null));
}

/** Lines over time; `drawn`: the beginning drawn out (each ten times as long as the ten before); `sparse`: dots for a grid that would drown the lines. */
export function drawTimes(place: HTMLElement, t: Float64Array, lines: Line[], options: { title: string; drawn: boolean; first: number; sparse: boolean; width: number; height: number; marks: number[]; pick: (t: number) => void }): TimeChart {
  const axis = { stroke: () => colour("ink2"), grid: { stroke: () => colour("hair"), width: 1, dash: options.sparse ? [1, 5] : [] }, ticks: { stroke: () => colour("rule"), width: 1 }, font: "11px B612, Verdana, sans-serif" };
  const times = Array.from(t, (one) => (options.drawn ? Math.max(one, options.first) : one));
  let at = times[0] ?? 0;
  const chart = new uPlot({
    width: options.width, height: options.height,
    legend: { show: false }, cursor: { show: false }, select: { show: false, left: 0, top: 0, width: 0, height: 0 },
    scales: { x: options.drawn ? { time: false, distr: 3, log: 10, range: [options.first, t[t.length - 1] ?? 1] } : { time: false }, y: {} },
    axes: [
      { ...axis, ...(options.drawn ? { grid: { ...axis.grid, filter: (_: uPlot, ticks: number[]) => decades(ticks) } } : {}), size: 30, values: (_: uPlot, ticks: number[]) => ticks.map((one) => (one === null ? "" : seconds(one))) },
      { ...axis, size: 62, values: (_: uPlot, ticks: number[]) => ticks.map((one) => (one === null ? "" : level(one))), label: options.title, labelFont: "11px B612, Verdana, sans-serif", labelSize: 16 },
    ],
    series: [{}, ...lines.map((_, index) => ({ stroke: () => colour(INKS[index % INKS.length] ?? "ink"), dash: index === NEAR_INK ? [7, 3] : DASHES[Math.floor(index / INKS.length) % DASHES.length] ?? [], width: 1.5, points: { show: false }, spanGaps: false }))],
    hooks: {
      draw: [(one: uPlot) => {
        const ctx = one.ctx, { top, height } = one.bbox;
        const rule = (time: number, ink: string, width: number, dash: number[]): void => {
          const x = one.valToPos(time, "x", true);
          ctx.save();
          ctx.strokeStyle = colour(ink);
          ctx.lineWidth = width * devicePixelRatio;
          ctx.setLineDash(dash);
          ctx.beginPath();
          ctx.moveTo(x, top);
          ctx.lineTo(x, top + height);
          ctx.stroke();
          ctx.restore();
        };
        for (const mark of options.marks) rule(options.drawn ? Math.max(mark, options.first) : mark, "rule", 1, [4, 4]);
        rule(at, "focus", 2, []);
      }],
    },
  } as uPlot.Options, [times, ...lines.map((one) => one.values)] as uPlot.AlignedData, place);
  const picked = (event: PointerEvent): void => {
    if (event.buttons !== 1) return;
    const box = chart.over.getBoundingClientRect();
    options.pick(chart.posToVal(Math.max(0, Math.min(box.width, event.clientX - box.left)), "x"));
  };
  chart.over.addEventListener("pointerdown", picked);
  chart.over.addEventListener("pointermove", picked);
  const forget = onPaper(() => chart.redraw(false, true));
  return {
    size: (width, height) => chart.setSize({ width, height }),
    cursor: (time) => {
      at = options.drawn ? Math.max(time, options.first) : time;
      chart.redraw(false, false);
    },
    close: () => {
      forget();
      chart.destroy();
    },
  };
}
