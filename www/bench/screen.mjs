// What a key press costs the page: a person types a working load into the screen
// that sizes a pile of a job of 200 piles, and goes on through the other screens
// of the job. The processor is slowed down; the worker is not.
import { how, median, milli, row } from "./print.mjs";

/** Typed and taken out again, key by key. */
const typed = "850";
const rounds = 7;
/** A slow hand: what a key sets off is over by then, on a slow processor too [ms]. */
const betweenKeys = 250;

/** `page` has the job open under the name `doc`. */
export async function typeOnScreen(page, doc, pile, slowed) {
  await go(page, `size/${doc}/${pile}`);
  await page.waitForSelector("#row-load[data-path]");
  await page.focus("#row-load");
  await slowed();
  const tasks = await taskMeter(page);
  const during = async (act) => {
    const before = await tasks();
    await act();
    await page.waitForTimeout(betweenKeys);
    const after = await tasks();
    return { all: after.TaskDuration - before.TaskDuration, own: after.own - before.own };
  };

  await clear(page);
  await page.evaluate(watchAnswer);
  const still = [];
  for (let k = 0; k < 10; k++) still.push(await during(() => {}));
  await page.evaluate(() => (longTasks.length = 0));
  const keys = [...typed, ...Array(typed.length).fill("Backspace")];
  const pressed = [];
  for (let round = 0; round <= rounds; round++) {
    // The first round warms up.
    if (round === 1) {
      pressed.length = 0;
      await page.evaluate(() => (answers.length = 0));
    }
    for (const key of keys) pressed.push(await during(() => page.keyboard.press(key)));
  }
  const usual = (list, part) => milli(median(list.map((times) => times[part])));
  how(`a key typed into the sizing screen, processor x4, ${pressed.length} keys: wall time of all tasks of the main thread, worker's time not in it`);
  row("key press to new answer, 200 piles, page x4, median [ms]", usual(pressed, "all"), "16");
  row("  of this script, style and layout, without paint and the browser's own [ms]", usual(pressed, "own"));
  row("  the same time with no key pressed, contained in the first [ms]", usual(still, "all"));
  row("  from the key to the new answer painted, with worker and journal [ms]", milli(median(await page.evaluate(() => answers))));

  const places = [
    `piles/${doc}`,
    `pile/${doc}/${pile}`,
    `limits/${doc}/${pile}`,
    `working/${doc}/${encodeURIComponent(`${pile}/setReading`)}/${pile}`,
    `form/${doc}/${encodeURIComponent(`/now/piles/${pile}`)}`,
    `history/${doc}`,
    `piles/${doc}/1`,
  ];
  for (const place of places) {
    await go(page, place);
    await page.waitForTimeout(1000);
  }
  const long = await page.evaluate(() => longTasks.map(({ duration }) => duration));
  how(`tasks over 50 ms while typing and while going through ${places.length} screens of the job, x4`);
  row("long tasks on the main thread after start, x4 [count, longest ms]", `${long.length}, ${milli(Math.max(0, ...long))}`, "none over 50 ms");
}

function go(page, place) {
  return page.evaluate((hash) => (location.hash = hash), `#/${place}`);
}

/** A function that reads what the main thread has worked so far [ms]; `own` is script, style and layout. */
async function taskMeter(page) {
  const devtools = await page.context().newCDPSession(page);
  await devtools.send("Performance.enable");
  return async () => {
    const { metrics } = await devtools.send("Performance.getMetrics");
    const spent = Object.fromEntries(metrics.map(({ name, value }) => [name, value * 1000]));
    return { ...spent, own: spent.ScriptDuration + spent.RecalcStyleDuration + spent.LayoutDuration };
  };
}

async function clear(page) {
  await page.keyboard.press("Control+A");
  await page.keyboard.press("Backspace");
  await page.waitForTimeout(1000);
}

/** In the page: notes how long after each key its answer was painted [ms]. */
function watchAnswer() {
  globalThis.answers = [];
  let pressed = 0;
  // The core's echo of the value, and the readings.
  const answer = () => document.querySelector("#row-load-echo").textContent + document.querySelector(".reading").textContent;
  let before = answer();
  document.addEventListener("keydown", ({ timeStamp }) => (pressed = timeStamp), { capture: true });
  new MutationObserver(() => {
    const now = answer();
    if (now === before) return;
    before = now;
    const since = pressed;
    requestAnimationFrame(() => setTimeout(() => answers.push(performance.now() - since)));
  }).observe(document.querySelector("#app"), { subtree: true, childList: true, characterData: true });
}
