import { render } from "preact";
import { App } from "./app.js";
import { begin } from "./planner.js";

const root = document.getElementById("planner");
if (root === null) throw new Error("the page has no place for the planner");
render(<App />, root);
void begin();

if (import.meta.env.PROD && "serviceWorker" in navigator) {
  navigator.serviceWorker.register("./service-worker.js").catch((error: unknown) => console.warn("not kept for use without a network:", error));
}
