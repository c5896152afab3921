// How is the text of the file edited?  Loaded only when the file is opened.
import { defaultKeymap, history, historyKeymap } from "@codemirror/commands";
import { yaml } from "@codemirror/lang-yaml";
import { lintGutter, setDiagnostics, type Diagnostic } from "@codemirror/lint";
import { EditorState } from "@codemirror/state";
import { drawSelection, EditorView, highlightActiveLine, keymap, lineNumbers } from "@codemirror/view";
import type { Remark } from "./file";

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
  ".cm-tooltip": { backgroundColor: "var(--paper)", color: "var(--ink)", border: "1px solid var(--rule)" },
});

function diagnostics(doc: EditorState["doc"], remarks: Remark[]): Diagnostic[] {
  return remarks.filter((one) => one.line >= 1 && one.line <= doc.lines).map((one): Diagnostic => {
    const row = doc.line(one.line);
    const from = Math.min(row.to, row.from + Math.max(0, one.column - 1));
    return { from, to: row.to, severity: one.level === "refuse" ? "error" : one.level === "warn" ? "warning" : "info", message: one.says };
  });
}

/** In a shadow tree, so that its styles come as style sheets and the page's policy can forbid all others. */
export function openEditor(place: HTMLElement, text: string, on: { changed: (text: string) => void; save: () => void }): Editor {
  const root = place.attachShadow({ mode: "open" });
  let quiet = false;
  const state = EditorState.create({
    doc: text,
    extensions: [
      lineNumbers(), lintGutter(), history(), drawSelection(), highlightActiveLine(), yaml(), look,
      keymap.of([{ key: "Mod-s", preventDefault: true, run: () => { on.save(); return true; } }, ...historyKeymap, ...defaultKeymap]),
      EditorView.contentAttributes.of({ "aria-label": "text of the drive file", tabindex: "0" }),
      EditorView.updateListener.of((update) => { if (update.docChanged && !quiet) on.changed(update.state.doc.toString()); }),
    ],
  });
  const editor = new EditorView({ state, parent: root, root });
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
