// Can a person do the work in a real browser, by mouse and by keyboard alone?
//   node workbench.mjs <folder with node_modules> <command> <root of the tree> <folder for files>
import { readFileSync, writeFileSync } from "node:fs";
import assert from "node:assert/strict";
import { axe, bring, close, findings, GROUNDS, middle, on, root, show, told, verdict, VIEWS } from "./room.mjs";

await on("the pump goes to the other face and back, by mouse", {}, async (page, { read }) => {
  const before = read();
  const from = await middle(page, 5);
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(from.x + 60, from.y + 40, { steps: 4 });
  const zone = await page.locator(".zone").boundingBox();
  await page.mouse.move(zone.x + zone.width / 2, zone.y + zone.height / 2, { steps: 6 });
  await page.mouse.up();
  await told(page, "Done: hydraulic pump 1 to the front");
  await verdict(page, "does not hold");
  assert.ok((await findings(page)).some((one) => one.includes("hydraulic pump 1 demands ccw, and its pad turns cw")));
  assert.ok(read().includes("front: hydraulic pump 1"));
  assert.ok(await page.locator(".tags .st-refuse").count() > 0, "the picture shows no mark");
  await page.click("button:has-text('Undo')");
  await told(page, "Taken back: hydraulic pump 1 to the front");
  assert.equal(read(), before);
});

await on("a clash is seen, the best place is asked for and taken, a working is opened, by mouse", {}, async (page, { read }) => {
  const before = read();
  const from = await middle(page, 5), to = await middle(page, 2);
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(to.x, to.y, { steps: 10 });
  await page.mouse.up();
  await told(page, "hydraulic pump 1 to shaft 2");
  assert.ok((await findings(page)).some((one) => one.includes("the bodies of starter and hydraulic pump 1 overlap")));
  await page.click("#shaft-4");
  await page.locator(".rail .cell", { hasText: "hydraulic pump 1" }).click();
  await page.click(".handle button:has-text('Best place for it')");
  const best = page.locator(".wide tbody tr").first();
  await best.waitFor();
  assert.match(await best.textContent(), /shaft 5 .*rear.*holds/);
  await best.locator("button:has-text('Take it')").click();
  await verdict(page, "The drive holds");
  assert.equal(read(), before);
  await page.locator(".conditions tbody tr:has-text('Tooth bending') td button").nth(2).click();
  await page.waitForSelector("#working .tree summary");
  assert.match(await page.locator("#working h2").textContent(), /S_F.*@/);
  await page.locator("#working .tree li li summary").first().click();
  await page.waitForSelector("#working .tree li li[class=leaf], #working .tree li li li");
});

await on("the same work by keyboard alone", {}, async (page, { read }) => {
  const before = read();
  await page.focus(".rail");
  const at = () => page.locator(".rail [aria-selected=true]").textContent();
  for (let i = 0; i < 12 && (i === 0 || !(await at()).includes("hydraulic pump 1")); i++) await page.keyboard.press("ArrowRight");
  await page.keyboard.press("f");
  await told(page, "Done: hydraulic pump 1 to the front");
  await verdict(page, "does not hold");
  await page.keyboard.press("Control+z");
  await told(page, "Taken back");
  assert.equal(read(), before);
  await page.keyboard.press("Control+Shift+z");
  await told(page, "Done again");
  for (let i = 0; i < VIEWS.indexOf("Arrange"); i++) await page.keyboard.press("]");
  await page.waitForSelector(".wide tbody tr");
  for (let i = 0; i < 60; i++) {
    await page.keyboard.press("Tab");
    if ((await page.evaluate(() => document.activeElement?.textContent)) === "Take it") break;
  }
  await page.keyboard.press("Enter");
  await verdict(page, "The drive holds");
  assert.equal(read(), before);
  await page.keyboard.press("w");
  await page.waitForSelector("#working .tree summary");
  await page.focus("#scrubber");
  await page.keyboard.press("Home");
  assert.equal(await page.getAttribute("#scrubber", "aria-valuetext").then((one) => one.startsWith("crank")), true);
});

await on("the wheel and the keys change teeth, one act each", {}, async (page, { read }) => {
  const at = await middle(page, 2);
  await page.mouse.move(at.x, at.y);
  for (let i = 0; i < 3; i++) await page.mouse.wheel(0, -100);
  await told(page, "Done: idler 2: 44 to 47 teeth");
  assert.ok(read().includes("{teeth: 47, face: 14 mm}"));
  await page.focus(".rail");
  await page.keyboard.press("ArrowDown");
  await told(page, "47 to 46 teeth");
  await page.click("button:has-text('Undo')");
  await told(page, "Taken back: idler 2: 47 to 46 teeth");
  await page.click("button:has-text('Undo')");
  await told(page, "Taken back: idler 2: 44 to 47 teeth");
  assert.ok(read().includes("{teeth: 44, face: 14 mm}"));
});

await on("a shaft is dragged along its branch, on a slow machine too", {}, async (page, { context, read }) => {
  const slow = await context.newCDPSession(page);
  await slow.send("Emulation.setCPUThrottlingRate", { rate: 30 });
  const from = await middle(page, 6), to = await middle(page, 4);
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(to.x, to.y);
  await page.mouse.up();
  await slow.send("Emulation.setCPUThrottlingRate", { rate: 1 });
  await told(page, "to place 1 of its branch");
  assert.ok(read().indexOf("teeth: 55, face: 10 mm, front: fuel pump") < read().indexOf("teeth: 46, face: 12 mm"));
});

await on("an accessory and a shaft are dragged from box to box, and from branch to branch", {}, async (page, { read }) => {
  const before = read();
  const drag = async (a, b) => {
    const from = await middle(page, a), to = await middle(page, b);
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    await page.mouse.move(to.x, to.y, { steps: 8 });
    await page.mouse.up();
  };
  const back = async () => {
    await page.click("button:text-is('Undo')");
    await told(page, "Taken back");
    assert.equal(read(), before);
  };
  await drag(5, 8);
  await told(page, "hydraulic pump 1 to shaft 8");
  assert.match(read(), /input: \{teeth: 35, face: 10 mm, rear: hydraulic pump 1\}/);
  await back();
  await drag(2, 7);
  await told(page, "idler 2 to place 1 of drive/lp/box/clockwise");
  assert.ok(/lp:[\s\S]*clockwise:\s+- \{teeth: 44, face: 14 mm\}\s+- \{teeth: 57/.test(read().slice(read().indexOf("drive:"))), "it is not in the other box");
  await back();
  await drag(2, 6);
  await told(page, "idler 2 to place 3 of drive/hp/box/anticlockwise");
  await back();
});

await on("an idler goes to another branch and an accessory to another box, by keyboard alone", {}, async (page, { read }) => {
  const before = read();
  await page.focus(".rail");
  const go = async (words) => {
    await page.keyboard.press("Home");
    const at = async () => page.locator(".rail [aria-selected=true]").textContent();
    for (let i = 0; i < 8; i++) await page.keyboard.press("ArrowLeft");
    for (let i = 0; i < 8 && !(await at()).includes(words); i++) await page.keyboard.press("ArrowRight");
    assert.ok((await at()).includes(words), words);
  };
  await go("idler 2");
  await page.keyboard.press("m");
  await told(page, "idler 2 is held");
  await page.keyboard.press("Escape");
  await told(page, "It is let go");
  await page.keyboard.press("m");
  await go("fuel pump");
  await page.keyboard.press("m");
  await told(page, "Done: idler 2 to place 3 of drive/hp/box/anticlockwise");
  await page.keyboard.press("Control+z");
  await told(page, "Taken back");
  assert.equal(read(), before);
  await go("hydraulic pump 1");
  await page.keyboard.press("m");
  await go("lp box input");
  await page.keyboard.press("m");
  await told(page, "Done: hydraulic pump 1 to shaft 8");
  assert.match(read(), /input: \{teeth: 35, face: 10 mm, rear: hydraulic pump 1\}/);
  // Keys that do not wait for the answer are acts one after another, and none is refused as another hand's.
  for (const keys of ["Control+z", "Control+Shift+z", "Control+z"]) await page.keyboard.press(keys);
  await page.waitForFunction(async () => (await (await fetch("/api/state")).json()).serial === 7);  // two acts and their undo, then three
  await told(page, "Taken back: hydraulic pump 1");
  assert.ok(read() === before, "the file is not as it was");
});

await on("customary units are everywhere: findings, places, workings, changes", {}, async (page) => {
  const METRIC = /-?[\d.]+ (um|g\.mm|mm|N|kg|kW|N\.m|degC|MPa|m\/s)(?![\w./])/;
  await page.selectOption("label:has-text('Units') select", "us");
  await page.waitForFunction(() => /[\d.]+ (in|lbf|ft\/s|ft\/min|lbf\.in)\b/.test(document.querySelector("#findings")?.textContent ?? ""));
  await page.locator(".conditions tbody tr:has-text('Tooth bending') td button").nth(2).click();
  await page.waitForSelector("#working .tree summary");
  assert.match(await page.textContent("#working .tree"), /[\d.]+ ksi/);
  for (const name of VIEWS.filter((one) => one !== "Learn" && one !== "In space")) {
    await show(page, name);
    if (name === "Arrange") await page.waitForSelector(".wide tbody tr");
    assert.doesNotMatch(await page.evaluate(() => document.body.innerText), METRIC, name);
  }
});

await on("a finding is waived with a reason and opened again", {}, async (page, { read }) => {
  const before = read();
  const open = page.locator(".finding", { has: page.locator("button:has-text('waive')") }).nth(1);
  await open.locator("button:has-text('waive')").first().click();
  await page.fill(".waive label:has-text('Why') input", 'seen: "fine", and <b>so</b>');
  await page.fill(".waive label:has-text('whom') input", "A. Example");
  await page.click("button:has-text('Write the waiver')");
  await told(page, "Done: waived");
  assert.match(read(), /why: "seen: \\"fine\\", and <b>so<\/b>"/);
  await page.locator(".finding", { hasText: "remove the waiver" }).last().locator("button:has-text('remove the waiver')").click();
  await told(page, "the waiver of");
  assert.equal(read(), before);
});

await on("a link leads to the view, the condition, the shaft and the working; a wrong one to what there is", {}, async (page, { context }) => {
  await page.locator(".rail .cell").nth(4).click();
  await page.keyboard.press("w");
  await page.waitForSelector("#working .tree summary");
  await page.locator(".conditions thead button", { hasText: "climb" }).click();
  await show(page, "Section");
  await page.waitForFunction(() => /view=Section/.test(location.hash) && /in=climb/.test(location.hash));
  const said = await page.textContent("#working .result"), link = page.url();
  const other = await context.newPage();
  await other.goto(link);
  await other.waitForSelector("#working .tree summary");
  const stands = () => other.evaluate(() => ({ view: document.querySelector("nav[aria-label=views] [aria-pressed=true]").textContent, condition: document.querySelector(".title .shown span:last-child").textContent, hash: location.hash }));
  assert.deepEqual(await stands(), { view: "Section", condition: "climb", hash: new URL(link).hash });
  assert.equal(await other.textContent("#working .result"), said);
  await show(other, "Behind");
  assert.match(await other.textContent(".rail .chosen"), /hydraulic pump 1/);
  for (const name of VIEWS) {
    await other.evaluate((to) => { location.hash = new URLSearchParams({ view: to, in: "take-off" }).toString(); }, name);
    await other.waitForFunction((to) => document.querySelector("nav[aria-label=views] [aria-pressed=true]").textContent === to, name);
  }
  await other.evaluate(() => { location.hash = "view=Nowhere&in=never&at=drive/nowhere&why=%3Cimg%20src=x%20onerror=alert(1)%3E"; });
  await other.waitForFunction(() => document.querySelector("nav[aria-label=views] [aria-pressed=true]").textContent === "Compare");
  await show(other, "Behind");
  assert.equal((await stands()).condition, "take-off");
  assert.equal(await other.locator("img[src=x]").count(), 0);
  await other.close();
});

await on("two pages agree, and a change outside is told", {}, async (page, { context, file, read }) => {
  const second = await context.newPage();
  await second.goto(page.url());
  await second.waitForSelector(".rail .cell");
  await page.focus(".rail");
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("ArrowUp");
  await told(page, "to 36 teeth");
  await second.waitForFunction(() => !document.querySelector(".undo button")?.disabled);
  writeFileSync(file, read().replace("revision: C", "revision: K"));
  for (const one of [page, second]) await one.waitForFunction(() => document.querySelector(".title")?.textContent?.includes("K"));
  await told(page, "Another program changed the file");
  await second.close();
});

await on("the text is edited with live findings, and both sides of a conflict are kept", {}, async (page, { file, read }) => {
  await page.click("button:has-text('File')");
  await page.waitForSelector(".editor .cm-content");
  await page.click(".editor .cm-content");
  await page.keyboard.press("Control+End");
  await page.keyboard.type("nonsense: 1");
  await page.waitForFunction(() => document.querySelector(".wrong")?.textContent?.includes("nonsense"));
  writeFileSync(file, read().replace("revision: C", "revision: K"));
  await page.waitForSelector(".conflict");
  await page.click("button:has-text('Leave mine')");
  await page.waitForFunction(() => document.querySelector(".wrong")?.textContent?.includes("Nothing is refused"));
  await page.click(".editor .cm-content");
  await page.keyboard.press("Control+End");
  await page.keyboard.type("# a remark");
  await page.keyboard.press("Control+s");
  await told(page, "put into the file");
  assert.ok(read().includes("revision: K") && read().endsWith("# a remark"));
});

await on("a text that cannot be computed is said, and the page stays", {}, async (page, { file, read }) => {
  writeFileSync(file, read().replace("teeth: 35", "teeth: many"));
  await verdict(page, "cannot be computed");
  assert.ok(await page.locator(".gear").count() > 5);
  await page.click("button:has-text('Undo')");
  await verdict(page, "The drive holds");
});

await on("a file that could never be computed opens too", { text: "towershaft: 1\ntitel: x\n", until: "text=cannot be computed yet" }, async (page) => {
  // What is wrong stands in the bench, and beside it the text in which it is mended.
  await page.waitForFunction(() => document.querySelector(".unread")?.textContent?.includes("titel"));
  await page.locator(".unread button").first().click();
  await page.waitForFunction(() => document.querySelector(".wrong")?.textContent?.includes("titel"));
});

await on("the picture is drawn and turns", {}, async (page) => {
  const picture = page.locator(".picture svg");
  assert.ok((await picture.screenshot()).length > 20000, "the picture is nearly blank");
  assert.equal(await page.locator(".gear").evaluateAll((all) => all.filter((one) => (one.getAttribute("d") ?? "").length > 2000).length), 9);
  const turned = () => page.locator("[data-phase]").first().getAttribute("transform");
  const before = await turned();
  await page.keyboard.press("r");
  await page.waitForFunction((was) => document.querySelector("[data-phase]")?.getAttribute("transform") !== was, before);
  await page.keyboard.press("r");
  await page.selectOption("label:has-text('Units') select", "us");
  await page.waitForFunction(() => document.querySelector(".rail")?.textContent?.includes("hp"));
});

await on("the picture keeps its size whatever shaft is chosen, and no mark hides a clash", {}, async (page) => {
  const size = async () => JSON.stringify(await page.locator(".picture").boundingBox());
  const before = await size();
  for (let i = 0; i < 8; i++) {
    await page.locator(".rail .cell").nth(i).click();
    assert.equal(await size(), before, `shaft ${i + 1}`);
  }
  await page.locator(".rail .cell", { hasText: "hydraulic pump 1" }).click();
  await page.keyboard.press("f");
  await page.waitForSelector(".overlap");
  const clash = await page.locator(".overlap").first().boundingBox();
  for (const tag of await page.locator(".tag").all()) {
    const box = await tag.boundingBox();
    assert.ok(box.x > clash.x + clash.width || box.x + box.width < clash.x || box.y > clash.y + clash.height || box.y + box.height < clash.y, JSON.stringify([box, clash]));
  }
});

await on("with reduced motion a turn is one step", { still: true }, async (page) => {
  await page.click("button:has-text('Turn')");
  await page.waitForFunction(() => document.querySelector(".tools button:last-child")?.getAttribute("aria-pressed") === "false");
  const turned = await page.locator("[data-phase]").first().getAttribute("transform");
  await page.waitForTimeout(200);
  assert.equal(await page.locator("[data-phase]").first().getAttribute("transform"), turned);
});

/** Presses `key` until `found` says so, and tells what was said on the way. */
async function walk(page, key, most, found) {
  const said = [];
  for (let i = 0; i < most; i++) {
    await page.keyboard.press(key);
    said.push(await page.textContent(".cursor-says"));
    if (found(said.at(-1))) break;
  }
  return said;
}

await on("the necks are read mark by mark with the arrow keys, and as a table", {}, async (page) => {
  await page.click("nav[aria-label=views] button:has-text('Selectivity')");
  await page.focus(".chart-keys");
  await page.keyboard.press("Home");
  const first = await page.textContent(".cursor-says");
  assert.match(first, /^generator: runs with .* N\.m at /);
  const said = await walk(page, "ArrowRight", 6, (one) => one.includes("its neck breaks"));
  // as examples/bizjet.yaml has it
  assert.match(said.at(-1), /generator: its neck breaks at 60\.00 N\.m at the least/);
  await page.keyboard.press("Enter");
  await page.waitForSelector("#working .tree li");
  assert.match(await page.textContent("#working h2"), /T_break_least/);
  await walk(page, "ArrowDown", 8, (one) => one.startsWith("starter"));
  await page.keyboard.press("t");
  assert.match(await page.textContent("table.plain tr:has(th:text-is('hydraulic pump 1'))"), /idler 4/);
  assert.match(await page.textContent("table.plain tr:has(th:text-is('fuel pump'))"), /no neck/);
  await page.selectOption("label:has-text('Torques') select", "pad");
  assert.match(await page.textContent("table.plain tr:has(th:text-is('generator'))"), /60\.00 N\.m.*74\.00 N\.m/);
  await page.selectOption("label:has-text('Units') select", "us");
  // derived: 60 / (0.0254 * 0.45359237 * 9.80665) = 531.0
  assert.match(await page.textContent("table.plain tr:has(th:text-is('generator'))"), /531\.0 lbf\.in/);
});

await on("the float of three schemes and the shaft lines are drawn and told", {}, async (page) => {
  await page.click("nav[aria-label=views] button:has-text('Float')");
  await page.waitForSelector(".float table");
  assert.equal(await page.locator(".float").count(), 2);
  assert.match(await page.locator(".float h3").first().textContent(), /hp spool moves along by .0\.200 mm to 0\.700 mm; splined stub, which bears it/);
  await page.locator(".float td button.link").first().click();
  await page.waitForSelector("#working .tree li");
  await page.focus(".chart-keys");
  assert.match((await walk(page, "ArrowRight", 4, (one) => one.includes("works to"))).at(-1), /fixed bevel: works to 2\.08 mm; beyond, less than one pair/);
  await page.click("nav[aria-label=views] button:has-text('Section')");
  await page.waitForSelector(".cut-metal");
  assert.ok(await page.locator(".cut-metal").count() > 20 && await page.locator(".ring-cut").count() > 10);
  await page.focus(".chart-keys");
  await page.keyboard.press("End");
  assert.match(await page.textContent(".cursor-says"), /fuel pump \+ oil pump pack: /);
  await page.keyboard.press("t");
  assert.match(await page.textContent("table.plain tr:has(th:text-is('hp box input'))"), /cylindrical roller/);
});

await on("a part is made to fail, and what stops is shown", {}, async (page) => {
  await page.click("nav[aria-label=views] button:has-text('Effects')");
  await page.waitForSelector(".effects-face");
  await page.selectOption("label:has-text('Part') select", { label: "idler 2" });
  await page.click(".failing button:has-text('sheared')");
  const goes = async (name) => (await page.textContent(`.outcome tr:has(th:text-is('${name}'))`)).replace(/^\d+/, "");
  assert.match(await goes("generator"), /x stops/);
  assert.match(await goes("fuel pump"), /goes on/);
  assert.equal(await page.locator(".effects-face .pad.stops").count(), 2);
  const place = await page.locator(".effects-face .number").nth(4).boundingBox();
  await page.mouse.click(place.x + 10, place.y + 10);
  assert.match(await page.textContent(".outcome"), /^shaft of hydraulic pump 1/);
  await page.click("details:has-text('oil lost') summary");
  await page.locator("details[open] .causes button").first().click();
  assert.match(await page.textContent(".outcome"), /[Oo]il lost/);
  assert.equal(await page.locator(".matrix tbody tr").count(), 94);
});

await on("a learner is led through the drive and asked, by keyboard alone", {}, async (page) => {
  await page.click("nav[aria-label=views] button:has-text('Learn')");
  await page.waitForSelector(".learn .choices button");
  await page.waitForFunction(() => (document.querySelector(".learn .moving.on-screen")?.naturalWidth ?? 0) > 0);
  const before = await page.locator(".learn .moving.on-screen").screenshot();
  await page.waitForTimeout(400);
  assert.ok(!before.equals(await page.locator(".learn .moving.on-screen").screenshot()), "it moves");
  assert.match(await page.textContent("#step-title"), /^1 of 4/);
  for (const one of await page.locator(".learn .step").all()) assert.ok(await one.evaluate((it) => it.getBoundingClientRect().height > 60 && it.parentElement.scrollHeight <= it.parentElement.clientHeight + 1), "what is said is cut off");
  await page.focus("button:has-text('Next step')");
  await page.keyboard.press("Enter");
  assert.match(await page.textContent("#step-title"), /^2 of 4: How the power goes and comes/);
  const brief = await page.evaluate(async () => (await fetch("/api/brief")).json());
  const right = brief.questions[0].choices.findIndex((one) => one.right);
  const answers = page.locator(".learn .choices button");
  await answers.nth(1 - right).focus();
  await page.keyboard.press("Enter");
  assert.match(await page.textContent(".learn [role=status]"), /^Not so: /);
  await answers.nth(right).focus();
  await page.keyboard.press("Enter");
  assert.match(await page.textContent(".learn [role=status]"), /^Right\. /);
  assert.match(await page.textContent(".learn .told"), /0 of 1 right at the first try/);
  await page.focus("button:has-text('Next question')");
  await page.keyboard.press("Enter");
  assert.match(await page.textContent("#question-title"), /^Question 2 of 14/);
  assert.equal(await page.textContent(".learn [role=status]"), "");
});

// Sixty ways to smuggle a script through a name, in every name of the file.
const HANDLERS = ["onload", "onerror", "onclick", "onmouseover", "onfocus", "onanimationend", "ontoggle", "onpointerdown", "onbegin", "onwheel"];
const STRANGE = [
  "<script>alert(1)</script>", "</script><script>alert(2)</script>", "<ScRiPt src=//x>", "<script\t>alert(3)</script>", "\u003cscript>alert(4)</script>",
  "</title><script>alert(5)</script>", "</textarea><script>alert(6)</script>", "</style><script>alert(7)</script>", "<!--<script>alert(8)-->", "]]><script>alert(9)</script>",
  ...HANDLERS.map((name, index) => `<img src=x ${name}=alert(${10 + index})>`), ...HANDLERS.map((name, index) => `"><svg ${name}=alert(${20 + index})>`),
  ...HANDLERS.map((name, index) => `' ${name}='alert(${30 + index})`),
  "javascript:alert(40)", "JaVaScRiPt:alert(41)", "data:text/html,<script>alert(42)</script>", "<a href='javascript:alert(43)'>x</a>", "<iframe srcdoc='<script>alert(44)</script>'>",
  "<object data=x>", "<embed src=x>", "<base href=//x>", "<meta http-equiv=refresh content='0;url=x'>", "<link rel=stylesheet href=//x>",
  "<form action=x><button>b</button></form>", "<math><mtext></mtext><mglyph><style></math>", "<template><img src=x></template>", "{{7*7}}", "${alert(54)}",
  "&lt;script&gt;alert(55)&lt;/script&gt;", "&#60;img src=x&#62;", "%3Cscript%3Ealert(57)%3C/script%3E", "\\x3cscript\\x3ealert(58)", "__proto__", 
];
// A name has at most 40 bytes, none of them '/', ':' or '@'; title and revision take whatever there is.
const fits = STRANGE.filter((one) => one.length <= 40 && !/[/:@]/.test(one));
const NAMES = ["control alternator", "oil pump pack", "hydraulic pump 1", "hydraulic pump 2", "breather", "climb", "cruise", "flight idle", "red line", "light-off", "engine mount"];
const named = fits.filter((_, index) => index % Math.floor(fits.length / NAMES.length) === 0).slice(0, NAMES.length);
const rest = STRANGE.filter((one) => !named.includes(one));
let hostile = readFileSync(`${root}/examples/bizjet.yaml`, "utf8")
  .replace("title: Corncrake 33, accessory drive", () => `title: ${JSON.stringify(rest.slice(0, 25).join(" "))}`)
  .replace("revision: C", () => `revision: ${JSON.stringify(rest.slice(25).join(" "))}`)
  .replace(/why: "two jets[^"]*"/, () => `why: ${JSON.stringify(STRANGE.slice(0, 4).join(" "))}`)
  .replace("by: A. Example", () => `by: ${JSON.stringify(STRANGE[43])}`);
NAMES.forEach((name, index) => { hostile = hostile.replace(new RegExp(`\\b${name}\\b`, "g"), () => JSON.stringify(named[index])); });
await on("sixty names that look like scripts stay names in every view", { text: hostile }, async (page) => {
  assert.ok(STRANGE.length === 60 && named.length === NAMES.length, `${STRANGE.length} strings, ${named.length} names`);
  const seen = [];
  const look = async () => {
    assert.deepEqual(await page.evaluate(() => [...document.querySelectorAll("script:not([src]), img:not([src^='/api/picture'],[src^='/api/moving']), iframe, object, embed, base, meta[http-equiv], form:not(.waive), template, math, [style*='x']:not(.times *, .in-space canvas), a[href^='javascript' i], link[href*='//']")].map((one) => one.outerHTML)), []);
    assert.deepEqual(await page.evaluate((names) => [...document.querySelectorAll("*")].filter((one) => names.some((name) => one.hasAttribute(name))).map((one) => one.outerHTML), HANDLERS), []);
    seen.push(await page.evaluate(() => document.body.textContent));
  };
  for (const name of VIEWS) {
    await show(page, name);
    await look();
  }
  await page.click("nav[aria-label=views] button:has-text('Effects')");
  await page.waitForSelector(".matrix tbody tr");
  await look();
  await page.click("nav[aria-label=views] button:has-text('Behind')");
  await page.click("button:has-text('Table')");
  await page.waitForSelector("table.plain caption");
  await look();
  await page.click("nav[aria-label=leaves] button:has-text('File')");
  await page.waitForSelector(".editor .cm-content");
  await look();
  const all = seen.join(" ").replace(/\s+/g, " ");
  const lost = STRANGE.filter((one) => !all.includes(one.replace(/\s+/g, " ")));
  assert.deepEqual(lost, [], "these were not shown as they are");
});

await on("no fault of access in any view and ground", {}, async (page) => {
  await page.locator(".rail .cell").nth(2).click();
  await page.keyboard.press("w");
  await page.waitForSelector("#working .tree summary");
  await bring(page);
  // All that is said of the page by its names, roles and order is the same in every ground where these are: that is asserted, and
  // the rules of colour are asked again.
  const COLOUR = { type: "rule", values: ["color-contrast", "link-in-text-block"] }, shapes = new Map();
  const shape = () => page.evaluate(() => [...document.querySelectorAll("body *")].map((one) => `${one.localName} ${[...one.attributes].filter((of) => /^(role|aria-.*|id|class|tabindex|type|for|name|href|title|alt|scope|disabled|hidden|lang|open|checked|headers|label|contenteditable)$/.test(of.name)).map((of) => `${of.name}=${of.value}`).join(" ")} ${[...one.childNodes].filter((of) => of.nodeType === 3).map((of) => of.data).join("")}`).join("\n"));
  const judge = async (name, ground, seen) => {
    const now = await shape(), known = shapes.get(name) === now;
    shapes.set(name, now);
    await axe(page, `${name}, ${ground}`, seen, known ? COLOUR : null);
    again += known;
  };
  let again = 0;
  for (const ground of GROUNDS) {
    await page.selectOption("label:has-text('Colours') select", ground);
    for (const name of VIEWS) {
      await show(page, name);
      await judge(name, ground, name === VIEWS[0] ? [] : [".conditions", "#reading"]);
    }
    await show(page, "Behind");
    await page.click("button:has-text('Table')");
    await judge("table", ground, [".conditions", "#reading"]);
    await page.click("button:has-text('Table')");
    await page.click("nav[aria-label=leaves] button:has-text('File')");
    await page.waitForSelector(".editor .cm-content");
    await judge("file", ground, [".conditions", ".bench"]);
    await page.click("nav[aria-label=leaves] button:has-text('Findings')");
    await page.keyboard.press("?");
    await judge("keys", ground, [".conditions", "#reading", ".bench"]);
    await page.keyboard.press("Escape");
  }
  console.log(`  ${again} of ${GROUNDS.length * shapes.size} pages were as in the ground before`);
});

for (const scheme of ["light", "dark"])
  await on(`with the colours of the desktop, ${scheme}, what is chosen and drawn is seen`, { forced: scheme }, async (page) => {
    await page.selectOption("label:has-text('Colours') select", scheme === "light" ? "dark" : "light");  // must not matter
    await page.locator(".rail .cell").nth(3).click();
    const seen = await page.evaluate(() => {
      const of = (where, what) => getComputedStyle(document.querySelector(where))[what];
      const tabs = [...document.querySelectorAll(".views button")].map((one) => getComputedStyle(one).borderBottomColor);
      return { ground: of("body", "backgroundColor"), gear: of(".gear", "stroke"), band: of(".ribbons .band", "stroke"), outline: of(".rail .chosen", "outlineStyle"),
        others: of(".rail .cell:not(.chosen)", "outlineStyle"), here: of(".conditions td.here", "borderLeftStyle"), tabs: new Set(tabs).size };
    });
    assert.notEqual(seen.gear, seen.ground, "gears are drawn in the colour of the ground");
    assert.notEqual(seen.band, seen.ground, "ribbons are drawn in the colour of the ground");
    assert.deepEqual([seen.outline, seen.others, seen.here, seen.tabs], ["solid", "none", "solid", 2]);
  });

await on("nothing is cut off at 900 pixels", { size: { width: 900, height: 900 }, example: "large" }, async (page) => {
  const wide = await page.evaluate(() => document.documentElement.scrollWidth);
  assert.ok(wide <= 900, `the page is ${wide} px wide`);
  assert.ok((await page.locator("#findings").boundingBox()).height > 100);
});

await close();
