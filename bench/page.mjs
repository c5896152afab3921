// How quick is the page, and how large its server, on the large example in a real browser?
//   node bench/page.mjs <folder with node_modules> <command> <root of the tree>
// Exit 1: a limit of docs/server.md is not kept.
import { spawn } from "node:child_process";
import { copyFileSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { resolve } from "node:path";
import { gzipSync } from "node:zlib";

const [place, command, root] = process.argv.slice(2).map((one) => resolve(one));
const { chromium } = createRequire(`${place}/`)("playwright-core");
const folder = mkdtempSync(`${tmpdir()}/towershaft-`);
const file = `${folder}/large.yaml`;
copyFileSync(`${root}/examples/large.yaml`, file);

let kept = true;
function tell(name, value, unit, most, floor = false) {
  const good = most === null || (floor ? value >= most : value <= most);
  kept &&= good;
  const limit = most === null ? "" : `${floor ? "at least" : "within"} ${most} ${unit}`;
  console.log(`${name.padEnd(34)} ${value.toFixed(value < 10 ? 2 : 1).padStart(9)} ${unit.padEnd(9)} ${limit}${good ? "" : "   NOT KEPT"}`);
}

const share = (all, part) => [...all].sort((a, b) => a - b)[Math.min(all.length - 1, Math.floor(part * all.length))];

const browser = await chromium.launch({ executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium", args: ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"] });
const page = await (await browser.newContext({ viewport: { width: 1440, height: 900 } })).newPage();
await page.goto("about:blank");

const begun = performance.now();
const server = spawn(command, ["open", file, "--no-browser"]);
const link = await new Promise((found) => {
  let all = "";
  server.stdout.on("data", (data) => { all += data; const match = /http:\/\/\S+/.exec(all); if (match) found(match[0]); });
});
await page.goto(link, { waitUntil: "commit" });
await page.waitForSelector(".picture .gear");
tell("first picture after `open`", performance.now() - begun, "ms", 1000);

const status = (word) => Number(new RegExp(`${word}:\\s+(\\d+)`).exec(readFileSync(`/proc/${server.pid}/status`, "utf8"))[1]) / 1024;
const busy = () => Number(readFileSync(`/proc/${server.pid}/schedstat`, "utf8").split(" ")[0]) / 1e6;
await page.waitForTimeout(1500);
tell("memory of the server, idle", status("VmRSS"), "MB", 60);

// What goes over the wire.
const sizes = await page.evaluate(async () => {
  const text = async (path) => (await fetch(path)).text();
  return { view: await text("/api/view?units=metric"), answer: await text("/api/answer") };
});
tell("answer, gzip", gzipSync(sizes.answer).length / 1000, "kB", 300);
tell("view, gzip", gzipSync(sizes.view).length / 1000, "kB", 300);

// A key to the picture on the screen.
await page.locator(".rail .cell").nth(3).click();
await page.focus(".rail");
await page.evaluate(() => {
  window.took = [];
  let since = 0;
  document.addEventListener("keydown", (event) => { since = event.timeStamp; }, true);
  new MutationObserver(() => {
    if (since === 0) return;
    const from = since;
    since = 0;
    requestAnimationFrame(() => { const after = new MessageChannel(); after.port1.onmessage = () => window.took.push(performance.now() - from); after.port2.postMessage(0); });
  }).observe(document.querySelector(".picture"), { subtree: true, attributes: true, attributeFilter: ["d"] });
});
const before = busy();
for (let i = 0; i < 80; i++) {
  await page.keyboard.press(i % 8 < 4 ? "ArrowUp" : "ArrowDown");
  await page.waitForFunction((want) => window.took.length >= want, i + 1);
}
const took = await page.evaluate(() => window.took);
const spent = busy() - before;
const timing = await page.evaluate(() => performance.getEntriesByType("resource").filter((one) => one.name.endsWith("/api/act")).map((one) => Object.fromEntries(one.serverTiming.map((part) => [part.name, part.duration]))));
if (timing.length !== 80) throw new Error(`80 acts, and the server timed ${timing.length}`);
tell("server, an act and its view", spent / 80, "ms", 5);
for (const part of ["compute", "disk"]) tell(`  by the clock, ${part}, median`, share(timing.map((one) => one[part]), 0.5), "ms", null);
tell("a key to the picture, median", share(took, 0.5), "ms", null);
tell("a key to the picture, 95 of 100", share(took, 0.95), "ms", 50);
const delta = await page.evaluate(async () => {
  const had = await (await fetch("/api/view?units=metric")).json();
  const state = await (await fetch("/api/state")).json();
  const shaft = had.shafts.find((one) => one.kind === "box" && one.number === 4);
  const teeth = had.gears.find((one) => one.shaft === had.shafts.indexOf(shaft) && one.role === "main").teeth;
  await fetch("/api/act", { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify({ base: state.serial, edits: [{ at: `${shaft.address}/teeth`, to: String(teeth + 1) }] }) });
  return (await fetch(`/api/view?units=metric&seen=${had.sha256}`)).text();
});
tell("what has changed, gzip", gzipSync(delta).length / 1000, "kB", 300);

// Frames while a shaft is dragged about the face.
const box = await page.locator(".number-text", { hasText: /^4$/ }).boundingBox();
await page.evaluate(() => { window.frames_seen = []; const step = (time) => { window.frames_seen.push(time); requestAnimationFrame(step); }; requestAnimationFrame(step); });
await page.mouse.move(box.x + 4, box.y + 4);
await page.mouse.down();
const until = performance.now() + 2000;
await page.evaluate(() => { window.frames_seen.length = 0; });
for (let i = 0; performance.now() < until; i++) await page.mouse.move(box.x + 60 * Math.sin(i / 9), box.y + 60 * Math.cos(i / 9));
const frames = await page.evaluate(() => window.frames_seen);
await page.keyboard.press("Escape");
await page.mouse.up();
tell("frames a second while dragging", (1000 * (frames.length - 1)) / (frames.at(-1) - frames[0]), "1/s", 55, true);
tell("memory of the server, after it", status("VmRSS"), "MB", 60);

await browser.close();
server.kill("SIGTERM");
rmSync(folder, { recursive: true, force: true });
process.exit(kept ? 0 : 1);
