import type { Overlay } from "../overlay/schema.js";
import { type Block, blanks, paragraph, together } from "./packet.js";

const SIGNERS: Readonly<Record<NonNullable<Overlay["statements"][number]["signed_by"]>, string>> = {
  owner: "Owner's signature",
  preparer: "Preparer's signature",
  contractor: "Contractor's signature",
};

/** The jurisdiction's statements in its exact words, each with the blanks it asks. */
export function statementBlocks(overlay: Overlay | null): readonly Block[] {
  const statements = overlay?.statements ?? [];
  const use = overlay?.zoning?.intended_use;
  return [
    ...(statements.length === 0 ? [paragraph("No statement of the jurisdiction was entered. Use the jurisdiction's own forms.")] : []),
    ...(use === undefined ? [] : [together(paragraph(`Use of the outlet: ${use}`), blanks("Owner's initials", "Date"))]),
    ...statements.map((s): Block => {
      const source = s.citation === undefined ? "" : ` (${s.citation})`;
      const signed = [...(s.initials === true ? ["Initials", "Date"] : []), ...(s.signed_by === undefined ? [] : [SIGNERS[s.signed_by], "Date"])];
      return together(
        paragraph(`${s.title}: ${s.says}${source}`),
        ...(s.perjury === true ? [paragraph("Signed under penalty of perjury.")] : []),
        ...(signed.length === 0 ? [] : [blanks(...signed)]),
        ...(s.notary === true
          ? [paragraph("To be signed before a notary: do not sign beforehand."), blanks("Notary: name and commission", "Signature and seal", "Date")]
          : []),
      );
    }),
  ];
}
