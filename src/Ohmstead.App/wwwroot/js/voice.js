// Hands that hold two probes: off until a person turns it on, remembered in this browser. The browser's own voice asks and reads back,
// where it has one that needs no net. A key that types nothing, or a foot switch that sends one, keeps what is in the box; with the
// value kept it goes on to the next reading.
(() => {
  const name = "hands-free", voice = () => window.speechSynthesis?.getVoices().find(v => v.localService && v.lang.startsWith("en")) ?? null;
  const isOn = () => localStorage.getItem(name) === "on";
  const types = /^([0-9.,\-−kKmMgGoOlLjuptsΩ]|Backspace|Delete|Tab|Enter|Escape|Shift|Control|Alt|AltGraph|Meta|CapsLock|Dead|Home|End|Arrow\w+)$/;
  window.ohmstead.hands = {
    isOn,
    hasVoice: () => voice() !== null,
    turn: on => { localStorage.setItem(name, on ? "on" : "off"); if (!on) window.speechSynthesis?.cancel(); },
    say: words => {
      const own = voice();
      if (!isOn() || !own) return;
      const speech = new SpeechSynthesisUtterance(words);
      speech.voice = own;
      window.speechSynthesis.cancel();
      window.speechSynthesis.speak(speech);
    },
  };
  document.addEventListener("keydown", e => {
    if (!isOn() || e.ctrlKey || e.altKey || e.metaKey || types.test(e.key) || !document.querySelector(".hands")) return;
    const form = document.querySelector("form.pad"), box = form?.querySelector("input");
    // Words ("jumps 3.1 to OL") are typed with every letter there is; other boxes are none of this.
    if (e.key.length === 1 && (/^[a-z]/i.test(box?.value ?? "") || (e.target.matches?.("input,textarea,select") && e.target !== box))) return;
    e.preventDefault();
    e.stopPropagation();
    if (box?.value) form.requestSubmit();
    else if (!form) document.querySelector("a.do[href*='/reading/']")?.click();
  }, true);
})();
