// SPDX-License-Identifier: Apache-2.0
"use strict";
// Keeps the board and what belongs to it on the device, so that it opens without network.
const name = "quoin-board-1";
const files = ["index.html", "manifest.webmanifest", "icon.svg"];
self.addEventListener("install", (event) => event.waitUntil(
  caches.open(name).then((cache) => cache.addAll(files)).then(() => self.skipWaiting())));
self.addEventListener("activate", (event) => event.waitUntil(
  caches.keys().then((all) => Promise.all(all.filter((one) => one !== name).map((one) => caches.delete(one))))));
// The network first, for a newer board; what is kept where there is none.
self.addEventListener("fetch", (event) => event.respondWith(
  fetch(event.request).then((answer) => {
    const copy = answer.clone();
    if (answer.ok) caches.open(name).then((cache) => cache.put(event.request, copy));
    return answer;
  }).catch(() => caches.match(event.request, {ignoreSearch: true}))));
