// How is a chart read without a mouse?  A cursor goes from mark to mark and says each.
import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";

export interface Stop { row: number; x: number; y: number; says: string; open?: () => void }

function nextInRow(stops: Stop[], at: number, by: number): number {
  const next = Math.max(0, Math.min(stops.length - 1, at + by));
  return stops[next]?.row === stops[at]?.row || at < 0 ? next : at;
}

function otherRow(stops: Stop[], at: number, by: number): number {
  const rows = [...new Set(stops.map((one) => one.row))];
  const row = rows[Math.max(0, Math.min(rows.length - 1, rows.indexOf(stops[at]?.row ?? -1) + by))];
  const x = stops[at]?.x ?? 0;
  let best = at;
  stops.forEach((one, index) => {
    if (one.row === row && (stops[best]?.row !== row || Math.abs(one.x - x) < Math.abs((stops[best]?.x ?? 0) - x))) best = index;
  });
  return best;
}

/** Left and right go along a row, up and down to another, Enter opens what stands behind the mark. */
export function Chart(props: { label: string; width: number; height: number; stops: Stop[]; children: ComponentChildren }) {
  const [at, setAt] = useState(-1);
  const { stops } = props;
  const stop = stops[at];
  const down = (event: KeyboardEvent): void => {
    const to = event.key === "ArrowRight" ? nextInRow(stops, at, 1) : event.key === "ArrowLeft" ? nextInRow(stops, at, -1)
      : event.key === "ArrowDown" ? otherRow(stops, at, 1) : event.key === "ArrowUp" ? otherRow(stops, at, -1)
      : event.key === "Home" ? 0 : event.key === "End" ? stops.length - 1 : null;
    if (to !== null) {
      event.preventDefault();
      event.stopPropagation();
      setAt(to);
    } else if (event.key === "Enter" && stop?.open !== undefined) {
      event.preventDefault();
      stop.open();
    }
  };
  const near = (event: PointerEvent): void => {
    const box = (event.currentTarget as Element).getBoundingClientRect();
    const x = event.clientX - box.left, y = event.clientY - box.top;
    let best = -1, far = 40;
    stops.forEach((one, index) => {
      const away = Math.hypot(one.x - x, one.y - y);
      if (away < far) [best, far] = [index, away];
    });
    if (best >= 0) setAt(best);
  };
  return (
    <div class="chart">
      <div class="chart-keys" tabIndex={0} role="application" aria-roledescription="chart" aria-label={`${props.label} Arrow keys go from mark to mark.`} onKeyDown={down}>
        <svg width={props.width} height={props.height} viewBox={`0 0 ${props.width} ${props.height}`} aria-hidden="true" onPointerDown={near}>
          {props.children}
          {stop !== undefined && <><circle class="cursor-halo" cx={stop.x} cy={stop.y} r={9} /><circle class="cursor" cx={stop.x} cy={stop.y} r={9} /></>}
        </svg>
      </div>
      <p class="cursor-says" role="status" aria-live="polite">{stop?.says ?? "Arrow keys, or a click, go from mark to mark; T shows the table."}</p>
    </div>
  );
}
