/** An answer that is no page and no packet: its status and one sentence for a person. */
export class Refusal extends Error {
  override readonly name = "Refusal";
  constructor(
    readonly status: number,
    message: string,
    readonly headers: Readonly<Record<string, string>> = {},
    /** Places in the given texts that are at fault. */
    readonly issues: readonly object[] = [],
  ) {
    super(message);
  }
}
