// What does every key do?  Nothing needs a mouse.
import { branchOf, carry, changeTeeth, inTurn, letGo, moveShaft, otherFace, redo, undo } from "../state/acts";
import { arrangeFor, asTable, boxShafts, carried, chosen, condition, padsOf, told, turning, view, viewName, VIEWS, working } from "../state/store";
import { speed } from "../show/format";

export const KEYS: [string, string][] = [
  ["[ ]", "the view before, the next"],
  ["arrows left, right", "in the row of shafts: the shaft before, the next"],
  ["arrows up, down", "in the row of shafts: one tooth more, one less"],
  ["F", "the accessory of the chosen shaft to the other face"],
  [", .", "the chosen shaft inwards, outwards along its branch"],
  ["B", "the best place for the accessory of the chosen shaft"],
  ["M", "hold the chosen shaft; on another, M puts it or its accessory there, also in another branch or box"],
  ["Escape", "let it go"],
  ["Ctrl+Z, Ctrl+Shift+Z", "undo, redo"],
  ["C, Shift+C", "the next condition, the one before"],
  ["W", "the working of the chosen shaft's speed"],
  ["T", "picture or table"],
  ["R", "turn, or stop"],
  ["?", "these keys"],
];

function inField(event: KeyboardEvent): boolean {
  const at = event.composedPath()[0];
  return at instanceof HTMLElement && (at.isContentEditable || ["INPUT", "SELECT", "TEXTAREA"].includes(at.tagName));
}

function nextShaft(by: number): void {
  const now = view.value;
  if (now === null) return;
  const all = boxShafts(now);
  if (viewName.value === "Front") all.reverse();
  const at = all.findIndex((one) => one.index === chosen.value);
  const next = all[at < 0 ? (by > 0 ? 0 : all.length - 1) : Math.max(0, Math.min(all.length - 1, at + by))];
  if (next === undefined) return;
  chosen.value = next.index;
  const pads = padsOf(now, next.index).map((pad) => `${pad.face} ${pad.name}`).join(", ");
  told.value = { says: `${next.shaft.number} ${next.shaft.name}: ${speed(next.shaft.speed[condition.value])} ${now.units.speed}${pads ? `; ${pads}` : ""}`, bad: false };
}

function nextView(by: number): void {
  const at = VIEWS.indexOf(viewName.value);
  viewName.value = VIEWS[(at + by + VIEWS.length) % VIEWS.length] ?? "Behind";
}

function nextCondition(by: number): void {
  const now = view.value;
  if (now === null) return;
  condition.value = (condition.value + by + now.conditions.length) % now.conditions.length;
  told.value = { says: `condition: ${now.conditions[condition.value]}`, bad: false };
}

function turnFace(): Promise<unknown> | void {
  const now = view.value;
  const pad = now === null ? undefined : padsOf(now, chosen.value).find((one) => one.accessory !== undefined);
  if (pad !== undefined) return otherFace(pad);
  told.value = { says: "Choose a shaft with an accessory first.", bad: true };
}

function seekPlace(): void {
  const now = view.value;
  const pad = now === null ? undefined : padsOf(now, chosen.value).find((one) => one.accessory !== undefined);
  if (pad === undefined) {
    told.value = { says: "Choose a shaft with an accessory first.", bad: true };
    return;
  }
  arrangeFor.value = pad.name;
  viewName.value = "Arrange";
}

function shift(by: number): Promise<unknown> | void {
  const place = branchOf(view.value?.shafts[chosen.value]?.address ?? "");
  if (place !== null && place.place + by >= 1) return moveShaft(chosen.value, place.place + by);
}

function onRail(event: KeyboardEvent): boolean {
  return event.target instanceof Element && event.target.closest(".rail") !== null;
}

function run(event: KeyboardEvent, help: () => void): boolean {
  switch (event.key) {
    case "[": nextView(-1); return true;
    case "]": nextView(1); return true;
    case "f": case "F": inTurn(turnFace); return true;
    case "b": case "B": seekPlace(); return true;
    case "m": case "M": inTurn(() => carry(viewName.value === "Front" ? "front" : "rear")); return true;
    case "Escape": if (carried.value !== null) letGo(); return false;
    case ",": inTurn(() => shift(-1)); return true;
    case ".": inTurn(() => shift(1)); return true;
    case "c": nextCondition(1); return true;
    case "C": nextCondition(-1); return true;
    case "t": case "T": asTable.value = !asTable.value; return true;
    case "r": case "R": turning.value = !turning.value; return true;
    case "?": help(); return true;
    case "w": case "W": {
      const shaft = view.value?.shafts[chosen.value];
      if (shaft !== undefined) working.value = `${shaft.address}:n@${view.value?.conditions[condition.value] ?? ""}`;
      return shaft !== undefined;
    }
    default: break;
  }
  if (!onRail(event)) return false;
  switch (event.key) {
    case "ArrowRight": nextShaft(1); return true;
    case "ArrowLeft": nextShaft(-1); return true;
    case "ArrowUp": if (chosen.value >= 0) changeTeeth(chosen.value, 1, false); return true;
    case "ArrowDown": if (chosen.value >= 0) changeTeeth(chosen.value, -1, false); return true;
    default: return false;
  }
}

export function listenToKeys(help: () => void): () => void {
  const down = (event: KeyboardEvent): void => {
    if (inField(event)) return;
    if ((event.ctrlKey || event.metaKey) && !event.altKey && event.key.toLowerCase() === "z") {
      event.preventDefault();
      inTurn(event.shiftKey ? redo : undo);
      return;
    }
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (run(event, help)) event.preventDefault();
  };
  document.addEventListener("keydown", down);
  return () => document.removeEventListener("keydown", down);
}

