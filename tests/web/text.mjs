// Does the text of the file get help at every place, and lose nothing when two hands write it?
//   node text.mjs <folder with node_modules> <command> <root of the tree> <folder for files>
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import assert from "node:assert/strict";
import { close, folder, on, place, root, told, verdict } from "./room.mjs";

const require = createRequire(`${place}/`);
const esbuild = require("esbuild");

/** A module of the page by itself. */
async function piece(name) {
  const file = `${folder}/${name.replace(/\W/g, "_")}.mjs`;
  writeFileSync(file, esbuild.transformSync(readFileSync(`${root}/web/src/${name}.ts`, "utf8"), { loader: "ts", format: "esm" }).code);
  return import(file);
}

function check(name, work) {
  work();
  console.log(`passed: ${name}`);
}

const { explain, offersAt, pathUnder, schemaAt } = await piece("panel/notation");
const notation = JSON.parse(readFileSync(`${root}/docs/schema/drive.schema.json`, "utf8"));
const drives = readdirSync(`${root}/examples`).filter((name) => name.endsWith(".yaml"))
  .map((name) => readFileSync(`${root}/examples/${name}`, "utf8")).filter((text) => /^drive:/m.test(text));
const bizjet = readFileSync(`${root}/examples/bizjet.yaml`, "utf8");

check("every key of every example is found in the notation, and what it means", () => {
  let count = 0;
  for (const text of drives) {
    let from = 0;
    for (const row of text.split("\n")) {
      for (const found of row.replace(/(^|\s)#.*$/, "").matchAll(/(?:^|[{,])[ -]*("[^"]*"|[^\s#{[\]},"':-][^#{[\]},"':]*?)\s*:(?=\s|$)/g)) {
        const path = pathUnder(text, from + found.index + found[0].length - 2);
        assert.ok(path !== null && schemaAt(notation, path).length > 0, `${row}: ${JSON.stringify(path)}`);
        assert.equal(path.at(-1), found[1].replace(/^"|"$/g, ""), row);
        assert.ok((explain(notation, path)?.says ?? "") !== "" || path.length > 2, row);
        count++;
      }
      from += row.length + 1;
    }
  }
  assert.ok(drives.length >= 4 && count > 1500, `${count} keys in ${drives.length} files`);
});

const offered = (text) => {
  const at = text.indexOf("\u2038");
  return (offersAt(notation, text.replace("\u2038", ""), at)?.offers ?? []).map((one) => one.label);
};

check("what is offered fits the place", () => {
  assert.deepEqual(offered(bizjet.replace("turns: ccw\n    speed", "turns: \u2038\n    speed")), ["cw", "ccw", "either", "unknown"]);
  const rear = offered(bizjet.replace("rear: hydraulic pump 1", "rear: hy\u2038"));
  assert.ok(rear.includes("hydraulic pump 2") && !rear.includes("hp"));
  const starter = offered(bizjet.replace("    for: start\n", "    for: start\n    \u2038\n"));
  assert.ok(starter.includes("power") && !starter.includes("turns") && !starter.includes("for"), "what stands there is offered again");
  const conditions = offered(bizjet.replace("{always: ..15500 rpm}", "{always: ..15500 rpm, \u2038}"));
  assert.ok(conditions.includes("red line") && !conditions.includes("always"));
  assert.ok(offered("\u2038").includes("conditions"));
  assert.deepEqual(offered("# \u2038"), []);
  assert.deepEqual(offered("drive:\n  hp:\n    box:\n      lubrication: \u2038"), ["jets", "dip"]);
});

const { threeWays, together } = await piece("panel/merge");
check("twenty thousand pairs of changes come together, and no line of either is lost", () => {
  let seed = 1;
  const pick = (n) => {
    seed = (Math.imul(seed, 1103515245) + 12345) & 0x7fffffff;
    return (seed >> 8) % n;
  };
  const changed = (rows) => {
    const out = [...rows];
    for (let k = 0; k <= pick(4); k++) {
      const at = pick(out.length + 1), what = pick(3);
      if (what === 0) out.splice(at, 0, `new ${pick(50)}`);
      else if (what === 1) out.splice(at, 1);
      else if (at < out.length) out[at] = `other ${pick(50)}`;
    }
    return out;
  };
  let both = 0;
  for (let round = 0; round < 20000; round++) {
    const base = Array.from({ length: pick(12) }, () => `line ${pick(6)}`);
    const [old, mine, theirs] = [base, changed(base), changed(base)].map((rows) => rows.join("\n"));
    const pieces = threeWays(old, mine, theirs);
    const side = (name) => pieces.flatMap((one) => (one.kind === "same" ? one.base : one[name])).join("\n");
    assert.deepEqual([side("base"), side("mine"), side("theirs")], [old, mine, theirs]);
    assert.equal(together(threeWays(old, mine, old), []), mine);
    assert.equal(together(threeWays(old, old, theirs), []), theirs);
    const open = pieces.filter((one) => one.kind === "both").length;
    both += open > 0;
    assert.equal(together(pieces, []) === null, open > 0);
    assert.equal(together(pieces.map((one) => (one.kind === "same" ? one : { ...one, kind: "both" })), pieces.map(() => "mine")), mine);
  }
  assert.ok(both > 1000 && both < 19000, `${both} met`);
});

async function openText(page) {
  await page.click("nav[aria-label=leaves] button:has-text('File')");
  await page.click(".editor .cm-content");
}

/** The caret goes to the end of the line that has `words`. */
async function goTo(page, words) {
  await page.evaluate((want) => {
    const rows = [...document.querySelector(".editor").shadowRoot.querySelectorAll(".cm-line")];
    const row = rows.find((one) => one.textContent.includes(want));
    row.scrollIntoView({ block: "center" });
    const range = document.createRange();
    range.selectNodeContents(row);
    range.collapse(false);
    const pick = document.getSelection();
    pick.removeAllRanges();
    pick.addRange(range);
  }, words);
  await page.waitForTimeout(100);
}

const offers = (page) => page.evaluate(() => [...document.querySelector(".editor").shadowRoot.querySelectorAll(".cm-tooltip-autocomplete li")].map((one) => one.textContent));
const inText = (page, want) => page.waitForFunction((words) => document.querySelector(".editor").shadowRoot.querySelector(".cm-content").textContent.includes(words), want);

await on("keys and values are offered, explained and taken in the editor", {}, async (page, { read }) => {
  await openText(page);
  await page.keyboard.press("Control+End");
  await page.keyboard.type("\nmeth");
  await page.waitForFunction(() => document.querySelector(".editor").shadowRoot.querySelector(".cm-completionInfo") !== null);
  assert.match((await offers(page))[0], /^method/);
  await page.waitForTimeout(150);
  await page.keyboard.press("Enter");
  await inText(page, "method:");
  await page.keyboard.type("te");
  await page.waitForFunction(() => document.querySelector(".editor").shadowRoot.querySelectorAll(".cm-tooltip-autocomplete li").length > 0);
  await page.keyboard.press("Escape");
  await page.keyboard.press("F1");
  await page.keyboard.press("Control+Home");
  await page.keyboard.press("Control+Home");
  for (let i = 0; i < 5; i++) await page.keyboard.press("ArrowDown");
  await page.keyboard.press("F1");
  await told(page, "What the drive is called on every page.");
  const says = await page.evaluate(() => document.querySelector(".editor").shadowRoot.querySelector(".cm-says").textContent);
  assert.match(says, /^title/);
  assert.equal(read().includes("method: \n  te"), false, "nothing goes into the file by itself");
});

await on("the pointer over a word tells what it means", {}, async (page) => {
  await openText(page);
  await page.keyboard.press("Control+Home");
  await page.waitForTimeout(800); // the gutter has its width when the text was judged
  const word = await page.evaluate(() => {
    const row = [...document.querySelector(".editor").shadowRoot.querySelectorAll(".cm-line")].find((one) => one.textContent.startsWith("sight:"));
    const box = row.getBoundingClientRect();
    return { x: box.left + 14, y: box.top + box.height / 2 };
  });
  await page.mouse.move(word.x, word.y);
  await page.mouse.move(word.x + 2, word.y);
  await page.waitForFunction(() => /From where every clock angle.*Fits: from behind, from front.*looking forward/.test(document.querySelector(".editor").shadowRoot.querySelector(".cm-says")?.textContent ?? ""));
});

await on("what is wrong is marked at its place while it is written", {}, async (page) => {
  await openText(page);
  await page.keyboard.press("Control+Home");
  await goTo(page, "revision: C");
  await page.keyboard.type("\nsigth: from behind");
  await page.waitForFunction(() => document.querySelector(".wrong")?.textContent?.includes("sigth"));
  const marked = await page.evaluate(() => [...document.querySelector(".editor").shadowRoot.querySelectorAll(".cm-lintRange-error")].map((one) => one.textContent));
  assert.ok(marked.some((one) => "sigth: from behind".includes(one) && one.length > 0), JSON.stringify(marked));
});

await on("three hands are seen side by side, and what both changed is chosen", {}, async (page, { file, read }) => {
  await openText(page);
  await page.keyboard.press("Control+Home");
  await goTo(page, "title: Corncrake 33, accessory drive");
  await page.keyboard.type(" of mine");
  await goTo(page, "revision: C");
  await page.keyboard.type("2");
  await page.keyboard.press("Control+End");
  await page.keyboard.type("\n# mine at the end");
  writeFileSync(file, read().replace("accessory drive\nrevision: C\n", "accessory drive\nrevision: K\n").replace("towershaft: 1  ", "# theirs at the head\ntowershaft: 1  "));
  await page.waitForSelector(".three");
  const rows = await page.locator(".three tbody tr").allTextContents();
  assert.ok(rows.some((one) => one.includes("theirs at the head") && one.includes("it stays")), rows.join("\n"));
  assert.ok(rows.some((one) => one.includes("of mine") && one.includes("revision: K") && one.includes("Both changed it")), rows.join("\n"));
  const put = page.locator("button:has-text('Put both together')");
  assert.equal(await put.isDisabled(), true);
  await page.locator(".three button:has-text('Mine')").first().click();
  await put.click();
  await page.waitForSelector(".three", { state: "detached" });
  await page.click(".editor .cm-content");
  await page.keyboard.press("Control+s");
  await told(page, "put into the file");
  const now = read();
  for (const one of ["# theirs at the head\n", "accessory drive of mine\n", "revision: C2\n", "# mine at the end"]) assert.ok(now.includes(one), one);
  await page.click("button:has-text('Undo')");
  await told(page, "Taken back: edited as text");
  assert.ok(read().includes("revision: K"));
  await verdict(page, "The drive");
});

await close();
