// A paired device proves at every page and every live connection that it is the one: it signs a challenge with a key that was made here at
// its pairing and that this browser gives to nobody, not to this script either.
(() => {
  const root = document.documentElement, keyName = "device";
  const opened = new Promise((done, failed) => {
    const asked = indexedDB.open("ohmstead", 1);
    asked.onupgradeneeded = () => { asked.result.createObjectStore("keys"); asked.result.createObjectStore("kept", { keyPath: "id" }); };
    asked.onsuccess = () => done(asked.result);
    asked.onerror = () => failed(asked.error);
  });
  opened.catch(() => { /* said where it is needed */ });
  const from = async (store, mode, act) => {
    const db = await opened;
    return new Promise((done, failed) => {
      const turn = db.transaction(store, mode), asked = act(turn.objectStore(store));
      turn.oncomplete = () => done(asked.result);
      turn.onerror = turn.onabort = () => failed(turn.error);
    });
  };
  const base64 = bytes => btoa(String.fromCharCode(...new Uint8Array(bytes)));
  const sign = async (key, text) => base64(await crypto.subtle.sign({ name: "ECDSA", hash: "SHA-256" }, key, new TextEncoder().encode(text)));
  const post = async (path, body) => {
    const answer = await fetch(path, { method: "POST", cache: "no-store", headers: body ? { "Content-Type": "application/json" } : {}, body: body && JSON.stringify(body) });
    if (!answer.ok) throw Object.assign(new Error(await answer.text()), { status: answer.status });
    return answer.text();
  };
  const proveOnce = async use => {
    const pair = await from("keys", "readonly", s => s.get(keyName));
    if (!pair) throw new Error("This browser has no key.");
    const challenge = await post("/proof/challenge");
    return post("/proof", { use, challenge, signature: await sign(pair.privateKey, `ohmstead\n${use}\n${location.host}\n${challenge}`) });
  };
  // A challenge that grew old on its way, or that was pushed out by others, says nothing of the device: a new one is asked for, once.
  const prove = use => proveOnce(use).catch(why => {
    if (why.status !== 409) throw why;
    return proveOnce(use);
  });
  const isDevice = () => "device" in root.dataset;
  const notLetIn = "This device is not let in any more. Ask for a new code at the bench.";
  // Shut out, or its time is over: what stands on the page is the bench's, and goes. The bench has no page for strangers: this one is made here.
  // What was typed comes back when the device is paired again.
  const leave = () => {
    window.ohmstead.keepTyped();
    location.replace(URL.createObjectURL(new Blob([`<!DOCTYPE html><html lang="en"><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>Ohmstead</title><h1>${notLetIn}</h1>`], { type: "text/html" })));
  };
  const proveOrLeave = use => prove(use).catch(why => {
    if (why.status === 403) leave();
    throw why;
  });
  // Asks the bench for something; where the pass has run out it proves and asks once more. A long file that is refused before it was read
  // ends as if nobody had answered.
  const asked = async ask => {
    const answer = await ask().catch(why => {
      if (!isDevice()) throw why;
      return null;
    });
    if (answer && (answer.status !== 401 || !isDevice())) return answer;
    await prove("page");
    return ask();
  };
  // Does the bench answer, so that this page may be fetched anew?
  const answers = async () => {
    if (isDevice()) await proveOrLeave("page");
    return (await fetch("/", { cache: "no-store" })).ok;
  };
  window.ohmstead = Object.assign(window.ohmstead ?? {}, { from, isDevice, prove, asked, answers, notLetIn });

  // Pairing: the key is made, its open half is sent. The key of an earlier pairing is good until this one has come about.
  const form = document.getElementById("pair");
  form?.addEventListener("submit", async e => {
    e.preventDefault();
    const says = document.getElementById("pair-says"), button = form.querySelector("button");
    button.disabled = true; says.textContent = "";
    try {
      const pair = await crypto.subtle.generateKey({ name: "ECDSA", namedCurve: "P-256" }, false, ["sign"]);
      await from("keys", "readwrite", s => s.put(pair, "next"));
      const key = base64(await crypto.subtle.exportKey("spki", pair.publicKey)), code = form.dataset.code;
      const to = await post(`/pair/${code}`, { name: document.getElementById("name").value, key, print: location.hash.slice(1), signature: await sign(pair.privateKey, `ohmstead\npair\n${location.host}\n${code}`) });
      await from("keys", "readwrite", s => { s.put(pair, keyName); return s.delete("next"); });
      location.replace(to);
    } catch (why) {
      button.disabled = false;
      says.textContent = why.status === 403 ? "This code is not good any more. Ask for a new one at the bench." : why.status ? why.message : `This browser could not make or keep a key (${why.message}). A private window often cannot.`;
    }
  });

  // A cookie alone: prove, then fetch the page that was asked for.
  const wait = document.getElementById("prove");
  const proveHere = () => prove("page").then(() => location.reload(), why => {
    const isOut = why.status === 403 || /no key/.test(why.message);
    wait.textContent = isOut ? notLetIn : "The bench does not answer. Is this device still on its network? It is asked again by itself.";
    wait.className = "warning";
    if (!isOut) setTimeout(proveHere, 3000);
  });
  if (wait) proveHere();

  // A page that is open renews its pass, so that photos and papers are shown.
  if (isDevice()) {
    const renew = () => proveOrLeave("page").catch(() => { /* the connection says it where it matters */ });
    setInterval(renew, 60000);
    document.addEventListener("visibilitychange", () => { if (!document.hidden) renew(); });
  }

  // Where the certificate is trusted, something stands in while the bench does not answer; where not, the browser refuses it.
  if (root.dataset.device === "work" || root.dataset.device === "look") navigator.serviceWorker?.register("/offline.js").catch(() => { /* said where it matters */ });
  if (root.dataset.device === "offline") {
    const back = async () => { if (await answers().catch(() => false)) location.reload(); };
    setInterval(back, 3000);
    addEventListener("online", back);
  }

  // The live connection: a device signs for each one, also when it comes back.
  document.addEventListener("DOMContentLoaded", () => {
    window.Blazor?.start(!isDevice() ? {} : {
      circuit: { configureSignalR: builder => builder.withUrl("/_blazor", { transport: 1, skipNegotiation: true, accessTokenFactory: () => proveOrLeave("live") }) },
    });
  });
})();
