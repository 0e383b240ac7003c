/** The machine lacks something the program needs (browser, font, disk, permission). The message says what and, on a second line, the hint how to mend it. */
export class EnvironmentError extends Error {
  override readonly name = "EnvironmentError";
  readonly hint: string | undefined;

  constructor(message: string, options: { hint?: string; cause?: unknown } = {}) {
    super(options.hint === undefined ? message : `${message}\n    mend: ${options.hint}`, options.cause === undefined ? undefined : { cause: options.cause });
    this.hint = options.hint;
  }
}
