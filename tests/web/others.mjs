// Is the drive set beside others: as it was, in git's and other files, and as it could be?
//   node others.mjs <folder with node_modules> <command> <root of the tree> <folder for files>
import { execFileSync } from "node:child_process";
import { rmSync, writeFileSync } from "node:fs";
import assert from "node:assert/strict";
import { close, folder, on, told, verdict } from "./room.mjs";

const open = (page, name) => page.click(`nav[aria-label=views] button:text-is('${name}')`);

await on("what moved is drawn over what there was, back to any act", {}, async (page) => {
  await page.locator(".rail .cell").nth(5).click();
  await page.keyboard.press(",");
  await told(page, "Done:");
  await page.locator(".rail .cell", { hasText: "idler 2" }).click();
  await page.click("button[aria-label='one tooth more']");
  await told(page, "44 to 45 teeth");
  await open(page, "Compare");
  await page.waitForSelector(".overlay");
  assert.match(await page.textContent(".overlay figcaption"), /hydraulic pump 1 moved/);
  assert.ok(await page.locator(".was.changed").count() >= 2);
  assert.ok(await page.locator(".wide tbody tr").count() > 3);
  // Before the last act only the idler was another; what was moved before does not count.
  await page.selectOption(".wide select", { label: (await page.locator(".wide option").allTextContents()).find((one) => one.startsWith("2: before")) });
  await page.waitForFunction(() => !/fuel pump \+ oil pump pack moved; /.test(document.querySelector(".overlay figcaption").textContent) || document.querySelectorAll(".was.lost").length === 0);
  await page.selectOption(".wide select", { label: (await page.locator(".wide option").allTextContents()).find((one) => one.startsWith("1: before")) });
  await page.waitForFunction(() => /hydraulic pump 1 moved/.test(document.querySelector(".overlay figcaption").textContent));
});

await on("commits of git and other files of the folder are compared with", {}, async (page, { file, read }) => {
  const around = { ...process.env, HOME: folder };
  for (const who of ["AUTHOR", "COMMITTER"]) Object.assign(around, { [`GIT_${who}_NAME`]: "A. Example", [`GIT_${who}_EMAIL`]: "a@example.invalid", [`GIT_${who}_DATE`]: "2026-05-01T12:00:00Z" });
  const git = (...words) => execFileSync("git", words, { cwd: folder, env: around });
  git("init", "-q");
  git("add", file);
  git("commit", "-q", "-m", "As it was sent <img src=x onerror=alert(1)>");
  writeFileSync(`${folder}/sister.yaml`, read().replace("teeth: 44, face: 14 mm", "teeth: 52, face: 14 mm"));
  await open(page, "Compare");
  await page.waitForSelector("optgroup[label='commits of git'] option", { state: "attached" });
  await page.selectOption(".wide select", { label: "sister.yaml" });
  await page.waitForSelector(".was.changed", { state: "attached" });
  const commit = await page.locator("optgroup[label='commits of git'] option").first().textContent();
  assert.match(commit, /2026-05-01 As it was sent <img/);
  await page.selectOption(".wide select", { label: commit });
  await page.waitForFunction(() => document.querySelector(".wide").textContent.includes("Nothing has changed."));
  rmSync(`${folder}/.git`, { recursive: true, force: true });
  rmSync(`${folder}/sister.yaml`);
});

await on("a search closes in before the eyes, and any answer that holds is taken", {}, async (page, { read }) => {
  const before = read();
  const heard = [];
  await page.exposeFunction("heard", (data) => heard.push(JSON.parse(data)));
  await page.evaluate(() => { const stream = new EventSource("/api/events"); stream.onmessage = (event) => window.heard(event.data); window.kept = stream; });
  await open(page, "Arrange");
  await page.click("button:text-is('Search')");
  await page.waitForSelector(".candidates article svg", { timeout: 60000 });
  assert.ok(heard.some((one) => one.search === 1 && one.progress?.count > 0), "no progress was told");
  const last = heard.filter((one) => one.progress?.found).at(-1).progress;
  assert.ok(last.bound <= last.found + 1e-9);
  assert.match(await page.textContent(".closing"), /nothing is lighter than .* kg/);
  const count = await page.locator(".candidates article").count();
  assert.ok(count >= 2, "one candidate is no choice");
  await page.waitForFunction((want) => document.querySelectorAll(".candidates article svg").length >= want, count);
  const second = page.locator(".candidates article").nth(1).locator("button");
  assert.equal(await second.isEnabled(), true);
  await second.click();
  await told(page, "Arrangement 2 was put into the file");
  await verdict(page, "The drive holds");
  assert.notEqual(read(), before);
  await page.click("button:text-is('Undo')");
  await told(page, "Taken back: an arrangement of the search taken");
  assert.equal(read(), before);
});

await on("a long search is stopped with what it has", { example: "large" }, async (page) => {
  await open(page, "Arrange");
  await page.click("button:text-is('Search')");
  await page.waitForSelector("button:has-text('Stop with what it has')");
  await page.waitForTimeout(400);
  await page.click("button:has-text('Stop with what it has')");
  await page.waitForFunction(() => /arrangements that differ|No arrangement|\.bad/.test(document.querySelector(".searchall").innerHTML) && !document.querySelector(".searchall").textContent.includes("Stop with"), null, { timeout: 30000 });
});

await close();
