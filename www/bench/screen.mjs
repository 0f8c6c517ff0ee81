// What a key press costs the page: a person types a working load into the screen
// that sizes a pile of a job of 200 piles, and goes on through the other screens
// of the job.
import { how, median, milli, row } from "./print.mjs";

/** Typed and taken out again, key by key. */
const typed = "850";
const rounds = 7;
/** A slow hand: what a key sets off is over by then, on a slow processor too [ms]. */
const betweenKeys = 250;

/**
 * `page` has the job open under the name `doc`; `slow` makes its processor so
 * many times slower. How much the page works is measured as processor time at
 * full speed and taken so many times: unlike the time on the clock it does not
 * grow with what else the machine does.
 */
export async function typeOnScreen(page, doc, pile, slow, slowdown) {
  await go(page, `size/${doc}/${pile}`);
  await page.waitForSelector("#row-load[data-path]");
  await page.focus("#row-load");
  await page.keyboard.press("Control+A");
  await page.keyboard.press("Backspace");
  await typeRound(page, (press) => press()); // warms up
  const worked = await taskMeter(page);
  const still = [];
  const pressed = [];
  for (let k = 0; k < 10; k++) still.push(await worked(() => page.waitForTimeout(betweenKeys)));
  for (let round = 0; round < rounds; round++) {
    await typeRound(page, async (press) => pressed.push(await worked(press)));
  }
  how(`a key typed into the sizing screen, ${pressed.length} keys: processor time of all tasks of the main thread, painting too, times ${slowdown}`);
  row("key press to new answer, 200 piles, page x4, median [ms]", milli(slowdown * median(pressed)), "16");
  row("  the same time with no key pressed, contained in it [ms]", milli(slowdown * median(still)));

  await slow();
  await page.evaluate(watchAnswer);
  await page.evaluate(() => (longTasks.length = 0));
  for (let round = 0; round < rounds; round++) await typeRound(page, (press) => press());
  row("  on the clock from the key to the answer painted, x4, with worker and journal [ms]", milli(median(await page.evaluate(() => answers))));

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

/** Types the load and takes it out again. `each` gets every press with the wait after it. */
async function typeRound(page, each) {
  for (const key of [...typed, ...Array(typed.length).fill("Backspace")]) {
    await each(async () => {
      await page.keyboard.press(key);
      await page.waitForTimeout(betweenKeys);
    });
  }
}

/** A function that tells how long the main thread worked during something [ms]. */
async function taskMeter(page) {
  const devtools = await page.context().newCDPSession(page);
  await devtools.send("Performance.enable", { timeDomain: "threadTicks" });
  const soFar = async () => (await devtools.send("Performance.getMetrics")).metrics.find(({ name }) => name === "TaskDuration").value * 1000;
  return async (work) => {
    const before = await soFar();
    await work();
    return (await soFar()) - before;
  };
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
