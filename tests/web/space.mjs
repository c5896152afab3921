// Does the drive stand in space: drawn, cut, drawn apart, one part alone, with the same choice everywhere?
//   node space.mjs <folder with node_modules> <command> <root of the tree> <folder for files>
import assert from "node:assert/strict";
import { close, GROUNDS, on, told } from "./room.mjs";

const open = async (page) => {
  await page.click("nav[aria-label=views] button:text-is('In space')");
  await page.waitForSelector(".in-space canvas");
  await page.waitForTimeout(400);
};

/** Counts the pixels that are not of the ground, and tells the picture apart from another by a sum. */
const seen = async (page) => {
  await page.waitForTimeout(250);
  return page.locator(".in-space canvas").evaluate((one) => {
    const flat = document.createElement("canvas");
    [flat.width, flat.height] = [one.width, one.height];
    const pen = flat.getContext("2d");
    pen.drawImage(one, 0, 0);
    const data = pen.getImageData(0, 0, flat.width, flat.height).data;
    let count = 0, sum = 0;
    for (let i = 0; i < data.length; i += 4) {
      const other = Math.abs(data[i] - data[0]) + Math.abs(data[i + 1] - data[1]) + Math.abs(data[i + 2] - data[2]) > 24;
      count += other;
      if (other) sum = (sum + (i + 1) * (data[i] + data[i + 1] + data[i + 2])) % 1000000007;
    }
    return { count, sum };
  });
};

await on("the drive stands in space in every ground and is not blank", {}, async (page) => {
  await open(page);
  for (const ground of GROUNDS) {
    await page.selectOption("label:has-text('Colours') select", ground);
    assert.ok((await seen(page)).count > 9000, `blank on ${ground}`);
  }
});

await on("it is cut, drawn apart, isolated and turned, and every part is counted", {}, async (page) => {
  await open(page);
  const whole = await seen(page);
  await page.selectOption("label:has-text('Cut') select", "across");
  await page.fill("input[aria-label='where it is cut']", "40");
  const cut = await seen(page);
  assert.ok(cut.count < whole.count * 0.97, "the cut takes nothing away");
  await page.selectOption("label:has-text('Cut') select", "none");
  await page.fill("input[aria-label='drawn apart']", "100");
  assert.notEqual((await seen(page)).sum, whole.sum);
  await page.fill("input[aria-label='drawn apart']", "0");
  assert.equal((await seen(page)).sum, whole.sum, "it does not come together again");
  await page.locator(".rail .cell").nth(4).click();
  const chosen = await seen(page);
  assert.notEqual(chosen.sum, whole.sum, "the chosen shaft is not marked");
  await page.click("button:has-text('alone')");
  assert.ok((await seen(page)).count < whole.count * 0.6, "others are still there");
  await page.click("button:has-text('alone')");
  await page.keyboard.press("r");
  await page.waitForTimeout(1500);
  await page.keyboard.press("r");
  assert.notEqual((await seen(page)).sum, chosen.sum, "nothing has turned");
  await page.click(".below button:text-is('Table')");
  const solids = await page.evaluate(async () => (await fetch("/api/solids")).json());
  assert.equal(await page.locator(".wide tbody tr").count(), solids.parts.length);
});

await on("it is turned about by mouse and by keys, and a part under the pointer is chosen everywhere", {}, async (page) => {
  await open(page);
  const before = await seen(page);
  await page.focus(".in-space");
  await page.keyboard.press("ArrowLeft");
  await told(page, "The view moved");
  const after = await seen(page);
  assert.notEqual(after.sum, before.sum);
  const box = await page.locator(".in-space canvas").boundingBox();
  await page.mouse.move(box.x + 40, box.y + 40);
  await page.mouse.down();
  await page.mouse.move(box.x + 140, box.y + 60, { steps: 5 });
  await page.mouse.up();
  assert.notEqual((await seen(page)).sum, after.sum);
  await page.click("button:text-is('behind')");
  await page.waitForTimeout(200);
  for (let i = 0; i < 400 && await page.locator(".rail [aria-selected=true]").count() === 0; i++)
    await page.mouse.click(box.x + box.width * (0.3 + 0.4 * ((i * 7) % 20) / 20), box.y + box.height * (0.15 + 0.7 * Math.floor(i / 20) / 20));
  const name = await page.textContent(".rail [aria-selected=true] b");
  assert.ok(name.length > 2);
  await page.click("nav[aria-label=views] button:text-is('Behind')");
  assert.equal(await page.textContent(".rail [aria-selected=true] b"), name);
});

await close();
