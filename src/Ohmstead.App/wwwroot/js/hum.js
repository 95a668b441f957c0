// A recording of the hum: the browser makes PCM WAV of it, and both are sent. A WAV is sent as it is. What the browser cannot read it
// says so, and a WAV is asked for. Of several channels the louder is taken, as in a WAV: of two microphones the one that lies nearer.
(() => {
  const most = 40e6, rate = 48000, longest = 60;
  const word = (bytes, at) => String.fromCharCode(...bytes.subarray(at, at + 4));
  const isWav = bytes => bytes.length > 12 && word(bytes, 0) === "RIFF" && word(bytes, 8) === "WAVE";
  const power = samples => {
    let sum = 0, squares = 0;
    for (const x of samples) { sum += x; squares += x * x; }
    return squares / samples.length - (sum / samples.length) ** 2;
  };
  const louder = sound => {
    const all = Array.from({ length: sound.numberOfChannels }, (_, n) => sound.getChannelData(n));
    return all.length < 2 ? all[0] : all.reduce((a, b) => power(b) > power(a) ? b : a);
  };
  const wavOf = sound => {
    const samples = louder(sound), count = Math.min(samples.length, longest * sound.sampleRate);
    const view = new DataView(new ArrayBuffer(44 + 2 * count));
    const text = (at, letters) => [...letters].forEach((l, n) => view.setUint8(at + n, l.charCodeAt(0)));
    text(0, "RIFF"); view.setUint32(4, 36 + 2 * count, true); text(8, "WAVEfmt "); view.setUint32(16, 16, true);
    view.setUint16(20, 1, true); view.setUint16(22, 1, true); view.setUint32(24, sound.sampleRate, true);
    view.setUint32(28, 2 * sound.sampleRate, true); view.setUint16(32, 2, true); view.setUint16(34, 16, true);
    text(36, "data"); view.setUint32(40, 2 * count, true);
    for (let n = 0; n < count; n++) view.setInt16(44 + 2 * n, Math.max(-32768, Math.min(32767, Math.round(samples[n] * 32768))), true);
    return view.buffer;
  };
  const post = async (address, body) => {
    const answer = await window.ohmstead.asked(() => fetch(address, { method: "POST", body })).catch(() => { throw new Error("Ohmstead does not answer. Choose the file again."); });
    const said = await answer.text();
    if (!answer.ok) throw new Error(said || "Not saved. Choose the file again.");
    return said;
  };
  const decoded = async bytes => {
    try { return await new OfflineAudioContext(1, 1, rate).decodeAudioData(bytes.buffer.slice(0)); }
    catch { throw new Error("This browser cannot read this kind of recording. Save it as WAV on the phone, and choose that file."); }
  };
  const send = async (input, file, say) => {
    if (file.size > most) throw new Error("Larger than 40 MB. Ten seconds will do.");
    say("Reading the recording…");
    const bytes = new Uint8Array(await file.arrayBuffer()), address = new URL(input.dataset.hum, location.origin);
    if (!isWav(bytes)) {
      const wav = wavOf(await decoded(bytes));
      say("Listening…");
      address.searchParams.set("wav", await post(address.pathname + "/wav", wav));
    }
    address.searchParams.set("entry", window.ohmstead.entryId(input.dataset.window));
    address.searchParams.set("as", input.dataset.as);
    say("Listening…");
    await post(address, file);
  };
  document.addEventListener("change", async e => {
    const input = e.target, list = input.dataset?.hum && document.getElementById(input.dataset.list);
    if (!list || !input.files.length) return;
    const said = document.createElement("p"), file = input.files[0];
    list.replaceChildren(said);
    try { await send(input, file, words => { said.textContent = words; }); list.replaceChildren(); }
    catch (wrong) { said.className = "wrong"; said.textContent = wrong.message; }
    input.value = "";
  });
})();
