// What can be done with the chosen shaft, by hand or by key?
import { branchLength, branchOf, carry, changeTeeth, inTurn, moveShaft, otherFace } from "../state/acts";
import { arrangeFor, carried, chosen, line, leaf, mainGear, padsOf, view, viewName, working, conditionName } from "../state/store";

export function Handle() {
  const now = view.value;
  const shaft = now?.shafts[chosen.value];
  if (now === null || shaft === undefined || shaft.kind !== "box")
    return <div class="handle-place"><div class="handle"><span class="key">No shaft chosen: click one in the picture or in the row below, and what can be done with it stands here.</span></div></div>;
  const gear = mainGear(now, chosen.value);
  const branch = branchOf(shaft.address);
  const length = branch === null ? 0 : branchLength(now, branch.branch);
  const index = chosen.value;
  return (
    <div class="handle-place"><div class="handle" role="group" aria-label={`shaft ${shaft.number}, ${shaft.name}`}>
      <b class="name" title={shaft.name}>{shaft.number} {shaft.name}</b>
      {gear !== undefined && (
        <span class="pair" role="group" aria-label="teeth">
          <button type="button" aria-label="one tooth less" onClick={() => changeTeeth(index, -1, false)}>{"\u2212"}</button>
          <span>{gear.teeth} teeth</span>
          <button type="button" aria-label="one tooth more" onClick={() => changeTeeth(index, 1, false)}>+</button>
        </span>
      )}
      {padsOf(now, index).filter((pad) => pad.accessory !== undefined).map((pad) => (
        <span class="pair joined" role="group" aria-label={pad.name} key={pad.address}>
          <button type="button" title="key F" onClick={() => inTurn(() => otherFace(pad))}>{pad.name} to the {pad.face === "front" ? "rear" : "front"}</button>
          <button type="button" onClick={() => { arrangeFor.value = pad.name; viewName.value = "Arrange"; }} title={`tries ${pad.name} on every pad of the train`}>Best place for it</button>
        </span>
      ))}
      {branch !== null && <span class="pair joined" role="group" aria-label="place in its branch">
        <button type="button" disabled={branch.place <= 1} onClick={() => inTurn(() => moveShaft(index, branch.place - 1))} title="one place nearer to the input of the box; key ,">Inwards</button>
        <button type="button" disabled={branch.place >= length} onClick={() => inTurn(() => moveShaft(index, branch.place + 1))} title="one place further from the input of the box; key .">Outwards</button>
      </span>}
      <button type="button" title="key M" aria-pressed={carried.value !== null} onClick={() => inTurn(() => carry(viewName.value === "Front" ? "front" : "rear"))}>
        {carried.value === null ? "Move it" : carried.value === shaft.address ? "Let it go" : "Put it here"}
      </button>
      <button type="button" onClick={() => { working.value = `${shaft.address}:n@${conditionName.value}`; leaf.value = "findings"; }}>Why this speed</button>
      <button type="button" title="shows it in the file" onClick={() => { line.value = shaft.line; leaf.value = "file"; }}>Line {shaft.line}</button>
    </div></div>
  );
}
