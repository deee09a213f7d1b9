// The desk in a real browser: what a person does with a mouse, by keyboard alone, without scripts, on a telephone; and what axe finds.
//
//     node desk.mjs PROGRAM [FOLDER FOR PICTURES]
//
// PROGRAM is the built `everyclause`. Needs Chromium at /usr/bin/chromium, or where CHROMIUM says.

import assert from "node:assert/strict";
import { execFileSync, spawn } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { chromium } from "playwright-core";

const [program, pictures] = process.argv.slice(2);
const folder = mkdtempSync(join(tmpdir(), "everyclause-desk-"));
const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** Starts the desk over the demo, none of whose listings is confirmed, and gives its address. */
async function desk() {
  const run = (...args) => execFileSync(program, args, { cwd: folder, stdio: ["ignore", "pipe", "pipe"] });
  run("demo");
  for (const file of execFileSync("ls", [join(folder, "demo-project/listings")], { encoding: "utf8" }).split("\n")) {
    if (file.endsWith(".confirmed.toml")) rmSync(join(folder, "demo-project/listings", file));
  }
  run("keep", "--project", "demo-project", "--into", "clinic.sqlite", "--by", "Kim");
  const serving = spawn(program, ["serve", "--store", "clinic.sqlite", "--by", "Lee", "--port", "0"], { cwd: folder });
  const address = await new Promise((found, failed) => {
    serving.stderr.on("data", (said) => {
      const address = /http:\/\/[\d.:]+/.exec(String(said));
      if (address) found(address[0]);
    });
    serving.on("exit", (code) => failed(new Error(`the desk ended with ${code}`)));
  });
  return { address, serving };
}

const { address, serving } = await desk();
const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
  headless: true,
  args: ["--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
});

/** What went wrong on pages, besides what the tests look for. */
let wrong = [];

/** A page whose every error and every request elsewhere fails the test. */
async function page(options = {}) {
  const context = await browser.newContext(options);
  const page = await context.newPage();
  page.on("console", (message) => {
    // A refused form is answered with a status that the browser reports as an error.
    if (message.type() === "error" && !/status of (409|422)/.test(message.text())) wrong.push(message.text());
  });
  page.on("pageerror", (error) => wrong.push(error.stack));
  page.on("request", (request) => {
    if (!request.url().startsWith(address)) wrong.push(`asks ${request.url()}`);
  });
  return page;
}

const listing = "/listings/hw-d-0412-ed4.txt";
const places = { overview: "/", joint: "/joints/J-004", listings: "/listings", reading: listing, questions: "/questions", joints: "/joints?words=wall&state=open", journal: "/journal" };

const tests = {
  async "every page at every width, light and dark, is accessible and no wider than the window"() {
    for (const width of [360, 800, 1400]) {
      for (const colorScheme of ["light", "dark"]) {
        const at = await page({ viewport: { width, height: 900 }, colorScheme, bypassCSP: true });
        await at.goto(`${address}/questions`);
        const question = await at.locator(".question a").first().getAttribute("href");
        for (const [name, path] of Object.entries({ ...places, question })) {
          await at.goto(address + path);
          const over = await at.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
          assert.ok(over <= 0, `${name} at ${width}: ${over} px too wide`);
          await at.evaluate(axe);
          const found = await at.evaluate(() => axe.run({ runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"] }));
          const said = found.violations.map((one) => `${one.id}: ${one.help}\n${one.nodes.slice(0, 3).map((node) => `  ${node.html}\n  ${node.failureSummary}`).join("\n")}`);
          assert.deepEqual(said, [], `${name} at ${width}, ${colorScheme}:\n${said.join("\n")}`);
          if (pictures) await at.screenshot({ path: join(pictures, `${name}-${width}-${colorScheme}.png`), fullPage: width === 360 });
        }
        await at.context().close();
      }
    }
  },

  async "clauses are confirmed by keyboard alone"() {
    const at = await page();
    await at.goto(address + listing);
    const count = async () => Number(await at.textContent("#confirmed"));
    assert.equal(await count(), 0);
    await at.keyboard.press("j");
    const first = await at.evaluate(() => document.activeElement.id);
    await at.keyboard.press("c");
    await at.waitForFunction((id) => !document.getElementById(id).classList.contains("draft"), first);
    assert.equal(await count(), 1);
    assert.match(await at.textContent("#said"), /is confirmed/);
    assert.notEqual(await at.evaluate(() => document.activeElement.id), first, "goes on to the next");
    await at.reload();
    assert.equal(await count(), 1);
    await at.goto(`${address}/journal`);
    assert.match(await at.textContent(".changes li"), /Lee confirmed/);
    await at.context().close();
  },

  async "words and clauses light each other"() {
    const at = await page({ viewport: { width: 1400, height: 900 } });
    await at.goto(address + listing);
    const words = at.locator("[data-clauses]").nth(5);
    const id = (await words.getAttribute("data-clauses")).split(" ")[0];
    await words.hover();
    assert.ok(await at.evaluate((id) => document.getElementById(id).classList.contains("lit"), id));
    await at.locator(`#${id}`).hover();
    assert.match(await words.getAttribute("class"), /lit/);
    await at.context().close();
  },

  async "a fact is changed by keyboard alone, and what isn't right is told"() {
    const at = await page();
    await at.goto(`${address}/joints/J-004`);
    assert.match(await at.textContent("main"), /Joint width is 1-5\/16 in\./);
    const enter = async (value) => {
      await at.locator("#property").focus();
      await at.keyboard.type("joint.gap_nobody_knows");
      await at.locator("#property").fill("coating.coats");
      await at.keyboard.press("Tab");
      await at.keyboard.type(value);
      await at.keyboard.press("Tab");
      await at.keyboard.type("witnessed by Lee");
      await at.keyboard.press("Enter");
      await at.waitForLoadState();
    };
    await enter("many");
    assert.match(await at.textContent("[role=alert]"), /many/);
    assert.equal(await at.inputValue("#value"), "many", "what was entered is still there");
    const row = at.locator("tr", { hasText: "joint.width" });
    await row.locator("summary").focus();
    await at.keyboard.press("Enter");
    await row.locator("input[name=value]").fill("3/4 in.");
    await row.locator("input[name=source]").fill("measured: tape, 1/16 in.");
    await row.locator("button").focus();
    await at.keyboard.press("Enter");
    await at.waitForURL(/#known/);
    assert.doesNotMatch(await at.textContent("main"), /Joint width is 1-5\/16 in\./);
    await at.context().close();
  },

  async "the second of two is shown what the first changed"() {
    const [one, other] = [await page(), await page()];
    for (const at of [one, other]) await at.goto(`${address}/joints/J-005`);
    for (const [at, value] of [[one, "7/8 in."], [other, "15/16 in."]]) {
      const row = at.locator("tr", { hasText: "joint.width" });
      await row.locator("summary").click();
      await row.locator("input[name=value]").fill(value);
      await row.locator("input[name=source]").fill("witnessed");
      await row.locator("button").click();
      await at.waitForLoadState();
    }
    assert.match(await other.textContent("[role=alert]"), /Nothing was overwritten/);
    assert.match(await other.textContent("main"), /7\/8 in\./);
    for (const at of [one, other]) await at.context().close();
  },

  async "everything works without scripts"() {
    const at = await page({ javaScriptEnabled: false });
    await at.goto(address + listing);
    const before = await at.textContent("#confirmed");
    await at.locator("form.confirm button").first().click();
    assert.equal(Number(await at.textContent("#confirmed")), Number(before) + 1);
    await at.goto(`${address}/questions`);
    await at.locator(".question form input[name=value]").first().waitFor();
    await at.context().close();
  },

  async "a question is answered, and asked no more"() {
    const at = await page();
    await at.goto(`${address}/questions`);
    const named = at.locator(".question", { hasText: /coating wet thickness/i });
    while ((await named.count()) === 0) await at.locator("a[rel=next]").click();
    const question = named.first();
    const id = await question.locator("input[name=question]").inputValue();
    assert.equal((await at.request.get(`${address}/questions/${id}`)).status(), 200);
    await question.locator("input[name=value]").fill("1/8 in.");
    await question.locator("input[name=source]").fill("measured: wet film gauge, 1/64 in.");
    await question.locator("button").click();
    await at.waitForLoadState();
    assert.equal((await at.request.get(`${address}/questions/${id}`)).status(), 404, "it is asked no more");
    await at.context().close();
  },
};

let failed = 0;
for (const [name, test] of Object.entries(tests)) {
  try {
    wrong = [];
    await test();
    assert.deepEqual(wrong, []);
    console.log(`ok    ${name}`);
  } catch (error) {
    failed += 1;
    console.log(`FAILS ${name}\n${error.stack}`);
  }
}
await browser.close();
serving.kill();
rmSync(folder, { recursive: true, force: true });
process.exit(failed === 0 ? 0 : 1);
