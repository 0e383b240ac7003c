const LINES: Readonly<Record<string, string>> = {
  wall: "M14 26h34v18h8v10",
  yard: "M14 26h34v8h6v26h44V40",
  inside: "M14 26h26v22",
  attic: "M14 34V16h28v24",
};

/** A house in section with the way the circuit goes. */
export function RoutePicture({ of }: { readonly of: string }) {
  return (
    <svg viewBox="0 0 110 70" class="picture route" aria-hidden="true">
      <path class="ink thin" d="M4 54V24L29 8l25 16v30M0 54h110" />
      <path class="ink" d={LINES[of] ?? ""} />
      <rect class="solid" x="9" y="28" width="8" height="12" />
      {of === "yard" && <circle class="solid" cx="98" cy="38" r="4" />}
      {of === "wall" && <circle class="solid" cx="56" cy="54" r="4" />}
      {(of === "inside" || of === "attic") && <circle class="solid" cx={of === "inside" ? 40 : 42} cy={of === "inside" ? 49 : 42} r="4" />}
    </svg>
  );
}
