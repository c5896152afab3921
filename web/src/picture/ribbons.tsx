// How does power run through the train in the condition shown?  As wide as it is large.
import { useMemo } from "preact/hooks";
import type { View } from "../wire/view";
import { bodyRadius, toX, toY, type Sheet } from "./place";

interface Band { key: string; x1: number; y1: number; x2: number; y2: number; kw: number; headed: boolean; says: string }

const LEAST = 1.6;

/** px a unit of power, one for all conditions: 0.45 times 1, 2 or 5 and a power of ten. */
export function ribbonScale(now: View, sheet: Sheet): number {
  const most = Math.max(0, ...now.meshes.flatMap((mesh) => mesh.power.map((p) => Math.abs(p ?? 0))));
  const radii = now.shafts.filter((one) => one.kind === "box").map((one) => one.r_main * sheet.k);
  const middle = radii.reduce((sum, r) => sum + r, 0) / Math.max(1, radii.length);
  const share = most > 0 ? Math.min(44, Math.max(12, 1.1 * middle)) / (most * 0.45) : 1;
  const decade = 10 ** Math.floor(Math.log10(share));
  const rest = share / decade;
  return 0.45 * decade * (rest >= 5 ? 5 : rest >= 2 ? 2 : 1);
}

function bands(now: View, sheet: Sheet, c: number): Band[] {
  const out: Band[] = [];
  for (const mesh of now.meshes) {
    const a = now.shafts[mesh.driver];
    const b = now.shafts[mesh.driven];
    const kw = mesh.power[c] ?? 0;
    if (!a || !b || b.x === null || b.y === null || a.kind === "tower") continue;
    let x1 = toX(sheet, a.kind === "spool" ? 0 : a.x ?? 0);
    let y1 = toY(sheet, a.kind === "spool" ? 0 : a.y ?? 0);
    const x2 = toX(sheet, b.x);
    const y2 = toY(sheet, b.y);
    if (a.kind === "spool") {
      const far = Math.hypot(x2 - x1, y2 - y1) || 1;
      const r = (mesh.r_1 ?? 0) * sheet.k;
      x1 += ((x2 - x1) * r) / far;
      y1 += ((y2 - y1) * r) / far;
    }
    out.push({ key: mesh.address, x1, y1, x2, y2, kw, headed: false, says: `${a.name} to ${b.name}` });
  }
  for (const pad of now.pads) {
    const shaft = now.shafts[pad.shaft];
    if (!shaft || shaft.x === null || shaft.y === null) continue;
    const x = toX(sheet, shaft.x);
    const y = toY(sheet, shaft.y);
    const both = now.pads.filter((one) => one.shaft === pad.shaft).length > 1;
    const lean = both ? (pad.face === "rear" ? 0.5 : -0.5) * sheet.side : 0;
    const away = Math.atan2(y - sheet.oy, x - sheet.ox) + lean;
    const edge = Math.max(shaft.r, bodyRadius(now, pad.shaft)) * sheet.k * 0.9;
    out.push({ key: pad.address, x1: x, y1: y, x2: x + edge * Math.cos(away), y2: y + edge * Math.sin(away), kw: pad.power[c] ?? 0, headed: true, says: pad.name });
  }
  return out.filter((one) => Math.abs(one.kw) >= 0.04);
}

function Chevrons(props: { band: Band; width: number }) {
  const { band, width } = props;
  const length = Math.hypot(band.x2 - band.x1, band.y2 - band.y1);
  const along = Math.atan2(band.y2 - band.y1, band.x2 - band.x1);
  const turn = (along * 180) / Math.PI + (band.kw < 0 ? 180 : 0);
  const h = width < 6 ? 4 : Math.max(3.2, Math.min(9, 0.34 * width));
  const marks = [];
  for (let s = 18; s < length - 5; s += 22) {
    const x = band.x1 + s * Math.cos(along);
    const y = band.y1 + s * Math.sin(along);
    marks.push(
      <polyline key={s} class={width < 6 ? "chevron thin" : "chevron"} points={`${-h / 2},${-h} ${h / 2},0 ${-h / 2},${h}`}
        transform={`translate(${x.toFixed(1)},${y.toFixed(1)}) rotate(${turn.toFixed(1)})`} />,
    );
  }
  return <>{marks}</>;
}

function Head(props: { band: Band; width: number }) {
  const { band, width } = props;
  const along = (Math.atan2(band.y2 - band.y1, band.x2 - band.x1) * 180) / Math.PI;
  const half = Math.max(6, 0.72 * width);
  const deep = Math.max(8, 0.8 * width);
  const points = band.kw > 0 ? `0,${-half} ${deep},0 0,${half}` : `${deep},${-half} 0,0 ${deep},${half}`;
  return <polygon class="head" points={points} transform={`translate(${band.x2.toFixed(1)},${band.y2.toFixed(1)}) rotate(${along.toFixed(1)})`} />;
}

export function Ribbons(props: { now: View; sheet: Sheet; condition: number }) {
  const { now, sheet, condition } = props;
  return useMemo(() => drawRibbons(now, sheet, condition), [now.meshes, now.pads, now.shafts, sheet, condition]);
}

function drawRibbons(now: View, sheet: Sheet, condition: number) {
  const scale = ribbonScale(now, sheet);
  return (
    <g class="ribbons" aria-hidden="true">
      {bands(now, sheet, condition).map((band) => {
        const width = Math.max(LEAST, Math.abs(band.kw) * scale);
        const line = { x1: band.x1, y1: band.y1, x2: band.x2, y2: band.y2 };
        return (
          <g key={band.key} class={band.kw < 0 ? "back" : "out"}>
            <line class="halo" {...line} stroke-width={width + 2} />
            <line class="band" {...line} stroke-width={width} />
            {band.kw < 0 && <line class="stripe" {...line} stroke-width={width} />}
            <Chevrons band={band} width={width} />
            {band.headed && <Head band={band} width={width} />}
          </g>
        );
      })}
    </g>
  );
}

/** A piece of ribbon of a round power, as the scale. */
export function RibbonScale(props: { now: View; sheet: Sheet; x: number; y: number }) {
  const scale = ribbonScale(props.now, props.sheet);
  const wanted = 12 / scale;
  const decade = 10 ** Math.floor(Math.log10(wanted));
  const round = decade * (wanted / decade >= 5 ? 5 : wanted / decade >= 2 ? 2 : 1);
  const width = round * scale;
  return (
    <g class="ribbons" transform={`translate(${props.x},${props.y})`}>
      <line class="band" x1={0} y1={0} x2={36} y2={0} stroke-width={width} />
      <text class="small" x={44} y={4}>{`${round} ${props.now.units.power}`}</text>
    </g>
  );
}

