/** What every answer carries: nothing may be guessed, framed, shared or sent on by another page. */
export const ANSWER_HEADERS: Readonly<Record<string, string>> = {
  // Styles of the printed sheets stand in the page that shows them, hence 'unsafe-inline' for styles alone.
  "content-security-policy":
    "default-src 'none'; script-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' blob: data:; font-src 'self' data:; connect-src 'self'; worker-src 'self'; frame-src 'self' blob:; manifest-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'self'",
  // By this the planner knows that packets are printed here.
  "x-branchwork-packets": "POST /packet",
  "x-content-type-options": "nosniff",
  "referrer-policy": "no-referrer",
  "cross-origin-opener-policy": "same-origin",
  "cross-origin-resource-policy": "same-origin",
  "permissions-policy": "camera=(), geolocation=(), microphone=(), payment=(), usb=()",
};
