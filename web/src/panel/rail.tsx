// Which shafts are there, how fast, with what power, which way?  The table of the face view.
import { boxShafts, chosen, condition, padsOf, view, viewName } from "../state/store";
import { power, speed } from "../show/format";

function seenTurn(sense: number, front: boolean): string {
  const seen = front ? -sense : sense;
  return seen > 0 ? "ccw" : seen < 0 ? "cw" : "not known";
}

export function Rail() {
  const now = view.value;
  if (now === null) return null;
  const front = viewName.value === "Front";
  const c = condition.value;
  const shafts = boxShafts(now);
  if (front) shafts.reverse();
  return (
    <div class={shafts.length > 10 ? "rail many" : "rail"} id="shafts" role="listbox" aria-label="shafts" aria-orientation="horizontal" tabIndex={0}
      aria-activedescendant={chosen.value >= 0 ? `shaft-${chosen.value}` : undefined}>
      {shafts.map(({ shaft, index }) => {
        const taken = padsOf(now, index).reduce((sum, pad) => sum + (pad.power[c] ?? 0), 0);
        return (
          <div key={shaft.address} id={`shaft-${index}`} role="option" aria-selected={index === chosen.value}
            class={index === chosen.value ? "cell chosen" : "cell"} onClick={() => { chosen.value = index; }}>
            <b><span class="round">{shaft.number}</span> {shaft.name}</b>
            <span>{speed(shaft.speed[c])} <small>{now.units.speed}</small></span>
            <span>{power(taken)} <small>{now.units.power}</small> <small class="turn">{seenTurn(shaft.sense, front)}</small></span>
          </div>
        );
      })}
    </div>
  );
}

/** The same numbers as a table, in the place of the picture. */
export function FaceTable() {
  const now = view.value;
  if (now === null) return null;
  const c = condition.value;
  const front = viewName.value === "Front";
  return (
    <div class="scroll" tabIndex={0} role="region" aria-label="shafts and pads as a table">
      <table class="plain">
        <caption>Shafts and pads at {now.conditions[c]}, senses as seen {front ? "from the front" : "from behind"}; of pads, facing the pad</caption>
        <thead><tr><th scope="col">No.</th><th scope="col">Shaft</th><th scope="col">{now.units.speed}</th><th scope="col">Sense</th><th scope="col">Pads</th></tr></thead>
        <tbody>
          {boxShafts(now).map(({ shaft, index }) => (
            <tr key={shaft.address}>
              <td>{shaft.number}</td><th scope="row">{shaft.name}</th><td>{speed(shaft.speed[c])}</td><td>{seenTurn(shaft.sense, front)}</td>
              <td>{padsOf(now, index).map((pad) => `${pad.face}: ${pad.name}${pad.turns ? `, ${pad.turns}` : ""}${pad.wanted ? ` (wants ${pad.wanted})` : ""}, ${power(pad.power[c])} ${now.units.power}`).join("; ") || "none"}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

