// Tones that are heard across a bench, and what keeps a hand off while a breaker counts: nothing outside the page can be reached, and
// the space bar finds its button wherever the hand was.
(() => {
  let sound = null;
  const beep = (at, hertz, seconds) => {
    const [wave, gain] = [sound.createOscillator(), sound.createGain()];
    wave.frequency.value = hertz;
    gain.gain.setValueAtTime(0.0001, at);
    gain.gain.exponentialRampToValueAtTime(0.5, at + 0.02);
    gain.gain.exponentialRampToValueAtTime(0.0001, at + seconds);
    wave.connect(gain).connect(sound.destination);
    wave.start(at);
    wave.stop(at + seconds);
  };
  const tones = { call: [660, 880, 660, 880], stop: [990, 990, 990, 990, 990, 990], count: [440] };
  window.ohmstead.tone = name => {
    try {
      sound ??= new AudioContext();
      sound.resume();
      tones[name].forEach((hertz, n) => beep(sound.currentTime + n * 0.3, hertz, 0.25));
    } catch { /* A machine without sound: the words stand there in any case. */ }
  };
  window.ohmstead.handsOff = isOn => {
    for (const part of document.querySelectorAll(".bar,.foot,.skip")) part.inert = isOn;
  };
  document.addEventListener("keydown", e => {
    const button = e.key === " " ? document.querySelector(".hands-off button") : null;
    if (!button) return;
    e.preventDefault();
    if (document.activeElement !== button) button.focus();
  }, true);
})();
