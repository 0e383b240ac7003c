import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { basisFrom } from "./apply.js";
import { flattenOverlay } from "./flatten.js";
import { overlayJsonSchema } from "./json-schema.js";

const folder = new URL("../../../../fixtures/", import.meta.url);
const names = readdirSync(new URL("overlays/", folder)).map((name) => name.replace(/\.yaml$/, ""));
const texts = Object.fromEntries(names.map((name) => [name, readFileSync(new URL(`overlays/${name}.yaml`, folder), "utf8")]));

describe("the shipped overlays", () => {
  it.each(names)("%s reads with what it extends, fits its edition, and its first line names the schema", (name) => {
    const result = flattenOverlay(name, texts);
    if (!result.ok) throw new Error(JSON.stringify(result.issues, null, 1));
    expect(basisFrom(result.overlay, result.overlay.edition ?? "2023").issues).toEqual([]);
    expect(texts[name]?.split("\n")[0]).toBe("# yaml-language-server: $schema=../overlay.schema.json");
    expect(result.overlay.id).toBe(name);
  });
  it("have an unamended base for each edition, and each intake mode", () => {
    const flat = names.flatMap((name) => {
      const result = flattenOverlay(name, texts);
      return result.ok ? [result.overlay] : [];
    });
    for (const edition of ["2017", "2020", "2023", "2026"]) expect(flat.find((o) => o.id === `base-${edition}`)?.edition).toBe(edition);
    for (const mode of ["over-the-counter", "small-plan-set", "affidavit-and-schematic"]) expect(flat.map((o) => o.intake?.mode)).toContain(mode);
  });
  // To renew it: npx vitest run src/overlay -u
  it("overlay.schema.json is current", async () => {
    await expect(`${JSON.stringify(overlayJsonSchema(), null, 2)}\n`).toMatchFileSnapshot(new URL("overlay.schema.json", folder).pathname);
  });
});
