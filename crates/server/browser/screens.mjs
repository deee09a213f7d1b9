// The desk's screens in a real browser: a new user begins with an empty store and goes all the way, with a mouse, by keyboard alone and
// without scripts; every screen at three widths, light and dark.
//
//     node screens.mjs PROGRAM [FOLDER FOR PICTURES]

import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { all, alone, browser, holds, place } from "./support.mjs";

const [program, pictures] = process.argv.slice(2);
const { folder, leave } = place(program);
const demo = (name) => join(folder, "demo-project", name);
const listing = "hw-d-0412-ed4.txt";
const tables = ["schedule.csv", "marks.csv", "barriers.csv", "building.toml"].map(demo);
const begun = [];

/** A desk over a store that isn't there yet. */
const empty = (name) => opened("--store", name);

/** A desk, and its address. */
async function opened(...what) {
  const { address, end } = await alone(program, folder, ...what);
  begun.push(end);
  return address;
}

const address = await empty("new.sqlite");
const wrong = [];
const { page, close } = await browser("http://127.0.0.1", wrong);

/** Brings files and takes all of what was understood. */
async function bring(at, desk, files) {
  await at.goto(`${desk}/import`);
  await at.locator("#files").setInputFiles(files);
  await at.locator("form.drop button").click();
  await at.waitForURL(/import\/\d+/);
  await at.getByRole("button", { name: "Take what is ticked" }).first().click();
  await at.waitForURL((url) => !url.pathname.startsWith("/import"));
}

const clause = (id) => `/listings/${encodeURIComponent(listing)}/clauses/${encodeURIComponent(id)}`;
const places = {
  import: "/import",
  selection: "/selection",
  "selection-of-a-mark": "/selection?of=HW6",
  "selection-supposing": "/selection?of=HW1&property=joint.width&value=9+in.",
  substitute: "/selection/substitute?component=packing&product=Ulmeregg+Mineral+Fibre+%7C+Ulmerpad+4&property=packing.density&value=4+pcf",
  submittals: "/submittals",
  submittal: "/submittals/07%2084%2043-05",
  letter: "/submittals/07%2084%2043-05/letter",
  reading: `/listings/${listing}`,
  correct: `${clause("3A/3")}/correct`,
  further: `${clause("3A/3")}/correct?further=true`,
  judge: `${clause("3A/3")}/judge`,
  pdf: "/listings/ff-d-1102.pdf/pages/1",
  joint: "/joints/J-004",
  moved: "/joints/J-004?moved=-60",
  card: "/joints/J-004/card",
};

const tests = {
  async "a new user goes all the way from an empty store"() {
    const at = await page({ viewport: { width: 1400, height: 900 } });
    await at.goto(address);
    assert.match(await at.textContent("main"), /There are no joints yet/);
    await at.getByRole("link", { name: "Import", exact: true }).first().click();
    await at.locator("#files").setInputFiles([demo(`listings/${listing}`), demo("pdf/ff-d-1102.pdf"), ...tables]);
    await at.getByRole("button", { name: "See what is understood of them" }).click();
    await at.waitForURL(/import\/\d+/);
    const understood = await at.textContent("main");
    for (const says of ["HW-D-0412", "FF-D-1102", "60 joints new", "a table of joints, 60 rows"]) assert.ok(understood.includes(says), says);
    await holds(at, "what was understood");
    await at.getByRole("button", { name: "Take what is ticked" }).first().click();
    await at.waitForURL(`${address}/`);
    assert.match(await at.textContent("main"), /60 joints/);

    // Confirms a reading, and corrects one clause.
    await at.goto(`${address}/listings/${listing}`);
    await at.keyboard.press("j");
    await at.keyboard.press("c");
    await at.waitForFunction(() => document.getElementById("confirmed").textContent === "1");
    const density = at.locator(".clause", { hasText: "Packing density" }).filter({ hasText: "at least" }).first();
    await density.getByRole("link", { name: /^Correct/ }).click();
    await at.waitForURL(/correct$/);
    await at.fill("#value", "9");
    await at.getByRole("button", { name: "See it in plain words" }).click();
    assert.match(await at.textContent("[role=alert]"), /no known unit/);
    await at.fill("#value", "9 pcf");
    await at.getByRole("button", { name: "See it in plain words" }).click();
    await at.getByText("at least 9 pcf").waitFor();
    await holds(at, "what would stand");
    await at.getByRole("button", { name: "Record it" }).click();
    await at.waitForURL(/#clause-/);
    assert.match(await at.textContent(".clauses"), /corrected/);

    // Answers a question, and sees the verdict turn.
    const verdict = at.locator(".finding", { hasText: "Coating overlap on concrete" }).first().locator(".verdict");
    await at.goto(`${address}/joints/J-006`);
    assert.match(await verdict.textContent(), /open/);
    await at.goto(`${address}/questions`);
    const question = at.locator(".question", { hasText: /coating overlap on concrete/i }).first();
    await question.locator("input[name=value]").fill("2 in.");
    await question.locator("input[name=source]").fill("witnessed by Lee");
    await question.locator("form button").click();
    await at.waitForLoadState();
    await at.goto(`${address}/joints/J-006`);
    assert.match(await verdict.textContent(), /^✓ met/, "the verdict has turned");

    // Opens the section, and moves it.
    assert.ok(await at.locator('img[src$="section.svg"]').evaluate((image) => image.naturalWidth > 0));
    const slider = at.locator("#moved");
    await slider.focus();
    const drawn = await at.getAttribute("#moving", "src");
    await at.keyboard.press("ArrowLeft");
    assert.notEqual(await at.getAttribute("#moving", "src"), drawn);
    await at.waitForFunction(() => document.getElementById("moving").complete && document.getElementById("moving").naturalWidth > 0);
    await at.context().close();
  },

  async "a submittal is entered, commented on and answered"() {
    const at = await page();
    await at.goto(`${address}/submittals`);
    await at.fill("#number", "07 84 43-05");
    await at.fill("#title", "Head-of-wall joints");
    await at.fill("#from", "Contractor");
    await at.fill("#received", "2026-03-14");
    await at.fill("#marks", "HW1");
    await at.selectOption("#listing", listing);
    await at.fill("#proposed", "packing.product = Ulmeregg Mineral Fibre | Ulmerpad 4\npacking.density = 3 pcf");
    await at.getByRole("button", { name: "Enter", exact: true }).click();
    await at.waitForURL(/submittals\/07/);
    assert.equal(await at.inputValue("#outcome-choice"), "", "nothing is chosen for the reviewer");
    await at.locator("#attach").setInputFiles([demo("pdf/ff-d-1102.pdf")]);
    await at.getByRole("button", { name: "Attach", exact: true }).click();
    await at.waitForURL(/#files/);
    const [download] = await Promise.all([at.waitForEvent("download"), at.getByRole("link", { name: "ff-d-1102.pdf" }).click()]);
    assert.equal(download.suggestedFilename(), "ff-d-1102.pdf");
    assert.deepEqual(readFileSync(await download.path()), readFileSync(demo("pdf/ff-d-1102.pdf")));
    const clause = at.locator(".finding", { hasText: "Packing density is 3 pcf" }).first();
    await clause.locator("summary").click();
    await clause.locator("textarea").fill("Supply what the listing names.");
    await clause.getByRole("button", { name: "Record" }).click();
    await at.waitForURL(/#at-HW1/);
    await at.selectOption("#outcome-choice", { label: "revise and resubmit" });
    await at.getByRole("button", { name: "Record the outcome" }).click();
    await at.waitForURL(/#outcome/);
    await at.getByRole("link", { name: "The letter" }).click();
    const letter = await at.textContent(".letter");
    for (const says of ["Revise and resubmit", "Supply what the listing names.", "authority having jurisdiction"]) assert.ok(letter.includes(says), says);
    await at.context().close();
  },

  async "every screen at every width, light and dark, is accessible and no wider than the window"() {
    for (const width of [360, 800, 1400]) {
      for (const colorScheme of ["light", "dark"]) {
        const at = await page({ viewport: { width, height: 900 }, colorScheme, bypassCSP: true });
        for (const [name, path] of Object.entries(places)) {
          await at.goto(address + path);
          await holds(at, `${name} at ${width}, ${colorScheme}`);
          if (pictures) await at.screenshot({ path: join(pictures, `${name}-${width}-${colorScheme}.png`), fullPage: true });
        }
        await at.context().close();
      }
    }
  },

  async "all of it by keyboard alone"() {
    const desk = await empty("keyboard.sqlite");
    const at = await page();
    const here = () => at.evaluate(() => document.activeElement?.textContent?.trim() || document.activeElement?.name || "");
    /** Goes on by the tabulator until something with these words has the focus. */
    const tabTo = async (words) => {
      for (let step = 0; step < 400; step += 1) {
        await at.keyboard.press("Tab");
        if (words.test(await here())) return;
      }
      assert.fail(`nothing called ${words} comes by Tab`);
    };
    await at.goto(desk);
    await tabTo(/^Import$/);
    await at.keyboard.press("Enter");
    await at.waitForURL(/import$/);
    await tabTo(/^files$/);
    // The system's own window for files is the browser's to show; what is chosen there is set here.
    await at.locator("#files").setInputFiles([demo(`listings/${listing}`), ...tables]);
    await tabTo(/^See what is understood/);
    await at.keyboard.press("Enter");
    await at.waitForURL(/import\/\d+/);
    await tabTo(/^Take what is ticked/);
    await at.keyboard.press("Enter");
    await at.waitForURL(`${desk}/`);
    await at.goto(`${desk}/listings/${listing}`);
    await at.keyboard.press("j");
    await at.keyboard.press("c");
    await at.waitForFunction(() => document.getElementById("confirmed").textContent === "1");
    await at.keyboard.press("j");
    await at.keyboard.press("e");
    await at.waitForURL(/correct$/);
    await at.locator("#asks").focus();
    await at.keyboard.type("nothing");
    await tabTo(/^See it in plain words/);
    await at.keyboard.press("Enter");
    await at.getByRole("button", { name: "Record it" }).waitFor();
    await tabTo(/^Record it/);
    await at.keyboard.press("Enter");
    await at.waitForURL(/#clause-/);
    assert.match(await at.textContent(".clauses"), /corrected/);
    // In a field, the keys are letters.
    await at.goto(`${desk}${clause("3A/3")}/correct`);
    await at.locator("#value").focus();
    await at.keyboard.type("ceg");
    assert.match(await at.inputValue("#value"), /ceg/);
    await at.goto(`${desk}/listings/${listing}`);
    await at.keyboard.press("j");
    await at.keyboard.press("g");
    await at.waitForURL(/judge$/);
    await at.context().close();
  },

  async "the demo's folder opens in one step, and again with what was entered there"() {
    const at = await page();
    for (const again of [false, true]) {
      const desk = await opened("--project", "demo-project");
      await at.goto(desk);
      assert.match(await at.textContent("main"), /60 joints/);
      await at.goto(`${desk}/joints/J-005`);
      const row = at.locator("tr", { hasText: "joint.width" });
      if (again) assert.match(await row.textContent(), /31\/32 in\./, "what a person entered stays");
      else {
        await row.locator("summary").click();
        await row.locator("input[name=value]").fill("31/32 in.");
        await row.locator("input[name=source]").fill("witnessed");
        await row.locator("button").click();
        await at.waitForURL(/#known/);
      }
      await at.goto("about:blank");
      begun.pop()();
    }
    await at.context().close();
  },

  async "files are dropped on the form"() {
    const at = await page();
    await at.goto(`${address}/import`);
    const bytes = [...readFileSync(demo("listings/hw-d-0437.txt"))];
    await at.evaluate((bytes) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([new Uint8Array(bytes)], "hw-d-0437.txt"));
      document.querySelector("form.drop").dispatchEvent(new DragEvent("drop", { dataTransfer: transfer, bubbles: true, cancelable: true }));
    }, bytes);
    await at.getByRole("button", { name: "See what is understood of them" }).click();
    await at.waitForURL(/import\/\d+/);
    assert.match(await at.textContent("main"), /HW-D-0437/);
    await at.context().close();
  },

  async "everything works without scripts"() {
    const desk = await empty("plain.sqlite");
    const at = await page({ javaScriptEnabled: false });
    await bring(at, desk, [demo(`listings/${listing}`), ...tables]);
    await at.goto(`${desk}/joints/J-004`);
    await at.getByRole("link", { name: "Fully closed" }).click();
    assert.match(await at.getAttribute("#moving", "src"), /moved=-100/);
    await at.getByRole("button", { name: "Draw" }).click();
    await at.goto(`${desk}${clause("3A/3")}/correct`);
    await at.selectOption("#asks", "nothing");
    await at.getByRole("button", { name: "See it in plain words" }).click();
    await at.getByRole("button", { name: "Record it" }).click();
    await at.waitForURL(/#clause-/);
    await at.goto(`${desk}/selection?of=HW1`);
    assert.match(await at.textContent("main"), /listings/);
    await at.context().close();
  },
};

const failed = await all(tests, wrong);
await close();
for (const end of begun) end();
leave();
process.exit(failed === 0 ? 0 : 1);
