// The desk in a real browser: what a person does with a mouse, by keyboard alone, without scripts, on a telephone; and what axe finds.
//
//     node desk.mjs PROGRAM [FOLDER FOR PICTURES]
//
// PROGRAM is the built `everyclause`. Needs Chromium at /usr/bin/chromium, or where CHROMIUM says.

import assert from "node:assert/strict";
import { join } from "node:path";
import { all, alone, browser, holds, kept } from "./support.mjs";

const [program, pictures] = process.argv.slice(2);
const { folder, leave } = kept(program);
const { address, end } = await alone(program, folder, "--store", "clinic.sqlite");
/** What went wrong on pages, besides what the tests look for. */
const wrong = [];
const { page, close } = await browser(address, wrong);

const listing = "/listings/hw-d-0412-ed4.txt";
const places = { overview: "/", joint: "/joints/J-004", card: "/joints/J-004/card", listings: "/listings", reading: listing, questions: "/questions", joints: "/joints?words=wall&state=open", journal: "/journal" };

const tests = {
  async "every page at every width, light and dark, is accessible and no wider than the window"() {
    for (const width of [360, 800, 1400]) {
      for (const colorScheme of ["light", "dark"]) {
        const at = await page({ viewport: { width, height: 900 }, colorScheme, bypassCSP: true });
        await at.goto(`${address}/questions`);
        const question = await at.locator(".question a").first().getAttribute("href");
        for (const [name, path] of Object.entries({ ...places, question })) {
          await at.goto(address + path);
          await holds(at, `${name} at ${width}, ${colorScheme}`);
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

  async "the work card leads from a verdict to its line, and on to its words, and is one sheet on paper"() {
    const at = await page();
    await at.goto(`${address}/joints/J-004`);
    const finding = at.locator(".finding", { hasText: "Board gap is" }).first();
    await finding.locator("summary", { hasText: "Words and fact" }).click();
    await finding.getByRole("link", { name: "On the work card" }).click();
    await at.waitForURL(/\/card#clause-/);
    const line = at.locator(".held li:target");
    assert.match(await line.textContent(), /not met.*Board gap/);
    for (const format of ["A4", "Letter"]) {
      const paper = await at.pdf({ format, preferCSSPageSize: true });
      assert.equal((paper.toString("latin1").match(/\/Type\s*\/Page[^s]/g) ?? []).length, 1, format);
    }
    await line.getByRole("link").click();
    await at.waitForURL(/\/listings\/.*#clause-/);
    assert.match(await at.locator(".clause:target").textContent(), /gap/);
    await at.context().close();
  },

  async "a question is answered, and asked no more"() {
    const at = await page();
    // The second is about a property that the listing has for itself.
    for (const [about, value] of [[/coating wet thickness/i, "1/8 in."], [/flat plates length/i, "9 in."]]) {
      await at.goto(`${address}/questions`);
      const named = at.locator(".question", { hasText: about });
      while ((await named.count()) === 0) await at.locator("a[rel=next]").click();
      const question = named.first();
      const id = await question.locator("input[name=question]").inputValue();
      assert.equal((await at.request.get(`${address}/questions/${id}`)).status(), 200);
      await question.locator("input[name=value]").fill(value);
      await question.locator("input[name=source]").fill("measured: gauge, 1/64 in.");
      await question.locator("button").click();
      await at.waitForLoadState();
      assert.equal((await at.request.get(`${address}/questions/${id}`)).status(), 404, "it is asked no more");
    }
    await at.context().close();
  },
};

const failed = await all(tests, wrong);
await close();
end();
leave();
process.exit(failed === 0 ? 0 : 1);
