import { readFile } from "node:fs/promises";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { extname, join, normalize } from "node:path";
import { fileURLToPath } from "node:url";

const DIST = fileURLToPath(new URL("../dist", import.meta.url));
const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript",
  ".css": "text/css",
  ".svg": "image/svg+xml",
  ".woff2": "font/woff2",
  ".webmanifest": "application/manifest+json",
};

/** Serves the built page, as any plain file server does. */
export async function served(): Promise<{ readonly url: string; readonly close: () => Promise<void> }> {
  const server = createServer(async (request, response) => {
    const path = normalize(new URL(request.url ?? "/", "http://here").pathname);
    const file = join(DIST, path.endsWith("/") ? `${path}index.html` : path);
    try {
      const body = await readFile(file);
      // Stricter than the page's own policy asks: code made from text is refused in the worker too.
      response.writeHead(200, {
        "content-type": TYPES[extname(file)] ?? "application/octet-stream",
        ...(extname(file) === ".js" ? { "content-security-policy": "default-src 'none'; script-src 'self'; connect-src 'self'" } : {}),
      });
      response.end(body);
    } catch {
      response.writeHead(404);
      response.end();
    }
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const { port } = server.address() as AddressInfo;
  return {
    url: `http://127.0.0.1:${port}/`,
    close: () =>
      new Promise((resolve) => {
        server.closeAllConnections();
        server.close(() => resolve());
      }),
  };
}
