// SPDX-License-Identifier: MIT
// Keeps ticks and readings of an HTML sheet, compares readings with what was expected, switches pictures and
// colours. All words come from the page; nothing is ever sent anywhere.
"use strict";
(() => {
  const content = document.getElementById("content");
  const words = content.dataset;
  const all = (selector, inside = document) => [...inside.querySelectorAll(selector)];
  const told = (pattern, ...values) => pattern.replace(/\{(\d)\}/g, (_, n) => values[Number(n)]);

  // ---- What is kept. A browser may refuse its store, above all for files: then it lasts until the page goes.
  const key = "plugward-sheet-" + words.key;
  let kept = { ticks: {}, texts: {}, choices: {}, face: "wire", colours: "" };
  const refused = () => { document.getElementById("not-kept").hidden = false; };
  const keep = () => {
    try {
      localStorage.setItem(key, JSON.stringify(kept));
    } catch {
      refused();
    }
  };
  const recall = () => {
    let text = null;
    try {
      text = localStorage.getItem(key);
      localStorage.setItem(key + "-try", "1");
      localStorage.removeItem(key + "-try");
    } catch {
      refused();
    }
    try {
      const old = JSON.parse(text);
      if (old?.ticks && old.texts && old.choices) kept = { ...kept, ...old };
    } catch {
      // Not ours, or broken: begin anew.
    }
  };

  // ---- Readings.
  const PREFIX = { p: 1e-12, n: 1e-9, u: 1e-6, "\u00b5": 1e-6, "\u03bc": 1e-6, m: 1e-3, "": 1, k: 1e3, K: 1e3, M: 1e6, G: 1e9 };
  const UNIT = { v: "V", vdc: "V", volt: "V", volts: "V", a: "A", amp: "A", amps: "A", ohm: "ohm", ohms: "ohm", r: "ohm", "\u03c9": "ohm" };
  const OPEN = /^(open|[o0]\.?l|o\/l|inf|infinite|infinity|\u221e)\.?(\s*[kMG]?(ohms?|[\u2126\u03a9]))?$/i;
  const NUMBER = /^([-+\u2212]?)(?:(\d+)(?:[.,](\d*))?|[.,](\d+))\s*([pnu\u00b5\u03bcmkG]?)\s*(volts?|v(?:dc)?|amps?|ohms?|[ar]|[\u2126\u03a9])?$/i;
  const INFIX = /^(\d+)([RrkKM])(\d+)\s*(?:[oO]hms?|[\u2126\u03a9])?$/;  // "4k7"

  // A meter beeps for certain below 3 ohm, and for certain not above 100 (common practice, no source).
  const BEEP = /^(no )?beeps?$/i;
  const same = (text, word) => text.toLowerCase() === word.toLowerCase();  // in the language of the sheet

  // {from, to} in `unit`, or {why}: the name of a pattern that says what is not clear.
  const read = (typed, unit) => {
    const text = typed.trim().replace(/\u00a0|\u202f/g, " ");
    const exactly = (value) => ({ from: value, to: value });
    if (OPEN.test(text) || same(text, words.open)) return unit === "ohm" || /l/i.test(text) ? exactly(Infinity) : { why: "unit" };
    const silent = same(text, words.noBeep);
    const beep = unit === "ohm" && (silent || same(text, words.beep) ? [text, silent] : BEEP.exec(text));
    if (beep) return beep[1] ? { from: 3, to: Infinity, heard: true } : { from: 0, to: 100, heard: true };
    const infix = unit === "ohm" && INFIX.exec(text);
    if (infix) {
      const scale = infix[2].toUpperCase() === "R" ? 1 : PREFIX[infix[2]];
      return exactly(Number(infix[1] + "." + infix[3]) * scale);
    }
    const found = NUMBER.exec(text);
    if (!found) return { why: "number" };
    const [, sign, whole, decimals, alone, prefix, named] = found;
    if (named && UNIT[named.toLowerCase()] !== unit) return { why: "unit" };
    // A lower-case m on a resistance, or a capital one elsewhere, is more likely a slip than meant.
    if ((prefix === "m" && unit === "ohm") || (prefix === "M" && unit !== "ohm")) return { why: "prefix" };
    if (!(prefix in PREFIX)) return { why: "number" };
    // Twelve ohms or twelve thousand?
    if (unit === "ohm" && !prefix && /^[1-9]\d{0,2},\d{3}\b/.test(text)) return { why: "comma" };
    const size = Number((whole ?? "0") + "." + ((alone ?? decimals) || "0")) * PREFIX[prefix];
    return exactly(sign === "-" || sign === "\u2212" ? -size : size);
  };

  const shown = (value, unit) => {
    if (!Number.isFinite(value)) return unit === "ohm" ? words.open : "OL";
    const size = Math.abs(value);
    const [scale, prefix] = size >= 1e6 ? [1e6, "M"] : size >= 1e3 ? [1e3, "k"] : [1, ""];
    return String(Number((value / scale).toPrecision(6))) + " " + prefix + unit;
  };

  // What is printed is what a person goes by, and it is rounded outwards: "1.6..2.8 ohm" for 1.697 to 2.785, by a
  // step of 0.1 ohm, 0.01 V or the third digit. A printed number further off is another one.
  const as_printed = (lowest, highest, expect, unit) => {
    const [first, last] = expect.split("..", 2);
    const number = (text) => /^\s*[-+\u2212]?\d[\d.]*(\s*[a-zA-Z]+)?/.exec(text)?.[0] ?? "";
    const units = /[a-zA-Z]+$/.exec(number(last ?? first))?.[0] ?? unit;
    const edge = (text, exact, pick) => {
      const { from, why } = read(/[a-zA-Z]$/.test(text) ? text : text + units, unit);
      const step = Math.max(unit === "V" ? 0.01 : 0.1, 0.05 * Math.abs(exact));
      return why || !Number.isFinite(exact) || Math.abs(from - exact) > step ? exact : pick(from, exact);
    };
    return [edge(number(first), lowest, Math.min), last ? edge(number(last), highest, Math.max) : highest];
  };

  const WHY = { unit: "otherUnit", prefix: "whichPrefix", comma: "whichComma", number: "notANumber" };
  const not_so = (state, said, points) => {
    const [plain, pointing] = { low: [words.tooLow, words.tooLowTo], high: [words.tooHigh, words.tooHighTo] }[state];
    return { state, text: points ? told(pointing, said, points) : told(plain, said) };
  };

  // {state, text} of what was typed.
  const judged = (input) => {
    const { low, high, unit, tooLow, tooHigh } = input.dataset;
    const typed = input.value.trim();
    if (typed === "") return { state: "", text: "" };
    const [lowest, highest] = as_printed(
      low === undefined ? -Infinity : Number(low),
      high === undefined || high === "inf" ? Infinity : Number(high),
      document.getElementById(input.id + "-expect")?.dataset.expect ?? "",
      unit,
    );
    const least = unit === "ohm" ? 0 : -Infinity;
    // Nothing is expected, or a band that every reading is in.
    if (!unit || (lowest <= least && highest === Infinity)) return { state: "noted", text: words.noted };
    const { from, to, heard, why } = read(typed, unit);
    if (why) return { state: "unclear", text: told(words[WHY[why]], unit) };
    const said = heard ? typed : shown(from, unit);
    const slack = (limit) => (Number.isFinite(limit) ? Math.abs(limit) * 1e-9 : 0);
    if (to < lowest - slack(lowest)) return not_so("low", said, tooLow);
    if (from > highest + slack(highest)) return not_so("high", said, tooHigh);
    // A beep tells a wire from a gap, not one value from another.
    if (heard && !(from === 0 ? lowest <= 0 : highest === Infinity))
      return { state: "unclear", text: words.beepTellsLittle };
    return { state: "fits", text: told(words.fits, said) };
  };

  const compare = (input) => {
    const status = document.getElementById(input.id + "-status");
    if (!status) return;
    const { state, text } = judged(input);
    status.dataset.state = state;
    if (status.textContent !== text) status.textContent = text;
    if (state === "low" || state === "high" || state === "unclear") input.setAttribute("aria-invalid", "true");
    else input.removeAttribute("aria-invalid");
  };

  // What is not a number is either so or not.
  const choose = (radio) => {
    const group = radio.closest('[role="radiogroup"]');
    const status = document.getElementById(group.id + "-status");
    const choice = kept.choices[group.id] ?? "";
    for (const each of all("input", group)) each.checked = each.value === choice;
    const points = group.dataset.otherwise;
    const state = { yes: "fits", no: "wrong" }[choice] ?? "";
    const wrong = points ? told(words.notSoTo, points) : words.notSo;
    status.dataset.state = state;
    status.textContent = state === "fits" ? words.so : state === "wrong" ? wrong : "";
  };

  // ---- Boxes and how far the work is.
  const boxes = all('input[type="checkbox"]');
  const texts = all('input[type="text"]');
  const choices = all('[role="radiogroup"] input');
  const steps = all(".act > input");
  const counted = steps.length > 0 ? steps : boxes;
  const progress = document.getElementById("progress");
  const count = () => {
    const done = counted.filter((box) => box.checked).length;
    document.getElementById("progress-words").textContent = told(words.progress, done, counted.length);
    progress.max = Math.max(counted.length, 1);
    progress.value = done;
    for (const box of steps) box.closest("li").classList.toggle("done", box.checked);
  };

  // ---- Pictures and colours.
  const show_face = () => {
    for (const picture of all("[data-face]")) picture.hidden = picture.dataset.face !== kept.face;
    for (const radio of all('input[name="face"]')) radio.checked = radio.value === kept.face;
  };
  const colours = document.getElementById("colours");
  const show_colours = () => {
    if (kept.colours) document.documentElement.dataset.colours = kept.colours;
    else delete document.documentElement.dataset.colours;
    colours.value = kept.colours;
  };

  const show_all = () => {
    for (const box of boxes) box.checked = kept.ticks[box.id] === true;
    for (const input of texts) {
      input.value = kept.texts[input.id] ?? "";
      compare(input);
    }
    for (const radio of choices) choose(radio);
    show_face();
    show_colours();
    count();
  };

  for (const box of boxes)
    box.addEventListener("change", () => {
      if (box.checked) kept.ticks[box.id] = true;
      else delete kept.ticks[box.id];
      keep();
      count();
    });
  for (const input of texts)
    input.addEventListener("input", () => {
      if (input.value) kept.texts[input.id] = input.value;
      else delete kept.texts[input.id];
      keep();
      compare(input);
    });
  for (const radio of choices)
    radio.addEventListener("change", () => {
      kept.choices[radio.closest('[role="radiogroup"]').id] = radio.value;
      keep();
      choose(radio);
    });
  for (const radio of all('input[name="face"]'))
    radio.addEventListener("change", () => {
      kept.face = radio.value;
      keep();
      show_face();
    });
  colours.addEventListener("change", () => {
    kept.colours = colours.value;
    keep();
    show_colours();
  });
  for (const button of all("figure button"))
    button.addEventListener("click", () => {
      const large = button.closest("figure").classList.toggle("large");
      button.setAttribute("aria-pressed", String(large));
    });

  const dialog = document.getElementById("clear-dialog");
  document.getElementById("clear").addEventListener("click", () => dialog.showModal());
  document.getElementById("clear-no").addEventListener("click", () => dialog.close());
  document.getElementById("clear-yes").addEventListener("click", () => {
    kept = { ...kept, ticks: {}, texts: {}, choices: {} };
    keep();
    show_all();
    dialog.close();
  });

  // Another window of the same sheet.
  window.addEventListener("storage", (event) => {
    if (event.key !== key || event.newValue === null) return;
    recall();
    show_all();
  });

  document.documentElement.dataset.scripted = "";
  recall();
  show_all();
})();
