// Stands in when a paired tablet loads a page and the bench does not answer: it says so, lists what was kept, and goes on when the bench is
// back. Browsers let it do so only where the certificate is trusted. It keeps how a page looks, and nothing of the workshop.
const kept = "ohmstead-offline", files = ["/ohmstead.css", "/ohmstead.js"];
addEventListener("install", e => e.waitUntil(caches.open(kept).then(c => c.addAll(files)).then(() => skipWaiting())));
addEventListener("activate", e => e.waitUntil(clients.claim()));
const page = () => new Response(`<!DOCTYPE html>
<html lang="en" data-device="offline"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">
<title>No connection – Ohmstead</title><link rel="stylesheet" href="/ohmstead.css"></head>
<body><header class="bar"><b class="home">Ohmstead</b></header>
<main><h1>No connection</h1><p>The bench does not answer. This page comes back by itself when it does.</p>
<section class="sheet stack near"><h2>What to look at</h2><ul><li>Is the bench switched on, and is Ohmstead running on it?</li><li>Is this device on the same network?</li></ul><p>Readings that you entered without a connection are kept here, and sent later.</p></section>
<p><a class="do" href="">Try again</a></p></main>
<div id="components-reconnect-modal" class="components-reconnect-failed" style="display: none"></div><section id="unsent" role="status" hidden></section>
<script src="/ohmstead.js"></script></body></html>`, { headers: { "Content-Type": "text/html; charset=utf-8", "Content-Security-Policy": "default-src 'self'; style-src-attr 'unsafe-inline'" } });
addEventListener("fetch", e => {
  const url = new URL(e.request.url);
  if (url.origin !== location.origin || e.request.method !== "GET") return;
  if (e.request.mode === "navigate") e.respondWith(fetch(e.request).catch(page));
  else if (files.includes(url.pathname)) e.respondWith(fetch(e.request).catch(() => caches.match(url.pathname)));
});
