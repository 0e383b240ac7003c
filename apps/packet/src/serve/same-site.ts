import type { IncomingHttpHeaders } from "node:http";
import { Refusal } from "./refusal.js";

/** The names under which the server may be asked for, with its port. */
export const hostsOf = (port: number): readonly string[] => [`127.0.0.1:${port}`, `localhost:${port}`];

/**
 * Throws unless the request names this server and comes from its own page or from no page. A foreign name that leads to this
 * machine (DNS rebinding) fails by its Host; a foreign page's request fails by its Origin or by Sec-Fetch-Site.
 */
export function assertOwn(headers: IncomingHttpHeaders, port: number): void {
  const hosts = hostsOf(port);
  if (headers.host === undefined || !hosts.includes(headers.host)) throw new Refusal(421, `this server answers to ${hosts[0]} alone`);
  if (headers.origin !== undefined && !hosts.some((host) => headers.origin === `http://${host}`))
    throw new Refusal(403, "another site's page may not ask this server");
}

/** The same for a request that makes something: also a page's request without an Origin must be this server's own. */
export function assertOwnAction(headers: IncomingHttpHeaders): void {
  const from = headers["sec-fetch-site"];
  if (from !== undefined && from !== "same-origin" && from !== "none") throw new Refusal(403, "another site's page may not ask this server");
}
