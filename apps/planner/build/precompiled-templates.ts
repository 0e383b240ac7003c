import { createRequire } from "node:module";
import type { Plugin } from "vite";

const NAME = "\0precompiled-handlebars";

/**
 * Puts compiled templates in the place of the template compiler. The compiler makes functions from text, which a page with a strict
 * content policy may not do; it is also the larger part of the library.
 */
export function precompiledTemplates(sources: readonly string[]): Plugin {
  const require = createRequire(import.meta.url);
  const handlebars = require("handlebars") as { precompile(source: string, options: object): string };
  return {
    name: "precompiled-templates",
    enforce: "pre",
    resolveId(id) {
      return id === "handlebars" ? NAME : null;
    },
    load(id) {
      if (id !== NAME) return null;
      const entries = sources.map((source) => `[${JSON.stringify(source)}, ${handlebars.precompile(source, { strict: true })}]`);
      return `
import loaded from ${JSON.stringify(require.resolve("handlebars/dist/cjs/handlebars.runtime.js"))};
const runtime = loaded.default ?? loaded;
const specs = new Map([${entries.join(",\n")}]);
function create() {
  const environment = runtime.create();
  environment.compile = (source) => {
    const spec = specs.get(source);
    if (spec === undefined) throw new Error("a template that was not there when the page was built");
    return environment.template(spec);
  };
  return environment;
}
export default { create, SafeString: runtime.SafeString, escapeExpression: runtime.Utils.escapeExpression };
`;
    },
  };
}
