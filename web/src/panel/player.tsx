// How is something in time looked at: played, held, scrubbed, read line by line?
import { useEffect, useMemo, useRef, useState } from "preact/hooks";
import { useSignal, type Signal } from "@preact/signals";
import { MovingFace } from "../picture/moving";
import { useSize } from "../picture/size";
import type { TimeChart } from "../picture/timechart";
import { valueAt, type Course, type Line } from "../state/course";
import { asTable, ground, units } from "../state/store";
import { amount, inUnit } from "../show/amount";
import { number } from "../show/format";
import type { View } from "../wire/view";

const FIRST = 1e-7;
const STEPS = 1000;
/** SI here, and in the reader's units where they are shown. */
const SCALED = new Set(["N.m", "um"]);

export function clock(t: number): string {
  return t === 0 ? "0 s" : t < 1e-3 ? `${number(t * 1e6, 3)} \u00b5s` : t < 1 ? `${number(t * 1e3, 4)} ms` : `${number(t, 4)} s`;
}

/** `drawn`: the beginning drawn out, each power of ten as long as the next. */
function timeOf(course: Course, drawn: boolean, part: number): number {
  return drawn ? (part <= 0 ? 0 : FIRST * (course.until / FIRST) ** part) : part * course.until;
}

function partOf(course: Course, drawn: boolean, t: number): number {
  return drawn ? (t <= FIRST ? 0 : Math.log(t / FIRST) / Math.log(course.until / FIRST)) : t / course.until;
}

function shown(line: Line, value: number | null): string {
  return value === null ? "not known" : SCALED.has(line.unit) ? amount(value, line.unit, 4) : `${number(value, 4)} ${line.unit}`;
}

function Chart(props: { course: Course; lines: Line[]; title: string; drawn: boolean; time: Signal<number>; height: number }) {
  const { course, lines, drawn, time } = props;
  const { ref, size } = useSize();
  const [made, setMade] = useState<TimeChart | null>(null);
  useEffect(() => {
    let live = true, chart: TimeChart | null = null;
    void import("../picture/timechart").then(({ drawTimes }) => {
      if (!live || ref.current === null) return;
      const inUnits = lines.map((one) => (SCALED.has(one.unit) ? { ...one, values: one.values.map((value) => (value === null ? null : inUnit(value, one.unit))) } : one));
      chart = drawTimes(ref.current, course.t, inUnits, { title: props.title, drawn, first: FIRST, sparse: ground.value === "contrast", width: Math.max(200, ref.current.clientWidth), height: props.height, marks: course.moments.map((one) => one.t), pick: (t) => { time.value = Math.min(course.until, Math.max(0, t)); } });
      setMade(chart);
    });
    return () => {
      live = false;
      chart?.close();
      setMade(null);
    };
  }, [course, lines, drawn, ground.value, units.value, props.height]);
  useEffect(() => (made === null ? undefined : time.subscribe((t) => made.cursor(t))), [made, time]);
  useEffect(() => made?.size(Math.max(200, size.width), props.height), [made, size.width]);
  return <div ref={ref} class="times" aria-hidden="true" />;
}

function Key(props: { course: Course; lines: Line[]; all: Line[]; chosen: boolean[]; choose: (at: number) => void; time: Signal<number>; name: string }) {
  const t = props.time.value;
  const one = (index: number) => {
    const one = props.all[index];
    if (one === undefined) return null;
    const place = props.lines.indexOf(one);
    return (
      <label key={one.name} class={place >= 0 ? `line-${place % 5} dash-${Math.floor(place / 5) % 5}` : "off"}>
        <input type="checkbox" checked={props.chosen[index] ?? false} onChange={() => props.choose(index)} />
        <svg width="26" height="10" aria-hidden="true"><line x1="0" y1="5" x2="26" y2="5" /></svg> {one.name} <b>{shown(one, valueAt(props.course, one.values, t))}</b>
      </label>
    );
  };
  const order = props.all.map((_, index) => index), off = order.filter((index) => !props.chosen[index]);
  return (
    <div class="timekey" role="group" aria-label={props.name}>
      {order.filter((index) => props.chosen[index]).map(one)}
      {off.length > 0 && <details><summary>{off.length} more {off.length === 1 ? "line" : "lines"}</summary>{off.map(one)}</details>}
    </div>
  );
}

function useChoice(course: Course, all: Line[]): [boolean[], (at: number) => void, Line[]] {
  const first = useMemo(() => {
    const most = (one: Line): number => one.values.reduce((far: number, value) => Math.max(far, Math.abs((value ?? 0) - (one.values[0] ?? 0))), 0);
    const size = all.map(most);
    const order = size.map((_, index) => index).sort((a, b) => (size[b] ?? 0) - (size[a] ?? 0)).slice(0, 4);
    return all.map((_, index) => order.includes(index));
  }, [course]);
  const [chosen, setChosen] = useState(first);
  useEffect(() => setChosen(first), [first]);
  const lines = useMemo(() => all.filter((_, index) => chosen[index]), [all, chosen]);
  return [chosen, (at) => setChosen((now) => now.map((one, index) => (index === at ? !one : one))), lines];
}

/** Plays on until the end; with reduced motion a press goes to the next thing that happens. */
function usePlaying(course: Course, time: Signal<number>, drawn: boolean, seconds: number): [boolean, () => void] {
  const [playing, setPlaying] = useState(false);
  useEffect(() => {
    if (!playing) return;
    if (window.matchMedia("(prefers-reduced-motion: reduce)").matches) {
      const next = course.moments.map((one) => one.t).filter((t) => t > time.value * (1 + 1e-9) + 1e-12).sort((a, b) => a - b)[0];
      time.value = next ?? course.until;
      setPlaying(false);
      return;
    }
    let last = performance.now(), frame = 0;
    if (time.value >= course.until) time.value = 0;
    let part = partOf(course, drawn, time.value);
    const step = (now: number): void => {
      part = Math.min(1, part + (now - last) / 1000 / seconds);
      last = now;
      time.value = timeOf(course, drawn, part);
      if (part >= 1) setPlaying(false);
      else frame = requestAnimationFrame(step);
    };
    frame = requestAnimationFrame(step);
    return () => cancelAnimationFrame(frame);
  }, [playing, course, drawn, seconds]);
  return [playing, () => setPlaying((now) => !now)];
}

function Said(props: { course: Course; time: Signal<number>; seconds: number; drawn: boolean; turned: number }) {
  const { course } = props, t = props.time.value;
  const last = [...course.moments].reverse().find((one) => one.t <= t);
  const slow = props.drawn ? props.seconds / (Math.max(t, FIRST) * Math.log(course.until / FIRST)) : props.seconds / course.until;
  return (
    <p class="said">
      <b>{clock(t)}</b> of {clock(course.until)}; time {slow >= 1 ? `slowed 1:${number(slow, 3)}` : `quickened ${number(1 / slow, 3)}:1`}{props.turned !== 1 && `, turning slowed ${number(1 / props.turned, 3)} times more`}
      {last !== undefined && <>. <b class={last.grave ? "grave" : ""}>{last.says}</b> at {clock(last.t)}</>}
    </p>
  );
}

function Table(props: { course: Course }) {
  const { course } = props;
  const rows = [...course.speeds, ...course.loads];
  const peak = (one: Line): { at: number; value: number | null } => {
    let best = 0;
    one.values.forEach((value, index) => { if (Math.abs(value ?? 0) > Math.abs(one.values[best] ?? 0)) best = index; });
    return { at: course.t[best] ?? 0, value: one.values[best] ?? null };
  };
  return (
    <>
      <table class="plain"><caption>What happens</caption><thead><tr><th scope="col">When</th><th scope="col">What</th></tr></thead>
        <tbody>{course.moments.map((one, index) => <tr key={index}><td>{clock(one.t)}</td><th scope="row">{one.says}</th></tr>)}</tbody></table>
      <table class="plain"><caption>Every line of the charts</caption><thead><tr><th scope="col">Of what</th><th scope="col">At the beginning</th><th scope="col">Largest</th><th scope="col">When</th><th scope="col">At the end</th></tr></thead>
        <tbody>{rows.map((one, index) => {
          const most = peak(one);
          return <tr key={index}><th scope="row">{one.name}</th><td>{shown(one, one.values[0] ?? null)}</td><td>{shown(one, most.value)}</td><td>{clock(most.at)}</td><td>{shown(one, one.values[one.values.length - 1] ?? null)}</td></tr>;
        })}</tbody></table>
    </>
  );
}

/** `turned`: how much of a turn is shown, where time alone is not slow enough for the eye. */
export function Player(props: { now: View; course: Course; drawn: boolean; turned: number; speeds?: string; loads: string; tint?: string }) {
  const { course } = props;
  const time = useSignal(0);
  const [drawn, setDrawn] = useState(props.drawn);
  const [seconds, setSeconds] = useState(20);
  const [playing, toggle] = usePlaying(course, time, drawn, seconds);
  const [speeds, chooseSpeed, speedLines] = useChoice(course, course.speeds);
  const [loads, chooseLoad, loadLines] = useChoice(course, course.loads);
  const { ref, size } = useSize();
  useEffect(() => { time.value = 0; }, [course]);
  const face = useRef({ width: 480, height: 330 });
  face.current = useMemo(() => ({ width: Math.max(300, Math.min(560, size.width * 0.5 - 16)), height: 330 }), [size.width]);
  const said = `${clock(time.value)}; ${course.speeds.slice(0, 2).map((one) => `${one.name} ${shown(one, valueAt(course, one.values, time.value))}`).join(", ")}`;
  const jump = (way: 1 | -1): void => {
    const all = course.moments.map((one) => one.t).sort((a, b) => a - b);
    const next = way > 0 ? all.find((t) => t > time.value) ?? course.until : [...all].reverse().find((t) => t < time.value) ?? 0;
    time.value = next;
  };
  return (
    <div ref={ref} class="player">
      <div class="play" role="group" aria-label="play">
        <button type="button" class="main" onClick={toggle}>{playing ? "Hold" : "Play"}</button>
        <button type="button" onClick={() => jump(-1)}>Event before</button>
        <button type="button" onClick={() => jump(1)}>Next event</button>
        <input type="range" min={0} max={STEPS} value={Math.round(partOf(course, drawn, time.value) * STEPS)} aria-label="time" aria-valuetext={said}
          onInput={(event) => { time.value = timeOf(course, drawn, Number(event.currentTarget.value) / STEPS); }} />
        <label>Played in{" "}
          <select value={String(seconds)} onChange={(event) => setSeconds(Number(event.currentTarget.value))}>{[5, 10, 20, 60, 180].map((one) => <option key={one} value={String(one)}>{one} s</option>)}</select>
        </label>
        <label>Time{" "}
          <select value={drawn ? "drawn" : "even"} onChange={(event) => setDrawn(event.currentTarget.value === "drawn")}><option value="even">even</option><option value="drawn">beginning drawn out</option></select>
        </label>
        <button type="button" aria-pressed={asTable.value} onClick={() => { asTable.value = !asTable.value; }}>Table</button>
      </div>
      <Said course={course} time={time} seconds={seconds} drawn={drawn} turned={props.turned} />
      <p class="away" role="status" aria-live="polite">{playing ? "" : said}</p>
      {asTable.value ? <Table course={course} /> : (
        <div class="beside">
          <div class="face">
            <MovingFace now={props.now} course={course} time={time} turned={props.turned} size={face.current} />
            {props.tint !== undefined && <p class="quiet">{props.tint}</p>}
          </div>
          <div class="charts">
            <Chart course={course} lines={speedLines} title={props.speeds ?? "rpm"} drawn={drawn} time={time} height={160} />
            <Key course={course} all={course.speeds} lines={speedLines} chosen={speeds} choose={chooseSpeed} time={time} name="speeds" />
            <Chart course={course} lines={loadLines} title={props.loads} drawn={drawn} time={time} height={170} />
            <Key course={course} all={course.loads} lines={loadLines} chosen={loads} choose={chooseLoad} time={time} name="loads" />
          </div>
        </div>
      )}
    </div>
  );
}
