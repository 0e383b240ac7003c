import { fileURLToPath } from "node:url";
import { stopOnSignals } from "../batch/stop-signals.js";
import { EXIT } from "../exit-codes.js";
import { InputError } from "../load-design.js";
import { openPrinterPool } from "../print/printer-pool.js";
import { withExit } from "../report.js";
import { openPacketServer } from "./packet-server.js";
import { staticFiles } from "./static-files.js";

export interface ServeOptions {
  readonly port: string;
  readonly browser?: string;
}

/** `serve`: the planner's page and a packet maker on this machine alone, until told to end. */
export function serve(options: ServeOptions): Promise<number> {
  return withExit(async () => {
    const port = Number(options.port);
    if (!/^\d{1,5}$/.test(options.port) || port > 65535)
      throw new InputError("--port", [{ path: "", what: `"${options.port}" is not a port`, mend: "give a whole number from 0 to 65535" }]);
    const warn = (message: string) => console.error(message);
    const files = await staticFiles(fileURLToPath(new URL("../../../planner/dist", import.meta.url)));
    if (files === null) warn("the planner is not built here, so only POST /packet is served; in the repository `pnpm build` makes it");
    const pool = await openPrinterPool({ ...(options.browser === undefined ? {} : { browser: options.browser }), warn, printsPerPage: 8, signals: "program" });
    const stop = stopOnSignals(() => warn("finishing what is in hand; once more to end now"));
    try {
      const server = await openPacketServer({ port, files, print: pool.print, warn });
      console.log(`http://127.0.0.1:${server.port}/`);
      await stop.first;
      await Promise.race([server.close(), stop.now]);
    } finally {
      await Promise.race([pool.close(), stop.now]);
      stop.release();
    }
    return EXIT.ready;
  });
}
