// What does the whole drive look like in space, cut open, drawn apart, one part alone?
import { useEffect, useState } from "preact/hooks";
import { useSize } from "../picture/size";
import type { Space } from "../picture/space";
import { asTable, chosen, condition, ground, told, turning, view } from "../state/store";
import { amount } from "../show/amount";
import type { Part, Solids } from "../wire/solids";
import { useOfDrive } from "../wire/keep";

const SLOWED = 2000;

type Cut = "none" | "across" | "along" | "upright";

function Parts(props: { solids: Solids }) {
  return (
    <table class="plain">
      <caption>Every part, as it is weighed</caption>
      <thead><tr><th scope="col">Part</th><th scope="col">Kind</th><th scope="col">Teeth</th><th scope="col">Mass</th></tr></thead>
      <tbody>{props.solids.parts.map((one: Part, index) => (
        <tr key={index} class={one.shaft >= 0 && one.shaft === chosen.value ? "chosen" : ""}>
          <th scope="row"><button type="button" class="link" onClick={() => { chosen.value = one.shaft; }}>{one.name ?? one.at}</button></th>
          <td>{one.kind}</td><td>{one.teeth?.count ?? "\u00b7"}</td><td>{one.mass === null ? "\u00b7" : amount(one.mass, "kg", 4)}</td>
        </tr>
      ))}</tbody>
    </table>
  );
}

function useSpace(solids: Solids | null, wish: { cut: Cut; place: number; apart: number; alone: boolean; casing: boolean }) {
  const now = view.value;
  const { ref, size } = useSize();
  const [space, setSpace] = useState<Space | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  useEffect(() => {
    let live = true, made: Space | null = null;
    if (solids === null || now === null || asTable.value) return;
    void import("../picture/space").then(({ standInSpace }) => {
      if (!live || ref.current === null) return;
      try {
        made = standInSpace(ref.current, solids, now, (shaft) => { chosen.value = shaft; });
        setSpace(made);
        setFault(null);
      } catch {
        setFault("This browser draws nothing in space; the parts stand in the table.");
      }
    });
    return () => {
      live = false;
      made?.close();
      setSpace(null);
    };
  }, [solids, now, asTable.value]);
  useEffect(() => space?.size(size.width, size.height), [space, size]);
  useEffect(() => space?.colours(), [space, ground.value]);
  useEffect(() => space?.show({ ...wish, chosen: chosen.value }), [space, wish.cut, wish.place, wish.apart, wish.alone, wish.casing, chosen.value]);
  useEffect(() => {
    if (space === null || !turning.value) return;
    if (window.matchMedia("(prefers-reduced-motion: reduce)").matches) {
      turning.value = false;
      return;
    }
    const begun = performance.now();
    let frame = 0;
    const step = (time: number): void => {
      space.turn((time - begun) / 1000 / SLOWED, condition.value);
      frame = requestAnimationFrame(step);
    };
    frame = requestAnimationFrame(step);
    return () => cancelAnimationFrame(frame);
  }, [space, turning.value, condition.value]);
  return { ref, space, fault };
}

export function SpaceView() {
  const { got, says } = useOfDrive<Solids>("/api/solids");
  const [cut, setCut] = useState<Cut>("none");
  const [place, setPlace] = useState(0.5);
  const [apart, setApart] = useState(0);
  const [alone, setAlone] = useState(false);
  const [casing, setCasing] = useState(true);
  const { ref, space, fault } = useSpace(got, { cut, place, apart, alone, casing });
  const shaft = view.value?.shafts[chosen.value];
  const down = (event: KeyboardEvent): void => {
    const by: Record<string, [number, number, number]> = { ArrowLeft: [-0.12, 0, 1], ArrowRight: [0.12, 0, 1], ArrowUp: [0, 0.12, 1], ArrowDown: [0, -0.12, 1], "+": [0, 0, 1 / 1.15], "-": [0, 0, 1.15] };
    const way = by[event.key];
    if (way === undefined) return;
    event.preventDefault();
    event.stopPropagation();
    space?.look(...way);
    told.value = { says: "The view moved.", bad: false };
  };
  return (
    <>
      <div class="play space-tools" role="group" aria-label="how it stands">
        {(["behind", "front", "side", "slanting"] as const).map((name) => <button key={name} type="button" onClick={() => space?.stand(name)}>{name}</button>)}
        <label>Cut <select value={cut} onChange={(event) => setCut(event.currentTarget.value as Cut)}><option value="none">nowhere</option><option value="across">across the axis</option><option value="along">upright, along the axis</option><option value="upright">level</option></select></label>
        <label>at <input type="range" min={0} max={100} value={Math.round(place * 100)} disabled={cut === "none"} aria-label="where it is cut" onInput={(event) => setPlace(Number(event.currentTarget.value) / 100)} /></label>
        <label>Drawn apart <input type="range" min={0} max={100} value={Math.round(apart * 100)} aria-label="drawn apart" onInput={(event) => setApart(Number(event.currentTarget.value) / 100)} /></label>
        <label><input type="checkbox" checked={casing} onChange={() => setCasing(!casing)} /> casing</label>
        <button type="button" aria-pressed={alone} disabled={shaft === undefined && !alone} onClick={() => setAlone(!alone)}>{shaft === undefined ? "Chosen shaft alone" : `${shaft.name} alone`}</button>
      </div>
      {says !== null && <p class="bad">{says}</p>}
      {fault !== null && <p class="bad" role="status">{fault}</p>}
      {(got?.missing.length ?? 0) > 0 && <p>Not drawn: {got?.missing.map((one) => `${one.kind} ${one.name ?? ""} lacks ${one.missing}`).join("; ")}.</p>}
      {asTable.value || fault !== null ? got !== null && <div class="wide scroll" tabIndex={0} role="region" aria-label="parts"><Parts solids={got} /></div>
        : <div class="picture in-space" tabIndex={0} role="application" aria-roledescription="picture in space" aria-label={`The whole drive in space${shaft === undefined ? "" : `, ${shaft.name} chosen`}. Arrow keys turn it, plus and minus bring it nearer; T shows its parts as a table.`} onKeyDown={down}><div ref={ref} class="fill" /></div>}
    </>
  );
}
