/** What a maker's thread is told. */
export type ToMaker =
  | { readonly kind: "make"; readonly body: string }
  | { readonly kind: "printed"; readonly pdf: Uint8Array }
  | { readonly kind: "glyph-missing"; readonly says: string }
  /** For a reason that the thread need not know. */
  | { readonly kind: "unprinted" };

/** What it tells. */
export type FromMaker =
  | { readonly kind: "print"; readonly html: string; readonly date: Date; readonly expectText: string }
  | { readonly kind: "made"; readonly pdf: Uint8Array; readonly ready: boolean }
  | { readonly kind: "refused"; readonly status: number; readonly says: string; readonly issues: readonly object[] }
  | { readonly kind: "fault"; readonly says: string };

/** The fault of a thread whose document was not printed: the reason is with who printed. */
export const UNPRINTED = "the document was not printed";
