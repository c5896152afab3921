// Where does the page begin, and what stands where in it?
import "virtual:look.css";
import "./page.css";
import { render } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import { Arrange } from "./panel/arrange";
import { Compare } from "./panel/compare";
import { Conditions } from "./panel/conditions";
import { Effects } from "./panel/effects";
import { FilePanel } from "./panel/file";
import { Findings } from "./panel/findings";
import { Float } from "./panel/float";
import { Handle } from "./panel/handle";
import { KEYS, listenToKeys } from "./panel/keys";
import { Modes } from "./panel/modes";
import { Learn } from "./panel/learn";
import { FaceTable, Rail } from "./panel/rail";
import { Section } from "./panel/section";
import { SeizureView } from "./panel/seizure";
import { Selectivity } from "./panel/selectivity";
import { SpaceView } from "./panel/space";
import { StartView } from "./panel/start";
import { Title, Told } from "./panel/title";
import { Unread } from "./panel/unread";
import { Warming } from "./panel/warming";
import { Working } from "./panel/working";
import { FacePicture } from "./picture/face";
import { spoolsWithBox } from "./picture/place";
import { Drawn } from "./show/drawn";
import { begin } from "./state/live";
import { asTable, caution, closeTo, conditionName, hasView, leaf, told, turning, units, unreadable, view, viewName, VIEWS } from "./state/store";

function Views() {
  return (
    <nav class="views" aria-label="views">
      {VIEWS.map((name) => (
        <button key={name} type="button" aria-pressed={viewName.value === name} class={name === "Arrange" || name === "Selectivity" ? "apart" : ""} onClick={() => { viewName.value = name; }}>{name}</button>
      ))}
    </nav>
  );
}

const PLAYED: ReadonlySet<string> = new Set(["Start", "Seizure", "Modes", "Warming"]);

/** What was said last, and beside it how the picture is shown. */
function Below() {
  const now = view.value, face = now !== null && (viewName.value === "Behind" || viewName.value === "Front");
  const close = face || viewName.value === "Effects" || PLAYED.has(viewName.value);
  const space = now !== null && viewName.value === "In space";
  const table = face || space || (now !== null && ["Section", "Selectivity", "Float"].includes(viewName.value));
  return (
    <div class={close || table || face || told.value !== null ? "below" : "below bare"}>
      <Told />
      {(close || table) && <div class="tools" role="group" aria-label="how it is shown">
        {close && now !== null && <label class="close">Picture of{" "}
          <select value={closeTo.value === null ? "auto" : closeTo.value === "" ? "all" : closeTo.value} onChange={(event) => { closeTo.value = event.currentTarget.value === "auto" ? null : event.currentTarget.value === "all" ? "" : event.currentTarget.value; }}>
            <option value="auto">what can be read well</option><option value="all">the whole drive</option>
            {spoolsWithBox(now).map((name) => <option key={name} value={name}>the {name} box</option>)}
          </select>
        </label>}
        {table && <button type="button" aria-pressed={asTable.value} onClick={() => { asTable.value = !asTable.value; }}>Table</button>}
        {(face || space) && <button type="button" aria-pressed={turning.value} onClick={() => { turning.value = !turning.value; }}>Turn</button>}
      </div>}
    </div>
  );
}

function Unrolled() {
  const [whole, setWhole] = useState(false);
  return (
    <div class={whole ? "wide scroll whole" : "wide scroll"} tabIndex={0} role="region" aria-label="unrolled">
      <p class="on-screen"><button type="button" aria-pressed={whole} onClick={() => setWhole(!whole)}>{whole ? "Large enough to read" : "The whole sheet"}</button></p>
      <Drawn path="/api/picture" query={{ figure: "unrolled", condition: conditionName.value, units: units.value }} name="sheet" alt="The arc of the box laid flat: face widths, bodies on both faces, gaps. The numbers stand in the table of the face view." />
    </div>
  );
}

function Bench() {
  switch (viewName.value) {
    case "Unrolled": return <Unrolled />;
    case "Section": return <Section />;
    case "Selectivity": return <Selectivity />;
    case "Float": return <Float />;
    case "Effects": return <Effects />;
    case "In space": return <><SpaceView /><Rail /></>;
    case "Start": return <StartView />;
    case "Seizure": return <SeizureView />;
    case "Modes": return <Modes />;
    case "Warming": return <Warming />;
    case "Learn": return <Learn />;
    case "Arrange": return <Arrange />;
    case "Compare": return <Compare />;
    default:
      return (
        <>
          {asTable.value ? <FaceTable /> : <FacePicture front={viewName.value === "Front"} />}
          <Handle />
          <Rail />
        </>
      );
  }
}

function Reading() {
  return (
    <aside id="reading" tabIndex={-1} class="reading" aria-label="reading column">
      <nav class="views" aria-label="leaves">
        <button type="button" aria-pressed={leaf.value === "findings"} onClick={() => { leaf.value = "findings"; }}>Findings and working</button>
        <button type="button" aria-pressed={leaf.value === "file"} onClick={() => { leaf.value = "file"; }}>File</button>
      </nav>
      {leaf.value === "file" ? <FilePanel /> : <><Findings /><Working /></>}
    </aside>
  );
}

function Keys(props: { close: () => void }) {
  return (
    <div class="keys" role="dialog" aria-modal="false" aria-label="keys" onKeyDown={(event) => { if (event.key === "Escape") props.close(); }}>
      <h2>Keys</h2>
      <dl>{KEYS.map(([key, says]) => <div key={key}><dt>{key}</dt><dd>{says}</dd></div>)}</dl>
      <button type="button" ref={(one) => one?.focus()} onClick={props.close}>Close</button>
    </div>
  );
}

/** Where what had the focus goes away with its view, the focus goes to the next view, not to the top of the page. */
function useKeptFocus(): void {
  const last = useRef<Element | null>(null);
  useEffect(() => {
    const keep = (event: FocusEvent): void => { last.current = event.target as Element; };
    document.addEventListener("focusin", keep);
    return () => document.removeEventListener("focusin", keep);
  }, []);
  useEffect(() => {
    if (last.current !== null && !last.current.isConnected && document.activeElement === document.body) document.getElementById("bench")?.focus({ preventScroll: true });
  }, [viewName.value]);
}

function Page() {
  const [help, setHelp] = useState(false);
  // A class sees the machine and what is said of it, large and without numbers.
  const teaching = viewName.value === "Learn" && hasView.value;
  useEffect(() => listenToKeys(() => setHelp(true)), []);
  useKeptFocus();
  return (
    <div class={teaching ? "page teach" : leaf.value === "file" ? "page wide-file" : "page"}>
      <svg class="away" aria-hidden="true" width="1" height="1"><defs><pattern id="hatch" width="4.5" height="4.5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><line class="hatch-line" x1="0" y1="0" x2="0" y2="4.5" /></pattern></defs></svg>
      {hasView.value && (["Behind", "Front", "In space"] as string[]).includes(viewName.value) && <a class="skip" href="#shafts" onClick={(event) => { event.preventDefault(); document.getElementById("shafts")?.focus(); }}>To the shafts</a>}
      {!teaching && <a class="skip" href="#conditions" onClick={(event) => { event.preventDefault(); document.getElementById("scrubber")?.focus(); }}>To the conditions</a>}
      {!teaching && <a class="skip" href="#reading" onClick={(event) => { event.preventDefault(); document.getElementById("reading")?.focus(); }}>To the findings</a>}
      <Title />
      <main class={viewName.value === "Behind" || viewName.value === "Front" ? "left" : "left charts"}>
        <Views />
        <div id="bench" class="bench" tabIndex={-1}>{!hasView.value && !unreadable.value ? <p class="wide">Reading the drive.</p> : !hasView.value ? <Unread /> : <Bench />}</div>
        <Below />
        {!teaching && <Conditions />}
      </main>
      {!teaching && <Reading />}
      <footer><button type="button" class="link" onClick={() => setHelp(true)}>Keys: ?</button> {caution.value || "Preliminary design aid."} <a href="/licences.txt">Licences</a></footer>
      {help && <Keys close={() => setHelp(false)} />}
    </div>
  );
}

const place = document.getElementById("page");
if (place !== null) render(<Page />, place);
void begin();
