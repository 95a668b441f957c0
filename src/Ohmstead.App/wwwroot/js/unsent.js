// A reading that is entered while there is no connection is kept in this browser, and sent when it is back: in its order, and once, by the
// id that it gets here. What the bench then refuses stays, with the reason, until a person throws it away.
(() => {
  const box = "[data-kept]", pause = 5000, onItsWay = 45000, tooLong = 120000;
  const modal = document.getElementById("components-reconnect-modal"), place = document.getElementById("unsent");
  if (!modal || !place) return;
  const { from, isDevice, asked } = window.ohmstead;
  const isAway = () => /components-reconnect-(show|retrying|failed|rejected|paused)/.test(modal.className) || (isDevice() && !navigator.onLine);
  // What was typed without a connection is told to nobody: the screen takes what it heard last for what stands in the box. So it is told when
  // the connection is back, of empty boxes too, and before anything is entered.
  const tell = input => input.dispatchEvent(new Event("input", { bubbles: true }));
  let wasAway = isAway();
  const tellAll = () => {
    const was = wasAway;
    wasAway = isAway();
    if (was && !wasAway) document.querySelectorAll(box).forEach(tell);
  };
  // A private window may keep nothing: then nothing waits, and what is typed stays in its box.
  const all = async () => { try { return (await from("kept", "readonly", s => s.getAll())).sort((a, b) => a.n - b.n); } catch { return []; } };
  const write = item => from("kept", "readwrite", s => s.put(item));
  const drop = id => from("kept", "readwrite", s => s.delete(id));
  const make = (name, words, more = {}) => Object.assign(document.createElement(name), { textContent: words, ...more });

  // A tablet that is on a network and finds no bench for so long may be asking at an address that the bench has no more.
  let lostAt = 0;
  const lose = () => { lostAt = navigator.onLine ? lostAt || Date.now() : 0; };
  const isLong = () => isDevice() && lostAt > 0 && Date.now() - lostAt >= tooLong;
  const show = async () => {
    const items = await all(), waits = items.filter(i => !i.refused).length;
    place.hidden = items.length === 0 && !(isAway() && document.querySelector(box));
    if (place.hidden) return;
    const rows = items.map(item => {
      const row = make("li", `${item.title}: ${item.shown}${item.refused ? ` – not taken: ${item.refused}` : ""}`);
      if (item.refused) row.append(
        make("button", "Send it again", { type: "button", className: "can", onclick: async () => { await write({ ...item, refused: "" }); send(); } }),
        make("button", "Throw it away", { type: "button", className: "can", onclick: async () => { await drop(item.id); show(); } }));
      return row;
    });
    // What waits is folded, so that the keys stay in sight; what the bench refused needs a person.
    const listOf = some => { const list = document.createElement("ul"); list.append(...some); return list; };
    const rowsOf = isRefused => rows.filter((_, n) => !!items[n].refused === isRefused);
    const waiting = Object.assign(document.createElement("details"), { open: place.querySelector("details")?.open ?? false });
    waiting.append(make("summary", `Kept here, not sent yet: ${waits}`));
    const stays = navigator.serviceWorker?.controller ? "It stays, also when you load this page again." : "It stays in this browser. Leave this page open: it can only be loaded again when the bench answers.";
    waiting.append(...(isAway() ? [make("p", stays)] : []), listOf(rowsOf(false)));
    place.replaceChildren(
      make("b", waits === 0 && items.length > 0 ? "Not taken by the bench" : isAway() ? "No connection. A reading that you enter now is kept here and sent later." : "Sending what was kept here…"),
      ...(waits < items.length ? [listOf(rowsOf(true))] : []), ...(waits > 0 ? [waiting] : []),
      ...(waits > 0 && isLong() ? [make("p", "The bench may have another address now. Write these readings down, then pair this device again.", { className: "warning" })] : []));
  };

  const pressOf = input => ({ shown: input.value.trim(), seen: Number(input.dataset.seen || 0), at: Date.now() });
  const keepOne = async (input, { shown, seen, at, wasPressed = false }) => {
    const unit = location.pathname.match(/^\/units\/([0-9a-f-]{36})/)?.[1];
    if (!shown || !unit || !input.value) return;
    const items = await all();
    try {
      await write({ id: window.ohmstead.entryId(input.dataset.window), n: (items.at(-1)?.n ?? 0) + 1, unit, reading: input.dataset.kept, title: input.dataset.title, shown, seen, at, wasPressed });
    } catch {
      place.hidden = false;
      place.replaceChildren(make("b", "This browser cannot keep it. Leave it in its box until the connection is back, then enter it."));
      return;
    }
    // Only what is on the disk leaves its box.
    if (input.value.trim() === shown) input.value = "";
    if (!isAway()) tell(input);
    await show();
  };
  // One after the other: of two presses on one value the second finds its box empty.
  let keeping = Promise.resolve();
  const keep = (input, press) => (keeping = keeping.catch(() => { /* told where it happened */ }).then(() => keepOne(input, press)));

  let isSending = false;
  const post = item => fetch(`/units/${item.unit}/kept`, {
    method: "POST", headers: { "Content-Type": "application/json" },
    body: JSON.stringify({ id: item.id, reading: item.reading, shown: item.shown, seen: item.seen ?? 0, secondsAgo: Math.max(0, (Date.now() - item.at) / 1000), wasPressed: item.wasPressed }),
  });
  const send = async () => {
    if (isSending || isAway()) return;
    isSending = true;
    try {
      for (const item of (await all()).filter(i => !i.refused)) {
        const answer = await asked(() => post(item));
        lostAt = 0;
        if (answer.ok) await drop(item.id);
        else if (answer.status >= 400 && answer.status < 500) await write({ ...item, refused: (await answer.text()) || "this device may not enter anything now." });
        else return;
      }
      lostAt = 0;
    } catch { lose(); /* not back yet: it is tried again */ } finally { isSending = false; await show(); }
  };

  // In the silence before a cut is noticed a person goes on from box to box.
  const pressed = new Map();
  const press = input => {
    for (const [other, { at }] of pressed)
      if (other === input || !other.isConnected || Date.now() - at > onItsWay) pressed.delete(other);
    pressed.set(input, pressOf(input));
  };
  // While there is no connection the pad works here: the screen's own keys would be pressed for nobody.
  const mine = e => { e.stopImmediatePropagation(); return true; };
  addEventListener("submit", e => {
    const input = e.target.querySelector?.(box);
    tellAll();
    if (input && isAway() && mine(e)) { e.preventDefault(); keep(input, pressOf(input)); }
    else if (input) press(input);
  }, true);
  addEventListener("click", e => {
    tellAll();
    const key = isAway() && e.target.closest?.(".pad .keys button[type=button]"), input = key && key.closest("form").querySelector(box);
    if (!input || !mine(e)) return;
    const word = key.textContent.trim(), text = input.value;
    if (word === "⌫") input.value = text.slice(0, -1);
    else if (word === "−") input.value = text.startsWith("-") ? text.slice(1) : `-${text}`;
    else if (word === "jumps") input.value = `jumps ${text}`;
    else if (word === "to") input.value = `${text.trimEnd()} to `;
    else if (word !== "not taken") input.value = text + word;
  }, true);
  for (const type of ["input", "keydown", "keyup", "change"])
    addEventListener(type, e => { tellAll(); if (isAway() && e.target.matches?.(box)) mine(e); }, true);

  // What was entered just before the connection went may have got through or not: it is kept, and said so to the bench, which looks.
  const turn = async () => {
    tellAll();
    if (isAway()) lose();
    const onTheirWay = isAway() ? [...pressed] : [];
    if (isAway()) pressed.clear();
    for (const [input, was] of onTheirWay)
      if (input.isConnected && input.value.trim() === was.shown && Date.now() - was.at < onItsWay) await keep(input, { ...was, wasPressed: true });
    await show();
    await send();
  };
  new MutationObserver(turn).observe(modal, { attributes: true, attributeFilter: ["class"] });
  for (const type of ["online", "offline", "load"]) addEventListener(type, turn);
  setInterval(async () => {
    if (isAway()) lose();
    if (!(await all()).some(i => !i.refused)) return;
    if (!isAway()) await send();
    else if (isLong() && !place.querySelector(".warning")) await show();
  }, pause);
})();
