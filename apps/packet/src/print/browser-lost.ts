import { EnvironmentError } from "./environment-error.js";

/** The browser, or the page in it, ended or did not answer while a document was printed: the document may print elsewhere. */
export class BrowserLostError extends EnvironmentError {
  constructor(
    readonly how: "ended" | "silent",
    message: string,
    cause?: unknown,
  ) {
    super(message, cause === undefined ? {} : { cause });
  }
}
