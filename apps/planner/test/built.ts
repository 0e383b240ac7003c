import { build } from "vite";

/** Builds the page once, as it is served. */
export default async function setup(): Promise<void> {
  // Vitest names the environment "test", for which Vite would build the page without what only the finished page does.
  process.env.NODE_ENV = "production";
  await build({ root: new URL("..", import.meta.url).pathname, logLevel: "warn" });
}
