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

await on("a mode is played on the face, and torques tint its meshes", {}, async (page) => {
  await open(page, "Modes");
  await page.waitForFunction(() => document.querySelectorAll(".times canvas").length === 2);
  const twist = await page.evaluate(async () => (await fetch("/api/twist")).json());
  const view = await page.evaluate(async () => (await fetch("/api/view?units=metric")).json());
  const tree = twist.trees[0], shapeOf = (mode, address) => mode.shape[tree.bodies.findLastIndex((one) => one.shaft === address && !/, rotor$/.test(one.name))];
  const gears = view.gears.filter((gear) => gear.role !== "bevel" && view.shafts[gear.shaft].x !== null).sort((a, b) => a.plane - b.plane);
  for (const number of [1, 5]) {
    const mode = tree.modes[number];
    await page.selectOption("label:has-text('Mode') select", String(number));
    await page.waitForFunction((want) => document.querySelector("[role=status] b")?.parentElement.textContent.includes("Hz") && document.querySelector(".moving-face").getAttribute("aria-label").includes(want), mode.frequency.toFixed(1));
    const at = number === 1 ? 0 : 90;
    await scrub(page, at);
    const wave = Math.cos((2 * Math.PI * 4 * at) / 1000);
    const angles = await turned(page);
    gears.forEach((gear, index) => {
      const shaft = view.shafts[gear.shaft], shape = shaft.spool === tree.spool ? shapeOf(mode, shaft.address) : 0;
      const want = -20 * shape * wave * shaft.sense, got = angles[index];
      assert.ok(Math.abs(Math.abs(got) - Math.abs(want)) < 0.03, `${gear.address} swings by ${got}, not ${want}`);
    });
    const pull = tree.springs.map((one) => (one.k * (mode.shape[one.to] / tree.bodies[one.to].ratio - mode.shape[one.from] / tree.bodies[one.from].ratio)) / tree.bodies[one.to].ratio);
    const most = Math.max(...pull.map(Math.abs));
    for (const [index, one] of tree.springs.entries()) {
      const shaft = view.shafts.find((of) => of.address === tree.bodies[one.to].shaft);
      if (one.link !== "mesh" || shaft.kind !== "box") continue;
      const shown = await page.locator(".moving-face .shaft", { has: page.locator(".number-text", { hasText: new RegExp(`^${shaft.number}$`) }) }).locator("text.label").textContent();
      assert.ok(Math.abs(Number(/[\d.]+/.exec(shown)[0]) - 100 * Math.abs((pull[index] / most) * wave)) < 0.6, `${shaft.name} carries ${shown}`);
    }
    for (const at of [0, 1]) assert.ok(await inked(page, at) > 1500, "a chart is blank");
  }
  await page.selectOption("label:has-text('Tree') select", { label: "lp, running" });
  await page.waitForFunction(() => /339\.7 Hz/.test(document.querySelector(".wide").textContent));
});

await on("what grows warm is scrubbed through its conditions, also in customary units", {}, async (page) => {
  await open(page, "Warming");
  await page.waitForFunction(() => document.querySelectorAll(".times canvas").length === 2);
  const warm = await page.evaluate(async () => (await fetch("/api/warm")).json()), drive = warm.drives[0];
  await scrub(page, 1000);
  const last = drive.plays[0].low.at(-1) * 1e6;
  const key = await page.textContent(`.timekey label:has-text('${drive.plays[0].driver} with ${drive.plays[0].driven}')`);
  assert.ok(Math.abs(Number(/([\d.]+) um/.exec(key)[1]) / last - 1) < 1e-3, `${key} is not ${last}`);
  await scrub(page, 0);
  await page.click("button:text-is('Next event')");
  assert.match(await page.textContent(".said"), /least play|begins/);
  for (const at of [0, 1]) assert.ok(await inked(page, at) > 1500, "a chart is blank");
  await page.selectOption("label:has-text('Units') select", "us");
  await page.waitForFunction(() => /degF/.test(document.querySelector(".timekey").textContent) && / in/.test(document.querySelector("[role=region] [role=status]").textContent));
  await page.fill(".field:has-text('Through') input", "take-off 2 min");
  await page.keyboard.press("Enter");
  await page.waitForFunction(() => /of 120(\.0)? s/.test(document.querySelector(".said").textContent));
  await page.fill(".field:has-text('Through') input", "take-of 2 min");
  await page.keyboard.press("Enter");
  await page.waitForFunction(() => /take-of/.test(document.querySelector(".wide .bad")?.textContent ?? ""));
});

await on("a start goes on from idle to take-off", {}, async (page) => {
  await open(page, "Start");
  await page.waitForSelector(".player");
  await page.selectOption("label:has-text('Goes on to') select", "take-off");
  const start = await page.evaluate(async () => (await fetch("/api/start?to=take-off")).json());
  await page.waitForFunction((want) => document.querySelector("[role=status]")?.parentElement.textContent.includes(want), `It ends: ${start.outcome}`);
  await scrub(page, 1000);
  const key = await page.textContent(".timekey label:has-text('hp spool')");
  assert.ok(Math.abs(Number(key.replace(/[^\d.]/g, "")) / (start.trace.spools[0].speed.at(-1) * 60 / (2 * Math.PI)) - 1) < 1e-3);
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
