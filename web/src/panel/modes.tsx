// How does the drive swing by itself?  Every natural mode of torsion, played on the face.
import { useMemo, useState } from "preact/hooks";
import { courseOfMode } from "../state/course";
import { view } from "../state/store";
import { number } from "../show/format";
import type { Mode, Tree, Twist } from "../wire/course";
import { useOfDrive } from "../wire/keep";
import { Player } from "./player";

function swingsMost(tree: Tree, mode: Mode): string {
  let most = 0;
  mode.shape.forEach((one, body) => { if (Math.abs(one ?? 0) > Math.abs(mode.shape[most] ?? 0)) most = body; });
  return tree.bodies[most]?.name ?? "";
}

export function Modes() {
  const now = view.value;
  const [which, setWhich] = useState(0);
  const [wish, setWish] = useState(1);
  const { got, says } = useOfDrive<Twist>("/api/twist");
  const trees = (got?.trees ?? []).filter((one) => one.modes !== undefined && one.modes.some((mode) => mode.frequency > 0));
  const tree = trees[Math.min(which, trees.length - 1)];
  const at = tree === undefined ? 0 : Math.max(1, Math.min(wish, tree.modes.length - 1)), mode = tree?.modes[at];
  const course = useMemo(() => (now === null || tree === undefined || mode === undefined ? null : courseOfMode(now, tree, mode)), [now, tree, mode]);
  if (now === null) return null;
  return (
    <div class="wide scroll" tabIndex={0} role="region" aria-label="modes">
      <h2>How does it swing by itself?</h2>
      {tree !== undefined && mode !== undefined && <p class="failing">
        <label>Tree <select value={String(trees.indexOf(tree))} onChange={(event) => setWhich(Number(event.currentTarget.value))}>{trees.map((one, index) => <option key={index} value={String(index)}>{one.spool}, {one.state}</option>)}</select></label>
        <label>Mode <select value={String(at)} onChange={(event) => setWish(Number(event.currentTarget.value))}>{tree.modes.map((one, index) => one.frequency > 0 && <option key={index} value={String(index)}>{index}: {number(one.frequency, 4)} Hz, {swingsMost(tree, one)} swings most</option>)}</select></label>
      </p>}
      {says !== null && <p class="bad">{says}</p>}
      {got !== null && tree === undefined && <p>No tree of this drive could be computed; the findings say what it lacks.</p>}
      {course !== null && mode !== undefined && <><p role="status"><b>{number(mode.frequency, 4)} Hz.</b> The largest swing is drawn as 20 degrees about where everything stands; in truth the steady turning goes on below it, and what shakes it says how far it goes. Tints are the torque of each mesh, of the largest anywhere.</p><Player now={now} course={course} drawn={false} turned={1} speeds="swing, % of the largest" loads="torque, % of the largest" /></>}
    </div>
  );
}
