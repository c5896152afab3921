// Are a start and a seizure played as they were computed?
//   node motion.mjs <folder with node_modules> <command> <root of the tree> <folder for files>
import assert from "node:assert/strict";
import { close, on, told } from "./room.mjs";

const open = (page, name) => page.click(`nav[aria-label=views] button:text-is('${name}')`);
const scrub = (page, part) => page.fill("input[aria-label=time]", String(part));
const turned = (page) => page.locator(".moving-face [data-phase]").evaluateAll((all) => all.map((one) => Number(/rotate\(([-\d.]+)/.exec(one.getAttribute("transform"))[1]) - Number(one.dataset.phase)));

/** Pixels of a canvas that are not empty. */
const inked = (page, at) => page.locator(".times canvas").nth(at).evaluate((one) => {
  const data = one.getContext("2d").getImageData(0, 0, one.width, one.height).data;
  let count = 0;
  for (let i = 3; i < data.length; i += 4) count += data[i] > 0;
  return count;
});

await on("a start is scrubbed, played and read as a table", {}, async (page) => {
  await open(page, "Start");
  await page.waitForFunction(() => document.querySelectorAll(".times canvas").length === 2);
  const start = await page.evaluate(async () => (await fetch("/api/start")).json());
  assert.match(await page.textContent(".wide"), new RegExp(`It ends: ${start.outcome}`));
  await scrub(page, 1000);
  const last = start.trace.spools[0].speed.at(-1) * 60 / (2 * Math.PI);
  const key = await page.textContent(".timekey label:has-text('hp spool')");
  assert.ok(Math.abs(Number(key.replace(/[^\d.]/g, "")) / last - 1) < 1e-3, `${key} is not ${last}`);
  for (const at of [0, 1]) assert.ok(await inked(page, at) > 1500, "a chart is blank");
  // Every gear of the box turns by the ratio of its shaft, in its sense.
  await scrub(page, 700);
  const view = await page.evaluate(async () => (await fetch("/api/view?units=metric")).json());
  const gears = view.gears.filter((gear) => gear.role !== "bevel" && view.shafts[gear.shaft].x !== null).sort((a, b) => a.plane - b.plane);
  const angles = await turned(page);
  const box = gears.map((gear, index) => ({ gear, shaft: view.shafts[gear.shaft], angle: angles[index] })).filter((one) => one.shaft.spool === "hp");
  assert.ok(box.length >= 6);
  for (const one of box) assert.ok(Math.abs(one.angle / one.shaft.turns / one.shaft.sense / (box[0].angle / box[0].shaft.turns / box[0].shaft.sense) - 1) < 1e-3, `${one.gear.address} turns out of ratio`);
  // It plays on.
  await scrub(page, 0);
  await page.click("button:text-is('Play')");
  await page.waitForFunction(() => Number(document.querySelector("input[aria-label=time]").value) > 20);
  await page.click("button:text-is('Hold')");
  await page.waitForSelector("button:text-is('Play')");
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
  const held = await page.inputValue("input[aria-label=time]");
  await page.waitForTimeout(200);
  assert.equal(await page.inputValue("input[aria-label=time]"), held);
  // What happens next, and the table of the same numbers.
  await scrub(page, 0);
  await page.click("button:text-is('Next event')");
  assert.match(await page.textContent(".said"), /lp begins to follow/);
  await page.click(".play button:text-is('Table')");
  for (const event of start.events) assert.ok((await page.textContent(".player")).includes(`${event.of} ${event.what}`));
});

await on("a decimal comma is taken and said back, and what is twofold is refused", {}, async (page) => {
  await open(page, "Start");
  const air = page.locator(".field:has-text('Air') input");
  await air.fill("-20,5");
  await air.press("Enter");
  await told(page, "Air: read as -20.5 degC.");
  await page.waitForFunction(() => document.querySelector(".field input").value === "-20.5 degC");
  assert.match(await page.textContent(".field:has-text('Air')"), /read as -20.5 degC/);
  await air.fill("1,234");
  await air.press("Enter");
  await told(page, "can be read in two ways");
  assert.equal(await air.getAttribute("aria-invalid"), "true");
  await air.fill("warm");
  await air.press("Enter");
  await page.waitForFunction(() => document.querySelector(".wide .bad")?.textContent?.includes("warm") || document.querySelector(".wide .bad")?.textContent?.includes("temperature"));
});

await on("a given number is changed where its working ends", {}, async (page, { read }) => {
  const before = read();
  await page.locator(".rail .cell").nth(0).click();
  await page.keyboard.press("w");
  await page.waitForSelector("#working .tree summary");
  for (let shut = 1; shut > 0;) shut = await page.evaluate(async () => {
    const all = [...document.querySelectorAll("#working details:not([open])")];
    for (const one of all) one.open = true;
    await new Promise((after) => setTimeout(after, 60));
    return all.length;
  });
  const field = page.locator("#working .leaf", { hasText: "rpm" }).filter({ has: page.locator(".field") }).first().locator(".field input");
  await field.fill("24100,5 rpm");
  await field.press("Enter");
  await told(page, "Done:");
  assert.notEqual(read(), before);
  assert.ok(read().includes("24100.5 rpm"), "it is not in the file");
  await page.click("button:has-text('Undo')");
  await told(page, "Taken back");
  assert.equal(read(), before);
});

await on("a seizure: the neck breaks at its moment, and only its accessory stands", {}, async (page) => {
  await open(page, "Seizure");
  await page.waitForFunction(() => document.querySelectorAll(".times canvas").length === 2);
  await page.selectOption("label:has-text('Accessory') select", "hydraulic pump 1");
  await page.waitForSelector(".snap", { state: "attached" });
  const answer = await page.evaluate(async () => (await fetch("/api/seize?accessory=hydraulic%20pump%201&condition=red%20line")).json());
  const when = answer.runs[0].events.find((one) => one.what === "breaks").t;
  const part = (t) => Math.round(1000 * Math.log(t / 1e-7) / Math.log(answer.runs[0].until / 1e-7));
  await scrub(page, part(when) - 5);
  assert.equal(await page.locator(".snap.broken").count(), 0);
  await scrub(page, part(when) + 5);
  assert.equal(await page.locator(".snap.broken").count(), 1);
  assert.match(await page.textContent(".snap.broken"), /neck of hydraulic pump 1 broken/);
  assert.match(await page.textContent(".said"), /breaks at 59 N.m/);
  await scrub(page, 1000);
  assert.match(await page.textContent(".timekey label:has-text('hydraulic pump 1, rotor')"), /0 rpm/);
  // Without its neck the teeth go.
  await page.click("button:has-text('without its neck')");
  await page.waitForFunction(() => document.querySelector(".player")?.textContent?.includes("teeth broken"));
  await scrub(page, 1000);
  await page.waitForSelector(".snap.broken:has-text('teeth broken')");
  for (const at of [0, 1]) assert.ok(await inked(page, at) > 1500, "a chart is blank");
  await page.selectOption("label:has-text('Units') select", "us");
  await page.waitForFunction(() => /lbf\.in/.test(document.querySelector(".timekey:last-child")?.textContent ?? ""));
});

await on("with reduced motion Play goes to the next thing that happens", { still: true }, async (page) => {
  await open(page, "Start");
  await page.waitForSelector(".player");
  await page.click("button:text-is('Play')");
  await page.waitForFunction(() => /begins to follow/.test(document.querySelector(".said").textContent));
  await page.waitForFunction(() => [...document.querySelectorAll(".play button")].some((one) => one.textContent === "Play"));
});

await on("an accessory without a rotor is said to have none", { example: "bizjet" }, async (page) => {
  await open(page, "Seizure");
  await page.selectOption("label:has-text('Accessory') select", "starter");
  await page.waitForFunction(() => document.querySelector(".wide").textContent.includes("It cannot be computed"));
});

await close();
