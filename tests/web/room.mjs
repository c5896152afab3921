// What do all tests of the page in a browser share?
import { spawn } from "node:child_process";
import { copyFileSync, readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import assert from "node:assert/strict";

export const [place, command, root, folder] = process.argv.slice(2);
const require = createRequire(`${place}/`);
const { chromium } = require("playwright-core");
const axeSource = readFileSync(require.resolve("axe-core/axe.min.js"), "utf8");

const QUIET = ["--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
  "--disable-component-update", "--disable-sync", "--enable-unsafe-swiftshader"];
export const GROUNDS = ["light", "dark", "contrast"];
export const VIEWS = ["Behind", "Front", "Unrolled", "In space", "Section", "Selectivity", "Float", "Effects", "Start", "Seizure", "Modes", "Warming", "Learn", "Arrange", "Compare"];
/** What a view is there for. */
export const PICTURES = { "Behind": ".picture svg", "Front": ".picture svg", "Unrolled": "img.on-paper", "In space": ".in-space canvas", "Section": ".chart svg", "Selectivity": ".chart svg",
  "Float": "img.on-paper", "Effects": ".effects-face", "Start": ".times canvas", "Seizure": ".times canvas", "Modes": ".times canvas", "Warming": ".times canvas", "Learn": "img.on-paper", "Arrange": "table.plain", "Compare": ".overlay svg" };

const browser = await chromium.launch({ executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium", args: QUIET });
let passed = 0;
const failures = [];

function serve(file) {
  const child = spawn(command, ["open", file, "--no-browser"]);
  const link = new Promise((found, lost) => {
    let all = "";
    child.stdout.on("data", (data) => {
      all += data;
      const match = /http:\/\/\S+/.exec(all);
      if (match) found(match[0]);
    });
    child.on("exit", (code) => lost(new Error(`the server ended with ${code}`)));
  });
  return { child, link };
}

/** Opens a copy of an example, or `text`, and hands the page to `work`. */
export async function on(name, options, work) {
  if (process.env.ONLY && !name.includes(process.env.ONLY)) return;
  const begun = performance.now();
  const file = `${folder}/${name.replace(/\W+/g, "_")}.yaml`;
  if (options.text !== undefined) writeFileSync(file, options.text);
  else copyFileSync(`${root}/examples/${options.example ?? "bizjet"}.yaml`, file);
  const server = serve(file);
  const wrong = [];
  let context = null;
  try {
    context = await browser.newContext({ viewport: options.size ?? { width: 1440, height: 900 }, reducedMotion: options.still ? "reduce" : "no-preference",
      ...(options.forced ? { forcedColors: "active", colorScheme: options.forced } : {}) });
    const page = await context.newPage();
    page.setDefaultTimeout(20000);
    page.on("pageerror", (error) => wrong.push(error.message));
    page.on("console", (message) => {
      // A refusal of the server is shown in the page; the browser notes its status as well.
      if (message.type() === "error" && !/status of 4\d\d/.test(message.text())) wrong.push(message.text());
    });
    page.on("dialog", (dialog) => { wrong.push(`a dialog: ${dialog.message()}`); void dialog.dismiss(); });
    await page.goto(await server.link);
    await page.waitForSelector(options.until ?? ".rail .cell");
    await work(page, { file, context, read: () => readFileSync(file, "utf8") });
    assert.deepEqual(wrong, []);
    passed++;
    console.log(`passed: ${name} (${((performance.now() - begun) / 1000).toFixed(1)} s)`);
  } catch (error) {
    failures.push(name);
    console.log(`FAILED: ${name}\n${error.stack ?? error}\n${wrong.join("\n")}`);
  }
  await context?.close();
  server.child.kill("SIGTERM");
}

export const told = (page, words) => page.waitForFunction((want) => document.querySelector(".told")?.textContent?.includes(want), words);
export const verdict = (page, words) => page.waitForFunction((want) => document.querySelector("#verdict")?.textContent?.includes(want), words);
export const findings = (page) => page.locator("#findings .finding").allTextContents();

/** Middle of the numbered circle of a shaft on the screen, once the picture keeps still. */
export async function middle(page, number) {
  const text = page.locator(".number-text", { hasText: new RegExp(`^${number}$`) });
  let box = await text.boundingBox();
  for (let before = null; before?.x !== box.x || before?.y !== box.y;) {
    before = box;
    await page.waitForTimeout(100);
    box = await text.boundingBox();
  }
  return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
}

/** Nothing has changed in the page for 80 ms. */
const settle = (page) => page.evaluate(() => new Promise((done) => {
  let timer = setTimeout(done, 80);
  new MutationObserver(() => { clearTimeout(timer); timer = setTimeout(done, 80); }).observe(document.body, { subtree: true, childList: true, attributes: true, characterData: true });
}));

/** Goes to a view, and waits until what it is there for is drawn. */
export async function show(page, name) {
  await page.click(`nav[aria-label=views] button:text-is('${name}')`);
  await page.waitForSelector(PICTURES[name], { state: "attached" });
  await settle(page);
}

/** `seen`: parts of the page that were judged in this ground already, and stand there as they were;
 *  `rules`: those of them that are asked, null for all. */
export async function axe(page, where, seen = [], rules = null) {
  const found = await page.evaluate(async ([out, only]) => {
    const answer = await window.axe.run(out.length > 0 ? { exclude: out.map((one) => [one]) } : document, { resultTypes: ["violations"], runOnly: only ?? ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"] });
    return answer.violations.map((one) => `${one.id}: ${one.help}: ${one.nodes.slice(0, 3).map((node) => node.target.join(" ")).join(" | ")}`);
  }, [seen, rules]);
  assert.deepEqual(found, [], where);
}

// The judge of access is brought in by the test's own context, past the policy of the page.
export async function bring(page) {
  const session = await page.context().newCDPSession(page);
  await session.send("Runtime.evaluate", { expression: axeSource });
}

/** The end of a file of tests. */
export async function close() {
  await browser.close();
  console.log(`${passed} passed, ${failures.length} failed`);
  process.exit(failures.length === 0 ? 0 : 1);
}
