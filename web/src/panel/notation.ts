// What may stand at a place of the text?  The place by indent and brackets, what fits by the schema.

export type Step = string | number;
/** Where a place is: the keys down to it, and whether a key or the value of the last key is due there. */
export interface Spot { path: Step[]; due: "key" | "value"; from: number; to: number; word: string; flow: boolean }
export interface Offer { label: string; detail: string; says: string; kind: "key" | "value"; holds: boolean }

type Json = Record<string, unknown>;

const EXAMPLE = /\s+Example: (.*?)(?=\s{2,}Default:|$)/;
const UNIT = /\*\s*\(([^()]*)\)/;

interface Frame { kind: "map" | "list" | "flow map" | "flow list"; indent: number; key: string | null; at: number }

function unquoted(text: string): string {
  const found = /^(["'])(.*)\1$/.exec(text.trim());
  return found?.[2] ?? text.trim();
}

/** The brackets that a line leaves open, and the keys in them; a quoted mark is no mark. */
function readFlow(frames: Frame[], text: string): { from: number; due: "key" | "value" } | null {
  const open = frames[frames.length - 1];
  let quote = "", from = 0, due: "key" | "value" = open?.kind === "flow map" && open.key === null ? "key" : "value";
  for (let i = 0; i < text.length; i++) {
    const one = text[i] ?? "";
    const top = frames[frames.length - 1];
    if (quote !== "") {
      if (one === quote) quote = "";
    } else if ((one === "\"" || one === "'") && text.slice(from, i).trim() === "") {
      quote = one;
    } else if (one === "#" && (i === 0 || /\s/.test(text[i - 1] ?? ""))) {
      return null;
    } else if (one === "{" || one === "[") {
      frames.push({ kind: one === "{" ? "flow map" : "flow list", indent: -1, key: null, at: 0 });
      [from, due] = [i + 1, one === "{" ? "key" : "value"];
    } else if ((one === "}" || one === "]") && top?.kind.startsWith("flow")) {
      frames.pop();
      [from, due] = [i + 1, "value"];
    } else if (one === "," && top?.kind.startsWith("flow")) {
      if (top.kind === "flow list") top.at++;
      else top.key = null;
      [from, due] = [i + 1, top.kind === "flow map" ? "key" : "value"];
    } else if (one === ":" && top?.kind === "flow map" && due === "key" && /\s|$/.test(text[i + 1] ?? " ")) {
      top.key = unquoted(text.slice(from, i));
      [from, due] = [i + 1, "value"];
    }
  }
  return { from, due };
}

const inFlow = (frames: Frame[]): boolean => frames[frames.length - 1]?.kind.startsWith("flow") ?? false;

function closeTo(frames: Frame[], indent: number, item: boolean): void {
  for (let top = frames[frames.length - 1]; top !== undefined && top.indent >= indent; top = frames[frames.length - 1]) {
    if (top.indent === indent && (item ? top.kind === "list" : top.kind === "map")) return;
    if (item && top.indent === indent && top.kind === "map") return;
    frames.pop();
  }
}

/** Takes the dashes and the key of a line of block text; tells where its rest begins. */
function readBlock(frames: Frame[], text: string): { rest: number; keyed: boolean } {
  let at = text.length - text.trimStart().length;
  while (/^-(\s|$)/.test(text.slice(at))) {
    closeTo(frames, at, true);
    const top = frames[frames.length - 1];
    if (top?.kind === "list" && top.indent === at) top.at++;
    else frames.push({ kind: "list", indent: at, key: null, at: 0 });
    at += 1 + (/^\s*/.exec(text.slice(at + 1))?.[0].length ?? 0);
  }
  closeTo(frames, at, false);
  const key = /^("[^"]*"|'[^']*'|[^\s#{[\]},"':-][^#{[\]}"']*?)\s*:(?=\s|$)/.exec(text.slice(at));
  if (key === null) return { rest: at, keyed: false };
  const top = frames[frames.length - 1];
  if (top?.kind === "map" && top.indent === at) top.key = unquoted(key[1] ?? "");
  else frames.push({ kind: "map", indent: at, key: unquoted(key[1] ?? ""), at: 0 });
  return { rest: at + key[0].length, keyed: true };
}

function pathOf(frames: Frame[]): Step[] {
  const out: Step[] = [];
  for (const one of frames) {
    if (one.kind.endsWith("list")) out.push(one.at);
    else if (one.key !== null) out.push(one.key);
  }
  return out;
}

/** Null in a remark. */
export function spotAt(text: string, place: number): Spot | null {
  const frames: Frame[] = [];
  const before = text.slice(0, place);
  const rows = before.split("\n");
  const last = rows.pop() ?? "";
  for (const row of rows) {
    if (row.trim() === "" || row.trimStart().startsWith("#")) continue;
    if (inFlow(frames)) {
      readFlow(frames, row);
      continue;
    }
    const { rest } = readBlock(frames, row);
    readFlow(frames, row.slice(rest));
  }
  let start = 0, due: "key" | "value" = "value";
  if (!inFlow(frames)) {
    const { rest, keyed } = readBlock(frames, last === "" ? "" : last);
    start = rest;
    if (!keyed) {
      const top = frames[frames.length - 1];
      if (top?.kind === "map" && top.indent === rest) top.key = null;
      due = "key";
    }
  }
  const flow = readFlow(frames, last.slice(start));
  if (flow === null) return null;
  if (inFlow(frames)) {
    due = flow.due;
    start += flow.from;
  }
  const raw = last.slice(start);
  const word = raw.trimStart();
  const from = place - word.length;
  const after = /^[^\n,}\]#:]*/.exec(text.slice(place))?.[0].trimEnd() ?? "";
  return { path: pathOf(frames), due, from, to: place + after.length, word, flow: inFlow(frames) };
}

// ---- the schema -------------------------------------------------------------------------------

function isJson(value: unknown): value is Json {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

/** Every way in which a schema may be met; what it says itself stands in front. */
function ways(root: Json, one: unknown, depth = 0): Json[] {
  if (!isJson(one) || depth > 12) return [];
  const out: Json[] = [one];
  const ref = one["$ref"];
  if (typeof ref === "string") {
    let at: unknown = root;
    for (const word of ref.replace(/^#\//, "").split("/")) at = isJson(at) ? at[word] : undefined;
    out.push(...ways(root, at, depth + 1));
  }
  for (const name of ["anyOf", "oneOf", "allOf"])
    if (Array.isArray(one[name])) for (const each of one[name]) out.push(...ways(root, each, depth + 1));
  return out;
}

export function schemaAt(root: Json, path: Step[]): Json[] {
  let here = ways(root, root);
  for (const step of path) {
    const next: Json[] = [];
    for (const one of here) {
      if (typeof step === "number") {
        const row = Array.isArray(one["prefixItems"]) ? one["prefixItems"][step] : undefined;
        next.push(...ways(root, row ?? one["items"]));
        continue;
      }
      const known = isJson(one["properties"]) ? one["properties"] : {};
      if (step in known) next.push(...ways(root, known[step]));
      else if (isJson(one["additionalProperties"])) next.push(...ways(root, one["additionalProperties"]));
    }
    here = next;
  }
  return here;
}

function describe(all: Json[]): string {
  for (const one of all) if (typeof one["description"] === "string") return one["description"];
  return "";
}

/** A sentence, an example and what stands when nothing is told. */
export function explain(root: Json, path: Step[]): { says: string; example: string; preset: string; fits: string } | null {
  const all = schemaAt(root, path);
  if (all.length === 0) return null;
  const whole = describe(all);
  const example = EXAMPLE.exec(whole)?.[1] ?? "";
  const preset = /Default: (.*)$/.exec(whole)?.[1] ?? "";
  const says = whole.replace(EXAMPLE, "").replace(/\s*Default: .*$/, "").trim();
  const words = all.flatMap((one) => (Array.isArray(one["enum"]) ? one["enum"].map(String) : []));
  const unit = all.map((one) => UNIT.exec(String(one["pattern"] ?? ""))?.[1]).find((one) => one !== undefined);
  const fits = words.length > 0 ? [...new Set(words)].join(", ")
    : unit !== undefined ? `a number with ${unit.split("|").map((one) => one.replace(/\\(.)/g, "$1")).join(", ")}`
    : all.some((one) => one["type"] === "array") ? "a list in [ ]"
    : all.some((one) => isJson(one["properties"]) || isJson(one["additionalProperties"])) && !all.some((one) => one["pattern"] !== undefined) ? "keys of its own" : "";
  return { says, example, preset, fits };
}

function section(text: string, name: string): string[] {
  const out: string[] = [];
  let inside = false, indent = -1;
  for (const row of text.split("\n")) {
    if (/^\S/.test(row)) {
      inside = row.startsWith(`${name}:`);
      indent = -1;
      continue;
    }
    const key = inside ? /^( +)("[^"]*"|'[^']*'|[^\s#:-][^:#]*?)\s*:(?=\s|$)/.exec(row) : null;
    if (key === null) continue;
    if (indent < 0) indent = key[1]?.length ?? 0;
    if (key[1]?.length === indent) out.push(unquoted(key[2] ?? ""));
  }
  return out;
}

/** Keys that the object at `path` has already, as far as indent and brackets tell. */
function keysThere(text: string, spot: Spot): Set<string> {
  const out = new Set<string>();
  if (spot.path.length === 0) return new Set([...text.matchAll(/^([^\s#:-][^:\n]*?)\s*:(?=\s|$)/gm)].map((one) => unquoted(one[1] ?? "")));
  const seek = JSON.stringify(spot.path);
  const finder = /(?:^|[{,\n])[ -]*("[^"\n]*"|'[^'\n]*'|[^\s#{[\]},"':-][^#{[\]},"':\n]*?)\s*:(?=\s|$)/gm;
  const low = Math.max(0, spot.from - 6000), part = text.slice(low, spot.from + 6000);
  for (const found of part.matchAll(finder)) {
    const at = low + found.index + found[0].indexOf(found[1] ?? "");
    const its = at === spot.from ? null : spotAt(text, at + 1);
    if (its !== null && its.due === "key" && JSON.stringify(its.path) === seek) out.add(unquoted(found[1] ?? ""));
  }
  return out;
}

function keyOffers(root: Json, text: string, spot: Spot): Offer[] {
  const all = schemaAt(root, spot.path);
  const taken = keysThere(text, spot);
  const out = new Map<string, Offer>();
  const standing = new Set(["value", "source", "date", "confidence"]);
  for (const one of all) {
    const known = isJson(one["properties"]) ? one["properties"] : {};
    const must = Array.isArray(one["required"]) ? one["required"] : [];
    const names = Object.keys(known);
    const wrapped = names.length === 4 && names.every((name) => standing.has(name));
    for (const name of names) {
      if (taken.has(name) || out.has(name)) continue;
      const about = explain(root, [...spot.path, name]);
      const inner = ways(root, known[name]);
      const holds = !inner.some((way) => way["pattern"] !== undefined || way["enum"] !== undefined || way["type"] === "string" || Array.isArray(way["type"]));
      out.set(name, { label: name, kind: "key", holds: holds && !inner.some((way) => way["type"] === "array"), detail: wrapped ? "of one value" : must.includes(name) ? "needed" : "", says: [about?.says, about?.example && `Example: ${about.example}`, about?.preset && `When it is not told: ${about.preset}`].filter(Boolean).join("\n") });
    }
    if (isJson(one["additionalProperties"]) && /condition/i.test(describe(all)))
      for (const name of [...section(text, "conditions"), ...(describe(all).includes("`always`") ? ["always"] : [])])
        if (!taken.has(name)) out.set(name, { label: name, kind: "key", holds: false, detail: name === "always" ? "every other condition" : "condition", says: describe(all) });
    if (isJson(one["additionalProperties"]) && spot.path.length === 1 && spot.path[0] === "drive")
      for (const name of section(text, "spools")) if (!taken.has(name)) out.set(name, { label: name, kind: "key", holds: true, detail: "spool", says: describe(all) });
  }
  return [...out.values()];
}

function valueOffers(root: Json, text: string, spot: Spot): Offer[] {
  const all = schemaAt(root, spot.path);
  const about = explain(root, spot.path);
  const says = [about?.says, about?.preset && `When it is not told: ${about.preset}`].filter(Boolean).join("\n");
  const out = new Map<string, Offer>();
  const add = (label: string, detail: string): void => { if (!out.has(label)) out.set(label, { label, detail, says, kind: "value", holds: false }); };
  for (const one of all) {
    if (Array.isArray(one["enum"])) for (const each of one["enum"]) add(String(each), "");
    if (one["const"] !== undefined) add(String(one["const"]), "");
    if (/unknown\)\$$/.test(String(one["pattern"] ?? ""))) add("unknown", "nobody has told it");
  }
  const last = spot.path[spot.path.length - 1];
  if (last === "front" || last === "rear" || /\bthe (?:name of an )?accessory\b/.test(about?.says ?? "")) for (const name of section(text, "accessories")) add(name, "accessory");
  if (about !== null && about.example !== "" && !/[{[]/.test(about.example)) add(about.example, "example");
  return [...out.values()];
}

export function offersAt(root: Json, text: string, place: number): { spot: Spot; offers: Offer[] } | null {
  const spot = spotAt(text, place);
  if (spot === null) return null;
  return { spot, offers: spot.due === "key" ? keyOffers(root, text, spot) : valueOffers(root, text, spot) };
}

/** The key or value under a place, down from the root; null where nothing stands. */
export function pathUnder(text: string, place: number): Step[] | null {
  const row = text.slice(text.lastIndexOf("\n", place - 1) + 1, (text.indexOf("\n", place) + text.length + 1) % (text.length + 1));
  if (row.trim() === "" || row.trimStart().startsWith("#")) return null;
  let end = place;
  while (end < text.length && !/[:,}\]\n#]/.test(text[end] ?? "\n")) end++;
  const keyed = text[end] === ":" && /\s|$/.test(text[end + 1] ?? " ");
  const spot = spotAt(text, keyed ? end + 1 : place);
  if (spot === null) return null;
  if (keyed && spot.due === "value") return spot.path;
  return spot.due === "value" ? spot.path : null;
}
