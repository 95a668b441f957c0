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

// A button that names its keys is pressed by them wherever the hand is, but not while something is typed.
document.addEventListener("keydown", e => {
  if (e.ctrlKey || e.altKey || e.metaKey || e.target.matches?.("input,textarea,select,[contenteditable]")) return;
  const button = [...document.querySelectorAll("[data-keys]")].find(b => b.dataset.keys.split(" ").some(k => k.toLowerCase() === e.key.toLowerCase()));
  if (!button) return;
  e.preventDefault();
  button.click();
});

// After a restart of the tool the old page's connection is gone for good: the page is fetched anew, as it was saved.
(() => {
  const watch = () => {
    const modal = document.getElementById("components-reconnect-modal");
    if (!modal) return;
    new MutationObserver(async () => {
      if (!/failed|rejected/.test(modal.className)) return;
      for (;;) {
        // Photos that wait would be lost with the page: they go first.
        try { if ((await fetch("/", { cache: "no-store" })).ok && !window.ohmstead.photosWait?.()) { location.reload(); return; } } catch { /* not back yet */ }
        await new Promise(done => setTimeout(done, 2000));
      }
    }).observe(modal, { attributes: true, attributeFilter: ["class"] });
  };
  document.readyState === "loading" ? document.addEventListener("DOMContentLoaded", watch) : watch();
})();
