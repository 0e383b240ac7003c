/** The document itself cannot be trusted on paper: it left its page, asked for the network, or lost its text. */
export class PrintError extends Error {
  override readonly name = "PrintError";
}
