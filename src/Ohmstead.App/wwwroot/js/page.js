// Day or dim: as the machine is set, until a person chooses; remembered in this browser.
(() => {
  const root = document.documentElement;
  const put = light => { if (light) root.dataset.light = light; };
  put(localStorage.getItem("light"));
  window.ohmstead = {
    light: () => root.dataset.light ?? (matchMedia("(prefers-color-scheme: dark)").matches ? "dim" : "day"),
    setLight: light => { localStorage.setItem("light", light); put(light); },
  };
  document.addEventListener("click", e => {
    if (e.target.closest?.(".light-switch")) window.ohmstead.setLight(window.ohmstead.light() === "dim" ? "day" : "dim");
  });
})();

// The first box of a new page, unless the hand was quicker and types in another already.
window.ohmstead.handTo = box => { if (!document.activeElement?.matches("input,textarea,select")) box?.focus(); };

// A button that names its keys is pressed by them wherever the hand is, but not while something is typed.
document.addEventListener("keydown", e => {
  if (e.ctrlKey || e.altKey || e.metaKey || e.target.matches?.("input,textarea,select,[contenteditable]")) return;
  const button = [...document.querySelectorAll("[data-keys]")].find(b => b.dataset.keys.split(" ").some(k => k.toLowerCase() === e.key.toLowerCase()));
  if (!button) return;
  e.preventDefault();
  button.click();
});

// What is typed and not saved outlives a fetch of the page: afterwards it is back in its box, and that is said.
(() => {
  const name = "typed", boxes = new Set();
  const kind = "main input:not([type=file],[type=radio],[type=checkbox],[type=hidden]),main textarea";
  const key = box => box.id || box.name;
  const find = key => document.getElementById(key) ?? document.querySelector(`main [name="${CSS.escape(key)}"]`);
  document.addEventListener("input", e => { if (e.target.matches?.(kind) && key(e.target)) boxes.add(e.target); }, true);
  window.ohmstead.keepTyped = () => {
    // A box of a reading keeps its value for itself while there is no connection: it was heard of by nobody here.
    const typed = [...new Set([...boxes, ...document.querySelectorAll("main [data-kept]")])].filter(b => b.isConnected && b.value).map(b => [key(b), b.value]);
    if (typed.length) sessionStorage.setItem(name, JSON.stringify({ path: location.pathname, typed }));
  };
  // The page on which a device proves its key comes in between, or the one that stands in for the bench: they have no boxes.
  if (document.getElementById("prove") || document.documentElement.dataset.device === "offline") return;
  const kept = JSON.parse(sessionStorage.getItem(name) ?? "null");
  // A device that was shut out comes back by other pages: it waits for its own.
  if (kept?.path !== location.pathname) return;
  sessionStorage.removeItem(name);
  const end = Date.now() + 30000;
  const put = (left) => {
    // A page that is not live yet would lose it.
    if (document.querySelector("main:not([aria-busy])"))
      left = left.filter(([to, value]) => {
        const box = find(to);
        if (!box) return true;
        if (box.value === value) return false;
        box.value = value;
        for (const type of ["input", "change"]) box.dispatchEvent(new Event(type, { bubbles: true }));
        const said = document.getElementById("typed-back");
        said.hidden = false;
        setTimeout(() => { said.hidden = true; }, 20000);
        return false;
      });
    if (left.length && Date.now() < end) setTimeout(put, 200, left);
  };
  put(kept.typed);
})();

// After a restart of the tool the old page's connection is gone for good, and so it is after an error that ended it at the tool's
// side: the page is fetched again, as it was saved. One that breaks again and again is left to the person.
(() => {
  const often = 3, soon = 60000;
  const again = async () => {
    for (;;) {
      // Photos that wait would be lost with the page: they go first.
      try { if (await window.ohmstead.answers() && !window.ohmstead.photosWait?.()) { window.ohmstead.keepTyped(); location.reload(); return; } } catch { /* not back yet */ }
      await new Promise(done => setTimeout(done, 2000));
    }
  };
  const broke = () => {
    const times = JSON.parse(sessionStorage.getItem("broke") ?? "[]").filter(t => Date.now() - t < soon);
    if (times.length >= often) return;
    sessionStorage.setItem("broke", JSON.stringify([...times, Date.now()]));
    again();
  };
  const watch = () => {
    const modal = document.getElementById("components-reconnect-modal"), error = document.getElementById("blazor-error-ui");
    if (modal) new MutationObserver(() => { if (/failed|rejected/.test(modal.className)) again(); }).observe(modal, { attributes: true, attributeFilter: ["class"] });
    if (error) {
      new MutationObserver(() => { if (error.style.display === "block") broke(); }).observe(error, { attributes: true, attributeFilter: ["style"] });
      error.querySelector("a").addEventListener("click", e => { e.preventDefault(); again(); });
    }
  };
  document.readyState === "loading" ? document.addEventListener("DOMContentLoaded", watch) : watch();
})();
