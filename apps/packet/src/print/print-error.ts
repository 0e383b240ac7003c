/** The document itself cannot be trusted on paper: it left its page, asked for the network, lost its text, or brings the browser down. */
export class PrintError extends Error {
  override readonly name = "PrintError";
}

/** No font here draws a character of the document: it would print as an empty box. */
export class MissingGlyphError extends PrintError {}
