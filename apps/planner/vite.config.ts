import { defineConfig } from "vite";
import { PAGE, PARTIALS } from "../../packages/sheets/src/templates/packet.js";
import { offline } from "./build/offline.js";
import { precompiledTemplates } from "./build/precompiled-templates.js";

const conditions = ["branchwork-source", "module", "browser", "import", "default"];
const templates = () => precompiledTemplates([PAGE, ...Object.values(PARTIALS)]);

export default defineConfig({
  base: "./",
  resolve: { conditions },
  plugins: [templates(), offline(["paper.html", "icon.svg", "site.webmanifest"])],
  worker: { format: "es", plugins: () => [templates()] },
  build: { target: "es2022", assetsInlineLimit: 0, modulePreload: { polyfill: false }, chunkSizeWarningLimit: 2000 },
  server: { host: "127.0.0.1" },
});
