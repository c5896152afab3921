// How do several pages stay alike, and how is a place in the page linked to?
import { effect } from "@preact/signals";
import { loadState, loadView } from "./acts";
import { busy, chosen, condition, course, ground, GROUNDS, state, told, units, view, viewName, VIEWS, working, type Ground } from "./store";
import { listenToPrinting } from "../show/paper";
import type { Progress } from "../wire/view";

const SEARCHES = ["none", "runs", "ended"];
const OWN_MS = 15;

/** What this page did itself it learns from the answer; of everything else it hears here. */
function hear(now: { serial: number; search: number }): void {
  if (busy.value > 0) {
    window.setTimeout(() => hear(now), OWN_MS);
    return;
  }
  const had = state.value;
  if (had !== null && had.serial >= now.serial && SEARCHES.indexOf(had.search.state) === now.search) return;
  const other = had !== null && now.serial !== had.serial;
  void loadState().then(() => {
    if (other && state.value?.outside === state.value?.serial)
      told.value = { says: "Another program changed the file. It is shown as it is now; undo takes that change back.", bad: true };
  });
}

export function listen(): void {
  const stream = new EventSource("/api/events");
  let lost = false;
  stream.onmessage = (event) => {
    const now = JSON.parse(event.data as string) as { serial: number; search: number; progress: Progress | null };
    if (now.search === 1 && now.progress !== null) {
      const before = course.value, last = before[before.length - 1];
      course.value = last !== undefined && now.progress.ms < last.ms ? [now.progress] : [...before.slice(-600), now.progress];
      if (state.value?.serial === now.serial && state.value.search.state === "runs") return;
    }
    hear(now);
  };
  stream.onerror = () => {
    if (!lost) told.value = { says: "The server does not answer; what is shown may be old.", bad: true };
    lost = true;
  };
  stream.onopen = () => {
    if (lost) void loadState();
    lost = false;
  };
}

/** #view=Front&at=drive/hp/box/clockwise/2&in=take-off&why=... */
function readLink(): void {
  const words = new URLSearchParams(window.location.hash.slice(1));
  const name = VIEWS.find((one) => one === words.get("view"));
  if (name !== undefined) viewName.value = name;
  const now = view.value;
  if (now === null) return;
  const at = words.get("at");
  if (at !== null) chosen.value = now.shafts.findIndex((one) => one.address === at);
  const where = now.conditions.indexOf(words.get("in") ?? "");
  if (where >= 0) condition.value = where;
  if (words.get("why") !== null) working.value = words.get("why");
}

let written = "";

function writeLink(): void {
  const now = view.value;
  if (now === null) return;
  const words = new URLSearchParams({ view: viewName.value, in: now.conditions[condition.value] ?? "" });
  const shaft = now.shafts[chosen.value];
  if (shaft !== undefined) words.set("at", shaft.address);
  if (working.value !== null) words.set("why", working.value);
  const link = `#${words.toString()}`;
  if (link !== written) window.history.replaceState(null, "", link);
  written = link;
}

function remember(name: string, value: string): void {
  try {
    window.localStorage.setItem(name, value);
  } catch {
    // A browser may keep nothing; then it is asked anew.
  }
}

function recall(name: string): string | null {
  try {
    return window.localStorage.getItem(name);
  } catch {
    return null;
  }
}

export async function begin(): Promise<void> {
  const kept = GROUNDS.find((one) => one === recall("ground"));
  const dark = window.matchMedia("(prefers-color-scheme: dark)").matches;
  const more = window.matchMedia("(prefers-contrast: more)").matches;
  ground.value = kept ?? ((more ? "contrast" : dark ? "dark" : "light") as Ground);
  units.value = recall("units") === "us" ? "us" : "metric";
  effect(() => {
    document.documentElement.dataset["ground"] = ground.value;
    remember("ground", ground.value);
  });
  listenToPrinting(() => ground.value);
  await loadState();
  readLink();
  window.addEventListener("hashchange", readLink);
  let first = true;
  effect(() => {
    const now = units.value;
    remember("units", now);
    if (!first) void loadView();
    first = false;
  });
  effect(writeLink);
  listen();
}
