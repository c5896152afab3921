// What does the file say, what would it say, and what follows?
import { useEffect, useRef, useState } from "preact/hooks";
import { putText } from "../state/acts";
import { line, state, told, view } from "../state/store";
import { post } from "../wire/ask";
import type { TryAnswer } from "../wire/view";
import type { Editor } from "./editor";
import { remarks, type Remark } from "./remark";
import { ThreeWay } from "./threeway";

export function FilePanel() {
  const place = useRef<HTMLDivElement>(null);
  const editor = useRef<Editor | null>(null);
  const base = useRef("");
  const [dirty, setDirty] = useState(false);
  const [conflict, setConflict] = useState(false);
  const [mine, setMine] = useState("");
  const [wrong, setWrong] = useState<Remark[]>([]);
  const timer = useRef(0);
  const judge = (text: string): void => {
    void post<TryAnswer>("/api/try", { text }).then((got) => {
      if (editor.current === null || editor.current.text() !== text) return;
      const all = remarks(got.body);
      editor.current.show(all);
      setWrong(all.filter((one) => one.level === "refuse"));
    });
  };
  const changed = (text: string): void => {
    setDirty(text !== base.current);
    setMine(text);
    window.clearTimeout(timer.current);
    timer.current = window.setTimeout(() => judge(text), 200);
  };
  const save = (): void => {
    const text = editor.current?.text() ?? "";
    void putText(text).then((good) => {
      if (!good) return;
      base.current = text;
      setDirty(false);
      setConflict(false);
    });
  };
  useEffect(() => {
    let live = true;
    base.current = state.value?.text ?? "";
    void import("./editor").then(({ openEditor }) => {
      if (!live || place.current === null) return;
      editor.current = openEditor(place.current, base.current, { changed, save, says: (words) => { told.value = { says: words, bad: false }; } });
      judge(base.current);
      if (line.value > 0) editor.current.goTo(line.value);
    });
    return () => {
      live = false;
      editor.current?.close();
      editor.current = null;
    };
  }, []);
  const text = state.value?.text ?? "";
  useEffect(() => {
    if (editor.current === null || text === base.current) return;
    if (editor.current.text() === base.current) {
      base.current = text;
      editor.current.put(text);
      judge(text);
    } else if (text !== editor.current.text()) {
      setMine(editor.current.text());
      setConflict(true);
    } else {
      base.current = text;
      setDirty(false);
      setConflict(false);
    }
  }, [text]);
  useEffect(() => {
    if (line.value > 0) editor.current?.goTo(line.value);
  }, [line.value, view.value]);
  /** What the three-way view put together stands in the editor; it goes into the file by hand. */
  const merged = (next: string): void => {
    base.current = text;
    editor.current?.put(next);
    setDirty(next !== text);
    setConflict(false);
    judge(next);
  };
  const theirs = (): void => {
    base.current = text;
    editor.current?.put(text);
    setDirty(false);
    setConflict(false);
    judge(text);
  };
  return (
    <section class="file" id="file" aria-labelledby="file-head">
      <h2 id="file-head">File <small>{dirty ? "changed here, not in the file yet" : "as it stands on the disk"}</small></h2>
      {conflict && <ThreeWay base={base.current} mine={mine} theirs={text} take={merged} keep={save} leave={theirs} />}
      <p><button type="button" class={dirty ? "main" : ""} disabled={!dirty} onClick={save}>Put into the file</button> <small>Ctrl+S. Ctrl+Space: what may stand here; F1: what it means. Escape, then Tab, leaves the text.</small></p>
      <div ref={place} class="editor" />
      <div class="wrong" role="status" aria-live="polite">
        {wrong.length === 0 ? "Nothing is refused." : <ul>{wrong.slice(0, 6).map((one, index) => <li key={index}><button type="button" class="link" onClick={() => editor.current?.goTo(one.line)}>line {one.line}</button> {one.says}</li>)}</ul>}
      </div>
    </section>
  );
}
