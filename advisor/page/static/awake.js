// Keeps the screen on while the work is at the board, where the browser allows it, and says which.
// The page reads and works without it: nothing else of it is done in a script.
"use strict";

const told = document.getElementById("awake");

function say(text) {
  told.textContent = text;
  told.hidden = false;
}

async function hold() {
  if (document.visibilityState !== "visible") return;
  try {
    await navigator.wakeLock.request("screen");
    say("The screen stays on while this page is open.");
  } catch {
    say("This device did not let the page keep its screen on: it may go dark as it usually does.");
  }
}

if (told && "wakeLock" in navigator) {
  document.addEventListener("visibilitychange", hold);
  hold();
} else if (told) {
  say("This browser lets no page at this address keep the screen on: see its own settings.");
}
