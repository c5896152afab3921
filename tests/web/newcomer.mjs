// Does somebody who has never seen it find the way?  Only what stands on the screen is used, and all
// that is needed next must be in sight without scrolling.
//   node newcomer.mjs <folder with node_modules> <command> <root of the tree> <folder for files>
import assert from "node:assert/strict";
import { close, on, verdict } from "./room.mjs";

/** The one thing on the screen that says this, and it can be seen and reached there. */
async function seen(page, words) {
  const one = page.getByText(words).filter({ visible: true }).first();
  await one.waitFor();
  const box = await one.boundingBox(), size = page.viewportSize();
  assert.ok(box.x >= 0 && box.y >= 0 && box.x + box.width <= size.width && box.y + box.height <= size.height, `${words} is off the screen`);
  const met = await one.evaluate((it, at) => { const top = document.elementFromPoint(at[0], at[1]); return top !== null && (it.contains(top) || top.contains(it) || top.closest(".picture") !== null); }, [box.x + box.width / 2, box.y + box.height / 2]);
  assert.ok(met, `${words} is covered`);
  return one;
}

async function press(page, name) {
  const one = page.getByRole("button", { name, exact: true }).filter({ visible: true }).first();
  await one.waitFor();
  const box = await one.boundingBox(), size = page.viewportSize();
  assert.ok(box.y >= 0 && box.y + box.height <= size.height, `the button ${name} is off the screen`);
  await one.click();
}

await on("the errand of a newcomer, by what the screen says", {}, async (page, { read }) => {
  const before = read();
  // The hint says how; the name in the picture says which.
  await seen(page, /Drag it to another place or to the other face/);
  const name = await (await seen(page, "hydraulic pump 1, rear")).boundingBox();
  const circle = await page.locator(".picture text", { hasText: /^5$/ }).last().boundingBox();
  assert.ok(Math.hypot(name.x + name.width / 2 - circle.x, name.y - circle.y) < 160, "the name is far from its shaft");
  await page.mouse.move(circle.x + 4, circle.y + 6);
  await page.mouse.down();
  await page.mouse.move(circle.x + 60, circle.y + 40, { steps: 5 });
  const zone = await (await seen(page, "drop here: to the front")).boundingBox();
  await page.mouse.move(zone.x + zone.width / 2, zone.y + zone.height / 2, { steps: 5 });
  await page.mouse.up();
  // What broke is said beside the picture, listed, and drawn.
  await seen(page, /Done: hydraulic pump 1 to the front\. It broke:/);
  await verdict(page, "does not hold");
  await seen(page, /hydraulic pump 1 demands ccw, and its pad turns cw/);
  await seen(page, /the bodies of fuel pump and hydraulic pump 1 overlap by 4 mm on the front face/);
  assert.equal(await page.locator(".picture path.overlap").count(), 1);
  const lens = await page.locator(".picture path.overlap").boundingBox();
  assert.ok(lens.width > 6 && lens.height > 6, "the clash is too small to be seen");
  assert.deepEqual(await page.locator(".finding:has(.fresh) h3").allTextContents().then((all) => all.map((one) => one.replace(/new.*/, ""))), ["Sense at the pad", "Bodies on one face"]);
  await press(page, "Undo");
  await seen(page, /Taken back: hydraulic pump 1 to the front\. It closed:/);
  assert.equal(read(), before);
  // The best place, from where it should not be.
  await press(page, "hydraulic pump 1 to the front");
  await verdict(page, "does not hold");
  await press(page, "Best place for it");
  await seen(page, /One of them holds; the best is shaft 5 \(hydraulic pump 1\), rear\./);
  await (await seen(page, /^Take it$/)).click();
  await verdict(page, "The drive holds");
  assert.equal(read(), before);
  await press(page, "Best place for it");
  await seen(page, /the best is shaft 5 \(hydraulic pump 1\), rear, where it stands now/);
  await (await seen(page, /^Keep it here$/)).click();
  await seen(page, /hydraulic pump 1 stays on shaft 5/);
  assert.equal(read(), before);
  // The working of a margin.
  await seen(page, /choose a margin \(under the picture\)/);
  const row = page.getByRole("row", { name: /Tooth bending/ }).filter({ visible: true }).first();
  await row.getByRole("button", { name: /at|open its working/ }).nth(0).click();
  await seen(page, /Tooth bending of .+ at crank: 1\.25 is demanded, so the margin is/);
  await seen(page, /safety against tooth breakage/);
  await seen(page, /ISO 10300-3/);
});

await close();
