// Comes after page.js, which makes window.ohmstead: scripts are joined in the order of their names.
// Looking closer at a drawing with two fingers, a wheel, keys or buttons; a tap tells the page which part it was on.
window.ohmstead = Object.assign(window.ohmstead ?? {}, {
  circuit: (root, page) => {
    const pane = root.querySelector(".circuit-pane");
    const svg = () => pane.querySelector("svg");
    const fingers = new Map();
    const [nearest, room, closest] = [12, 14, 1.25];
    const [least, legible] = [0.875, 1]; // pixels to a unit of the drawing (its smallest letters are 16): below the one, it is shown at the other
    let seen = null; // what a person chose to see; null while it is what the page shows
    let start = null; // what a tap may be on, and where it began

    const within = (v, from, to) => Math.min(Math.max(v, from), Math.max(from, to));
    const whole = () => root.dataset.whole.split(" ").map(Number);
    const shown = () => svg().getAttribute("viewBox").split(" ").map(Number);
    const put = box => {
      const all = whole();
      const isWhole = box[2] >= all[2] && box[3] >= all[3];
      seen = isWhole ? all : box;
      svg().setAttribute("viewBox", seen.join(" "));
      pane.classList.toggle("closer", !isWhole);
    };
    const around = marks => {
      const boxes = marks.map(m => m.getBBox());
      const [left, top] = [Math.min(...boxes.map(b => b.x)), Math.min(...boxes.map(b => b.y))];
      return { x: left, y: top, width: Math.max(...boxes.map(b => b.x + b.width)) - left, height: Math.max(...boxes.map(b => b.y + b.height)) - top };
    };
    // The whole where it can be read; else what is looked at; else both leads, whatever it takes; else what is suspected; else the mains side.
    const first = () => {
      const [x, y, w, h] = whole(), { clientWidth: wide, clientHeight: high } = pane;
      if (wide === 0) return;
      if (Math.min(wide / w, high / h) >= least) { put([x, y, w, h]); seen = null; return; }
      const asked = shown();
      const fit = Math.min(wide / asked[2], high / asked[3]);
      if (root.dataset.look && fit >= least) {
        // A small part of it is not blown up: more of what lies around it is seen.
        if (fit > closest) {
          const [wider, higher] = [Math.min(wide / closest, w), Math.min(high / closest, h)];
          put([within(asked[0] + asked[2] / 2 - wider / 2, x, x + w - wider), within(asked[1] + asked[3] / 2 - higher / 2, y, y + h - higher), wider, higher]);
          seen = null;
        }
        return;
      }
      const leads = svg().querySelectorAll(".d-probe-red, .d-probe-black");
      const suspect = svg().querySelector(".d-suspect-high, .d-suspect-medium, .d-suspect-low");
      const marked = leads.length ? around([...leads]) : suspect?.getBBox();
      const scale = leads.length ? Math.min(legible, wide / (marked.width + 2 * room), high / (marked.height + 2 * room)) : legible;
      const [width, height] = [wide / scale, high / scale];
      const middle = marked ? { x: marked.x + marked.width / 2, y: marked.y + marked.height / 2 } : { x: x + width / 2, y: y + h / 2 };
      const seat = (at, long, from, to, low, high) => within(within(at - long / 2, to + room - long, from - room), low, high - long);
      if (leads.length)
        // As much of the path as there is room for, and both leads in any case.
        put([seat(asked[0] + asked[2] / 2, width, marked.x, marked.x + marked.width, x, x + w), seat(asked[1] + asked[3] / 2, height, marked.y, marked.y + marked.height, y, y + h), width, height]);
      else put([within(middle.x - width / 2, x, x + w - width), within(middle.y - height / 2, y, y + h - height), width, height]);
      seen = null;
    };
    const at = e => new DOMPoint(e.clientX, e.clientY).matrixTransform(svg().getScreenCTM().inverse());
    const zoom = (by, about) => {
      const [x, y, w, h] = shown(), all = whole();
      const p = about ?? { x: x + w / 2, y: y + h / 2 };
      const k = Math.max(by, Math.max(all[2], all[3]) / nearest / Math.max(w, h));
      put([p.x - (p.x - x) * k, p.y - (p.y - y) * k, w * k, h * k]);
    };
    const move = (dx, dy) => {
      const [x, y, w, h] = shown(), [left, top, width, height] = whole();
      // The middle of what is seen stays within the drawing: it cannot be lost.
      put([within(x + dx, left - w / 2, left + width - w / 2), within(y + dy, top - h / 2, top + height - h / 2), w, h]);
    };
    const spread = () => { const [a, b] = [...fingers.values()]; return Math.hypot(a.clientX - b.clientX, a.clientY - b.clientY); };
    const middle = () => { const [a, b] = [...fingers.values()]; return { clientX: (a.clientX + b.clientX) / 2, clientY: (a.clientY + b.clientY) / 2 }; };

    pane.addEventListener("pointerdown", e => {
      if (e.button !== 0) return;
      const on = e.target.closest("[data-element],[data-terminal]");
      start = fingers.size === 0 ? { on, x: e.clientX, y: e.clientY } : null;
      fingers.set(e.pointerId, e);
      pane.setPointerCapture(e.pointerId);
    });
    pane.addEventListener("pointermove", e => {
      const before = fingers.get(e.pointerId);
      if (!before) return;
      if (start && Math.hypot(e.clientX - start.x, e.clientY - start.y) > 10) start = null;
      if (fingers.size === 1) {
        fingers.set(e.pointerId, e);
        if (start || !pane.classList.contains("closer")) return;
        const from = at(before), to = at(e);
        move(from.x - to.x, from.y - to.y);
      } else if (fingers.size === 2) {
        const wide = spread(), from = at(middle());
        fingers.set(e.pointerId, e);
        zoom(wide / Math.max(spread(), 1), at(middle()));
        const to = at(middle());
        if (pane.classList.contains("closer")) move(from.x - to.x, from.y - to.y);
      }
    });
    const up = e => {
      if (!fingers.delete(e.pointerId)) return;
      const on = e.type === "pointerup" ? start?.on : null;
      start = null;
      if (on) page.invokeMethodAsync("TapAsync", on.dataset.element ?? on.dataset.terminal);
    };
    pane.addEventListener("pointerup", up);
    pane.addEventListener("pointercancel", up);
    pane.addEventListener("wheel", e => {
      // Wholly seen, the wheel away goes on scrolling the page.
      if (e.deltaY > 0 && !pane.classList.contains("closer")) return;
      e.preventDefault();
      zoom(Math.exp(e.deltaY * (e.ctrlKey ? 0.01 : 0.0015)), at(e));
    }, { passive: false });
    pane.addEventListener("keydown", e => {
      const step = shown()[2] / 8;
      const done = {
        "+": () => zoom(0.8), "=": () => zoom(0.8), "-": () => zoom(1.25), "0": () => put(whole()),
        ArrowLeft: () => move(-step, 0), ArrowRight: () => move(step, 0), ArrowUp: () => move(0, -step), ArrowDown: () => move(0, step),
      }[e.key];
      if (!done || e.ctrlKey || e.metaKey || e.altKey) return;
      if (e.key.startsWith("Arrow") && !pane.classList.contains("closer")) return;
      e.preventDefault();
      done();
    });
    root.addEventListener("click", e => {
      const by = e.target.closest("[data-zoom]")?.dataset.zoom;
      if (by === "in") zoom(0.7);
      if (by === "out") zoom(1 / 0.7);
      if (by === "whole") put(whole());
    });
    // Drawn anew with other values laid over it, it stays where a person was looking; with another reading it does not.
    let look = root.dataset.look;
    const again = () => {
      if (!svg()) return;
      if (look !== root.dataset.look) [look, seen] = [root.dataset.look, null];
      if (seen) put(seen);
      else {
        first();
        pane.classList.toggle("closer", shown()[2] < whole()[2] || shown()[3] < whole()[3]);
      }
    };
    new MutationObserver(again).observe(root, { childList: true, subtree: true, attributes: true, attributeFilter: ["data-look"] });
    // Folded away it has no width; opened or turned it is looked at anew.
    new ResizeObserver(again).observe(pane);
    again();
  },
});
