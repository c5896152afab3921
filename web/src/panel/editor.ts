// How is the text of the file edited?  Loaded only when the file is opened.
import { autocompletion, completionKeymap, snippetCompletion, startCompletion, type Completion, type CompletionContext, type CompletionResult } from "@codemirror/autocomplete";
import { defaultKeymap, history, historyKeymap } from "@codemirror/commands";
import { yaml } from "@codemirror/lang-yaml";
import { lintGutter, setDiagnostics, type Diagnostic } from "@codemirror/lint";
import { EditorState, StateEffect, StateField } from "@codemirror/state";
import { drawSelection, EditorView, highlightActiveLine, hoverTooltip, keymap, lineNumbers, showTooltip, type Tooltip } from "@codemirror/view";
import { get } from "../wire/ask";
import type { Remark } from "./remark";
import { explain, offersAt, pathUnder, type Offer } from "./notation";

export interface Editor {
  text(): string;
  put(text: string): void;
  goTo(line: number): void;
  show(remarks: Remark[]): void;
  close(): void;
}

const look = EditorView.theme({
  "&": { height: "100%", color: "var(--ink)", backgroundColor: "var(--paper)", fontSize: "12px" },
  ".cm-scroller": { fontFamily: "'B612 Mono', 'DejaVu Sans Mono', monospace", lineHeight: "1.42" },
  ".cm-gutters": { backgroundColor: "var(--bench)", color: "var(--ink3)", border: "none" },
  ".cm-activeLine": { backgroundColor: "var(--select-bg)" },
  ".cm-activeLineGutter": { backgroundColor: "var(--select-bg)" },
  ".cm-content": { caretColor: "var(--ink)" },
  ".cm-cursor": { borderLeftColor: "var(--ink)", borderLeftWidth: "2px" },
  ".cm-selectionBackground, &.cm-focused .cm-selectionBackground": { backgroundColor: "var(--select-bg)" },
  "&.cm-focused": { outline: "3px solid var(--focus)", outlineOffset: "-3px" },
  // Marks of text in the place of the pictures that the editor would bring along.
  ".cm-lintRange-error, .cm-lintRange-warning, .cm-lintRange-info": { backgroundImage: "none", paddingBottom: "0" },
  ".cm-lintRange-error": { textDecoration: "underline wavy var(--st-refuse)" },
  ".cm-lintRange-warning": { textDecoration: "underline wavy var(--st-warn)" },
  ".cm-lintRange-info": { textDecoration: "underline dotted var(--st-note)" },
  ".cm-lint-marker": { width: "auto", height: "auto", fontSize: "10.5px", fontWeight: "700", color: "var(--ink)" },
  ".cm-lint-marker-error": { content: "\"[X]\"" },
  ".cm-lint-marker-warning": { content: "\"[!]\"" },
  ".cm-lint-marker-info": { content: "\"[i]\"" },
  ".cm-tooltip-autocomplete > ul": { fontFamily: "inherit", maxHeight: "14em" },
  ".cm-tooltip-autocomplete > ul > li": { padding: "2px 8px", lineHeight: "1.5" },
  ".cm-tooltip-autocomplete > ul > li[aria-selected]": { backgroundColor: "var(--select-bg)", color: "var(--ink)", boxShadow: "inset 4px 0 0 var(--ink)" },
  ".cm-completionDetail": { color: "var(--ink2)", fontStyle: "normal", paddingLeft: "8px" },
  ".cm-completionInfo": { padding: "6px 10px", maxWidth: "340px", whiteSpace: "pre-wrap" },
  ".cm-says": { padding: "6px 10px", maxWidth: "380px" },
  ".cm-says p": { margin: "0 0 4px" },
  ".cm-says code": { fontFamily: "'B612 Mono', 'DejaVu Sans Mono', monospace" },
  ".cm-tooltip": { backgroundColor: "var(--paper)", color: "var(--ink)", border: "1px solid var(--rule)" },
});

function diagnostics(doc: EditorState["doc"], remarks: Remark[]): Diagnostic[] {
  return remarks.filter((one) => one.line >= 1 && one.line <= doc.lines).map((one): Diagnostic => {
    const row = doc.line(one.line);
    const from = Math.min(row.to, row.from + Math.max(0, one.column - 1));
    return { from, to: row.to, severity: one.level === "refuse" ? "error" : one.level === "warn" ? "warning" : "info", message: one.says };
  });
}

// ---- what the notation says of a place ----------------------------------------------------------

let notation: Record<string, unknown> | null = null;

async function learn(): Promise<void> {
  if (notation !== null) return;
  const got = await get<Record<string, unknown>>("/api/notation");
  if (got.status === 200) notation = got.body;
}

function plain(label: string): string {
  return /^[\w.][\w ./+-]*$/.test(label) ? label : JSON.stringify(label);
}

function completion(one: Offer, flow: boolean): Completion {
  const base: Completion = { label: one.label, detail: one.detail, type: one.kind === "key" ? "property" : "constant", info: one.says || one.label, boost: one.detail === "needed" ? 2 : one.detail === "of one value" ? -2 : 0 };
  if (one.kind === "value") return { ...base, apply: one.detail === "example" ? one.label : plain(one.label) };
  if (!one.holds) return { ...base, apply: `${plain(one.label)}: ` };
  return snippetCompletion(plain(one.label) + (flow ? ": {$" + "{}}" : ":\n\t$" + "{}"), base);
}

function complete(context: CompletionContext): CompletionResult | null {
  if (notation === null) return null;
  const got = offersAt(notation, context.state.doc.toString(), context.pos);
  if (got === null || got.offers.length === 0 || (!context.explicit && got.spot.word === "")) return null;
  return { from: got.spot.from, options: got.offers.map((one) => completion(one, got.spot.flow)), validFor: /^[\w ./+-]*$/ };
}

function line(name: string, text: string, code: boolean): HTMLElement {
  const row = document.createElement("p");
  row.append(name);
  const inner = document.createElement(code ? "code" : "span");
  inner.textContent = text;
  row.append(inner);
  return row;
}

/** What stands at a place, for the pointer and for the key. */
function helpAt(state: EditorState, place: number): Tooltip | null {
  const path = notation === null ? null : pathUnder(state.doc.toString(), place);
  const about = path === null || notation === null ? null : explain(notation, path);
  if (path === null || about === null || about.says === "") return null;
  return {
    pos: place, above: true,
    create: () => {
      const dom = document.createElement("div");
      dom.className = "cm-says";
      dom.setAttribute("role", "note");
      const head = document.createElement("p");
      const strong = document.createElement("b");
      strong.textContent = path.map((one) => (typeof one === "number" ? String(one) : one)).join("/");
      head.append(strong);
      dom.append(head, line("", about.says, false));
      if (about.fits !== "") dom.append(line("Fits: ", about.fits, false));
      if (about.example !== "") dom.append(line("Example: ", about.example, true));
      if (about.preset !== "") dom.append(line("When it is not told: ", about.preset, false));
      return { dom };
    },
  };
}

const setHelp = StateEffect.define<Tooltip | null>();
const help = StateField.define<Tooltip | null>({
  create: () => null,
  update: (now, step) => {
    for (const one of step.effects) if (one.is(setHelp)) return one.value;
    return step.docChanged || step.selection !== undefined ? null : now;
  },
  provide: (field) => showTooltip.from(field),
});

/** In a shadow tree, so that its styles come as style sheets and the page's policy can forbid all others. */
export function openEditor(place: HTMLElement, text: string, on: { changed: (text: string) => void; save: () => void; says: (text: string) => void }): Editor {
  const root = place.attachShadow({ mode: "open" });
  let quiet = false;
  const state = EditorState.create({
    doc: text,
    extensions: [
      lineNumbers(), lintGutter(), history(), drawSelection(), highlightActiveLine(), yaml(), look, help,
      autocompletion({ override: [complete], icons: false, activateOnTyping: true, tooltipClass: () => "offers" }),
      hoverTooltip((view, place) => helpAt(view.state, place), { hoverTime: 350 }),
      keymap.of([{ key: "Mod-s", preventDefault: true, run: () => { on.save(); return true; } },
        { key: "F1", preventDefault: true, run: (view) => {
          const found = helpAt(view.state, view.state.selection.main.head);
          view.dispatch({ effects: setHelp.of(found) });
          on.says(found === null ? "The notation has no word for this place." : found.create(view).dom.textContent ?? "");
          return true;
        } },
        { key: "Escape", run: (view) => {
          if (view.state.field(help) === null) return false;
          view.dispatch({ effects: setHelp.of(null) });
          return true;
        } },
        { key: "Alt-Enter", preventDefault: true, run: startCompletion },
        ...completionKeymap, ...historyKeymap, ...defaultKeymap]),
      EditorView.contentAttributes.of({ "aria-label": "text of the drive file", tabindex: "0" }),
      EditorView.updateListener.of((update) => { if (update.docChanged && !quiet) on.changed(update.state.doc.toString()); }),
    ],
  });
  const editor = new EditorView({ state, parent: root, root });
  void learn();
  return {
    text: () => editor.state.doc.toString(),
    put: (next) => {
      quiet = true;
      editor.dispatch({ changes: { from: 0, to: editor.state.doc.length, insert: next } });
      quiet = false;
    },
    goTo: (number) => {
      const row = editor.state.doc.line(Math.max(1, Math.min(editor.state.doc.lines, number)));
      editor.dispatch({ selection: { anchor: row.from, head: row.to }, effects: EditorView.scrollIntoView(row.from, { y: "center" }) });
    },
    show: (remarks) => editor.dispatch(setDiagnostics(editor.state, diagnostics(editor.state.doc, remarks))),
    close: () => editor.destroy(),
  };
}
