// What the tests in a browser stand on: a desk over the demo or an empty store, a browser, and what axe finds.

import assert from "node:assert/strict";
import { execFileSync, spawn } from "node:child_process";
import { mkdtempSync, readFileSync, readdirSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { chromium } from "playwright-core";

const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const rules = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];

/** A port that is free just now. */
function free() {
  return new Promise((found) => {
    const server = createServer().listen(0, "127.0.0.1", () => {
      const { port } = server.address();
      server.close(() => found(port));
    });
  });
}

/** A folder with the demo, and how to run the program there. */
export function place(program) {
  const folder = mkdtempSync(join(tmpdir(), "everyclause-browser-"));
  const run = (...args) => execFileSync(program, args, { cwd: folder, encoding: "utf8", stdio: ["ignore", "pipe", "pipe"] });
  run("demo");
  return { folder, run, leave: () => rmSync(folder, { recursive: true, force: true }) };
}

/** The demo in a store, none of its listings confirmed. */
export function kept(program) {
  const { folder, run, leave } = place(program);
  const listings = join(folder, "demo-project/listings");
  for (const file of readdirSync(listings)) if (file.endsWith(".confirmed.toml")) rmSync(join(listings, file));
  run("keep", "--project", "demo-project", "--into", "clinic.sqlite", "--by", "Kim");
  return { folder, run, leave };
}

/** A desk of one machine over something in a folder: its address, and how to end it. */
export async function alone(program, folder, ...what) {
  const serving = spawn(program, ["serve", ...what, "--by", "Lee", "--port", "0"], { cwd: folder });
  const address = await new Promise((found, failed) => {
    serving.stderr.on("data", (said) => {
      const address = /http:\/\/[\d.:]+/.exec(String(said));
      if (address) found(address[0]);
    });
    serving.on("exit", (code) => failed(new Error(`the desk ended with ${code}`)));
  });
  return { address, end: () => serving.kill() };
}

/** A team's desk over the demo, and the link for its first administrator. */
export async function team(program, administrator) {
  const { folder, run, leave } = kept(program);
  const port = await free();
  const address = `http://localhost:${port}`;
  const invite = (name, role) => run("people", "invite", name, "--as", role, "--at", address, "--by", "Kim", "--store", "clinic.sqlite").trim();
  const link = invite(administrator, "administrator");
  const serving = spawn(program, ["serve", "--store", "clinic.sqlite", "--team", address, "--port", String(port)], { cwd: folder });
  await new Promise((found, failed) => {
    serving.stderr.on("data", (said) => String(said).includes(address) && found());
    serving.on("exit", (code) => failed(new Error(`the desk ended with ${code}`)));
  });
  const end = () => {
    serving.kill();
    leave();
  };
  return { address, link, invite, end };
}

/** A browser whose pages' errors, and requests elsewhere, are gathered in `wrong`. */
export async function browser(address, wrong) {
  const chrome = await chromium.launch({
    executablePath: process.env.CHROMIUM ?? "/usr/bin/chromium",
    headless: true,
    args: ["--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
  });
  const page = async (options = {}) => {
    const context = await chrome.newContext(options);
    const page = await context.newPage();
    page.on("console", (message) => {
      // What is refused is answered with a status that the browser reports as an error.
      if (message.type() === "error" && !/status of (401|403|404|409|422|429)/.test(message.text())) wrong.push(message.text());
    });
    page.on("pageerror", (error) => wrong.push(error.stack));
    page.on("request", (request) => {
      if (!request.url().startsWith(address)) wrong.push(`asks ${request.url()}`);
    });
    return page;
  };
  return { page, close: () => chrome.close() };
}

/** Whether a page is accessible, and no wider than the window. */
export async function holds(page, name) {
  const over = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  assert.ok(over <= 0, `${name}: ${over} px too wide`);
  await page.evaluate(axe);
  const found = await page.evaluate((runOnly) => axe.run({ runOnly }), rules);
  const said = found.violations.map((one) => `${one.id}: ${one.help}\n${one.nodes.slice(0, 3).map((node) => `  ${node.html}\n  ${node.failureSummary}`).join("\n")}`);
  assert.deepEqual(said, [], `${name}:\n${said.join("\n")}`);
}

/** Does one test after the other; gives how many failed. */
export async function all(tests, wrong) {
  let failed = 0;
  for (const [name, test] of Object.entries(tests)) {
    try {
      wrong.length = 0;
      await test();
      assert.deepEqual(wrong, []);
      console.log(`ok    ${name}`);
    } catch (error) {
      failed += 1;
      console.log(`FAILS ${name}\n${error.stack}`);
    }
  }
  return failed;
}
