// A team's desk in a real browser: coming in, signing in, what each may do, managing people; and what axe finds on the pages for it.
//
//     node people.mjs PROGRAM [FOLDER FOR PICTURES]
//
// PROGRAM is the built `everyclause`. Needs Chromium at /usr/bin/chromium, or where CHROMIUM says.

import assert from "node:assert/strict";
import { join } from "node:path";
import { all, browser, holds, team } from "./support.mjs";

const [program, pictures] = process.argv.slice(2);
const wrong = [];
const { address, link, invite, end } = await team(program, "Ada Venn");
const { page, close } = await browser(address, wrong);

const password = "quiet copper lantern";
const listing = "/listings/hw-d-0412-ed4.txt";

/** Opens an invitation, and sets a name and a password. */
async function comeIn(at, link, name) {
  await at.goto(link);
  if (name) await at.fill("#name", name);
  await at.fill("#password", password);
  await at.fill("#repeated", password);
  await at.click("main button");
  await at.waitForURL(`${address}/`);
}

/** Signs in, and comes to the page that was asked for. */
async function signIn(at, name, place = "/") {
  await at.goto(address + place);
  await at.fill("#name", name);
  await at.fill("#password", password);
  await at.click("main button");
  await at.waitForURL(address + place);
}

const tests = {
  async "the first administrator comes in by keyboard alone"() {
    const at = await page();
    await at.goto(link);
    await at.locator("#name").focus();
    assert.equal(await at.inputValue("#name"), "Ada Venn");
    for (const typed of [null, password, "another thing here"]) {
      if (typed) await at.keyboard.type(typed);
      if (typed !== "another thing here") await at.keyboard.press("Tab");
    }
    await at.keyboard.press("Enter");
    await at.waitForLoadState();
    assert.match(await at.textContent("[role=alert]"), /aren't the same/);
    await at.locator("#password").focus();
    await at.keyboard.type(password);
    await at.keyboard.press("Tab");
    await at.keyboard.type(password);
    await at.keyboard.press("Enter");
    await at.waitForURL(`${address}/`);
    assert.match(await at.textContent(".account"), /Ada Venn/);
    const cookies = await at.context().cookies();
    const cookie = cookies.find((cookie) => cookie.name === "__Host-everyclause");
    assert.ok(cookie.httpOnly && cookie.secure && cookie.sameSite === "Lax" && cookie.path === "/");
    assert.doesNotMatch(await at.evaluate(() => document.cookie), /everyclause/);
    // The link has led in once.
    await at.goto(link);
    assert.match(await at.textContent("main"), /was taken up/);
    await at.context().close();
  },

  async "who isn't in sees nothing, and comes to where they wanted to go"() {
    const at = await page();
    await at.goto(`${address}/joints/J-004`);
    assert.match(at.url(), /\/sign-in\?to=/);
    assert.doesNotMatch(await at.textContent("body"), /J-004/);
    await at.fill("#name", "ada venn");
    await at.fill("#password", "not it at all");
    await at.keyboard.press("Enter");
    await at.waitForLoadState();
    assert.match(await at.textContent("[role=alert]"), /don't belong together/);
    assert.equal(await at.inputValue("#name"), "ada venn");
    assert.equal(await at.inputValue("#password"), "");
    await at.fill("#password", password);
    await at.keyboard.press("Enter");
    await at.waitForURL(`${address}/joints/J-004`);
    await at.click(".account button");
    await at.waitForURL(`${address}/sign-in`);
    await at.goBack();
    await at.reload();
    assert.match(at.url(), /\/sign-in/);
    await at.context().close();
  },

  async "an administrator invites an inspector, who enters facts and confirms nothing"() {
    const [ada, bea] = [await page(), await page()];
    await signIn(ada, "Ada Venn", "/people");
    await ada.fill("#whom", "Bea Ortol");
    await ada.selectOption("#role", "inspector");
    await ada.click("form:has(#whom) button");
    await ada.waitForLoadState();
    const invited = await ada.inputValue(".made input");
    assert.ok(invited.startsWith(`${address}/invitations/`));
    await comeIn(bea, invited);
    await bea.goto(`${address}/joints/J-004`);
    assert.equal(await bea.locator("form[action$=judgments]").count(), 0);
    const row = bea.locator("tr", { hasText: "joint.width" });
    await row.locator("summary").click();
    await row.locator("input[name=value]").fill("3/4 in.");
    await row.locator("input[name=source]").fill("measured: tape, 1/16 in.");
    await row.locator("button").click();
    await bea.waitForURL(/#known/);
    await bea.goto(address + listing);
    assert.equal(await bea.locator("form.confirm").count(), 0);
    await bea.keyboard.press("j");
    await bea.keyboard.press("c");
    assert.equal(await bea.textContent("#confirmed"), "0");
    assert.equal(await bea.locator("nav a", { hasText: "People" }).count(), 0);
    await bea.goto(`${address}/people`);
    assert.match(await bea.textContent("[role=alert]"), /role of administrator/);
    // Bea is made a reviewer: signs in again, and may.
    await ada.goto(`${address}/people`);
    const entry = ada.locator(".people li", { hasText: "Bea Ortol" });
    await entry.locator("summary").click();
    await entry.locator("select").selectOption("reviewer");
    await entry.locator("button", { hasText: "Give this role" }).click();
    await ada.waitForLoadState();
    await signIn(bea, "Bea Ortol", listing);
    await bea.keyboard.press("j");
    await bea.keyboard.press("c");
    await bea.waitForFunction(() => document.getElementById("confirmed").textContent === "1");
    await ada.goto(`${address}/audit`);
    const audit = await ada.textContent("main");
    for (const line of [/Ada Venn gave Bea Ortol the role of reviewer/, /Bea Ortol signed in/, /was not let in/]) assert.match(audit, line);
    await ada.goto(`${address}/journal?by=Bea%20Ortol`);
    assert.match(await ada.textContent(".changes li"), /Bea Ortol confirmed/);
    for (const at of [ada, bea]) await at.context().close();
  },

  async "the second of two reviewers is shown what the first confirmed"() {
    const [ada, bea] = [await page({ javaScriptEnabled: false }), await page({ javaScriptEnabled: false })];
    await signIn(ada, "Ada Venn", listing);
    await signIn(bea, "Bea Ortol", listing);
    await ada.locator("form.confirm button").first().click();
    await bea.locator("form.confirm button").first().click();
    assert.match(await bea.textContent("[role=alert]"), /Nothing was overwritten[^]*Ada Venn confirmed/);
    for (const at of [ada, bea]) await at.context().close();
  },

  async "everything works without scripts, and another password ends other sessions"() {
    const [one, other] = [await page({ javaScriptEnabled: false }), await page({ javaScriptEnabled: false })];
    await comeIn(one, invite("Cal Dunmore", "reader"), "Cal Dunmore");
    await signIn(other, "Cal Dunmore");
    await one.goto(`${address}/account`);
    await one.fill("#current", password);
    await one.fill("#password", "seven grey pebbles");
    await one.fill("#repeated", "seven grey pebbles");
    await one.click("form[action$=password] button");
    await one.waitForLoadState();
    assert.equal(one.url(), `${address}/account`);
    await other.goto(`${address}/journal`);
    assert.match(other.url(), /\/sign-in/);
    await one.click("form[action$=everywhere] button");
    assert.match(one.url(), /\/sign-in/);
    for (const at of [one, other]) await at.context().close();
  },

  async "every page at every width, light and dark, is accessible and no wider than the window"() {
    const open = invite("Dee Askelund", "reviewer");
    const ada = await page();
    await signIn(ada, "Ada Venn");
    const cookies = await ada.context().cookies();
    for (const width of [360, 800, 1400]) {
      for (const colorScheme of ["light", "dark"]) {
        const at = await page({ viewport: { width, height: 900 }, colorScheme, bypassCSP: true });
        const look = async (name) => {
          await holds(at, `${name} at ${width}, ${colorScheme}`);
          if (pictures) await at.screenshot({ path: join(pictures, `${name}-${width}-${colorScheme}.png`), fullPage: true });
        };
        await at.goto(`${address}/sign-in`);
        await look("sign-in");
        await at.goto(open);
        await look("invitation");
        await at.fill("#password", "too short");
        await at.fill("#repeated", "too short");
        await at.evaluate(() => document.querySelector("main form").submit());
        await at.waitForSelector("[role=alert]");
        await look("invitation-refused");
        await at.goto(`${address}/invitations/0`);
        await look("invitation-gone");
        await at.context().addCookies(cookies);
        for (const place of ["people", "audit", "account"]) {
          await at.goto(`${address}/${place}`);
          for (const summary of await at.locator("summary").all()) await summary.click();
          await look(place);
        }
        await at.goto(`${address}/people`);
        await at.fill("#whom", "Ada Venn");
        await at.click("form:has(#whom) button");
        await at.waitForSelector("[role=alert]");
        await look("people-refused");
        await at.fill("#whom", `Eve of ${width} ${colorScheme}`);
        await at.click("form:has(#whom) button");
        await at.waitForSelector(".made");
        await look("people-link");
        await at.goto(address);
        await look("overview");
        await at.context().close();
      }
    }
    await ada.context().close();
  },
};

const failed = await all(tests, wrong);
await close();
end();
process.exit(failed === 0 ? 0 : 1);
