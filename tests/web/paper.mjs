// Is what is printed white, whole and not blank, whatever the ground of the screen?
//   node paper.mjs <folder with node_modules> <command> <root of the tree> <folder for files>
import assert from "node:assert/strict";
import { close, on, PICTURES, VIEWS } from "./room.mjs";

/** Of an element as it would be printed: the share of its pixels that are white, and of those that are ink. */
async function shares(page, one) {
  const data = (await one.screenshot()).toString("base64");
  return page.evaluate(async (text) => {
    const bytes = Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));
    const image = await createImageBitmap(new Blob([bytes], { type: "image/png" }));
    const canvas = new OffscreenCanvas(image.width, image.height), ink = canvas.getContext("2d");
    ink.drawImage(image, 0, 0);
    const all = ink.getImageData(0, 0, image.width, image.height).data;
    let white = 0, dark = 0;
    for (let i = 0; i < all.length; i += 4) {
      const sum = all[i] + all[i + 1] + all[i + 2];
      white += sum > 740;
      dark += sum < 500;
    }
    return { white: white / (all.length / 4), dark: dark / (all.length / 4) };
  }, data);
}

await on("every view is printed on white, from a dark screen, and nothing is cut off", { size: { width: 1440, height: 900 } }, async (page) => {
  await page.selectOption("label:has-text('Colours') select", "dark");
  const before = await page.evaluate(() => getComputedStyle(document.body).backgroundColor);
  for (const name of VIEWS) {
    await page.emulateMedia({ media: "screen" });
    await page.evaluate(() => window.dispatchEvent(new Event("afterprint")));
    assert.equal(await page.evaluate(() => getComputedStyle(document.body).backgroundColor), before);
    await page.click(`nav[aria-label=views] button:text-is('${name}')`);
    await page.waitForSelector(PICTURES[name], { state: "attached" });
    await page.waitForFunction(() => [...document.querySelectorAll("img.on-paper")].every((one) => one.complete && one.naturalWidth > 0));
    await page.waitForTimeout(150);
    await page.evaluate(() => window.dispatchEvent(new Event("beforeprint")));
    await page.emulateMedia({ media: "print" });
    await page.setViewportSize({ width: 720, height: 1000 });  // A4 less its margins, at 96 px an inch
    await page.waitForTimeout(150);
    const picture = page.locator(PICTURES[name]).first(), box = await picture.boundingBox();
    assert.ok(box !== null && box.width > 300 && box.x >= 0 && box.x + box.width <= 722, `${name}: ${JSON.stringify(box)}`);
    const { white, dark } = await shares(page, picture);
    assert.ok(white > 0.5, `${name} is printed on ${(100 * white).toFixed(0)} % white`);
    assert.ok(dark > 0.003, `${name} is blank on paper`);
    assert.ok(await page.evaluate(() => document.documentElement.scrollWidth) <= 722, `${name} is wider than the paper`);
    const tools = await page.evaluate(() => [...document.querySelectorAll(".undo, .views, .handle, .play, .space-tools, .scrub")].filter((one) => one.getClientRects().length > 0).map((one) => one.className));
    assert.deepEqual(tools, [], `${name}: tools are printed`);
    await page.setViewportSize({ width: 1440, height: 900 });
  }
});

await on("a finding is printed with its line and its working", {}, async (page) => {
  await page.locator(".conditions tbody tr:has-text('Tooth bending') td button").first().click();
  await page.waitForSelector("#working .result");
  await page.evaluate(() => window.dispatchEvent(new Event("beforeprint")));
  await page.emulateMedia({ media: "print" });
  assert.ok(await page.locator(".foot .line").first().isVisible());
  assert.ok(await page.locator("#working .result").isVisible());
  const boxes = await page.evaluate(() => [".rail", ".conditions", "#findings", "#working"].map((one) => document.querySelector(one).getBoundingClientRect()).map((one) => [one.top, one.bottom]));
  for (let i = 1; i < boxes.length; i++) assert.ok(boxes[i][0] >= boxes[i - 1][1] - 1, `what is printed overlaps: ${JSON.stringify(boxes)}`);
});

await close();
