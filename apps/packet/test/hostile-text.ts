import { parseStrictly } from "@branchwork/engine";
import { z } from "zod";

/** Text that means something to a page, a drawing, a template, a style sheet, a spreadsheet or a terminal. */
export const HOSTILE: readonly string[] = [
  "</style><script>alert(1)</script>",
  '"><img src=x onerror=alert(1)>',
  "' onmouseover='alert(1)",
  "<svg onload=alert(1)><script>1</script></svg>",
  "</title></desc></text></svg><script>alert(1)</script>",
  "]]><script>alert(1)</script><![CDATA[",
  "--><iframe src=//evil.test></iframe><!--",
  "<!ENTITY x SYSTEM 'file:///etc/passwd'>&x;",
  "&#60;script&#62;&lt;b&gt;",
  "<base href=//evil.test><meta http-equiv=refresh content=0>",
  "<a href=javascript:alert(1)>x</a>",
  "javascript:alert(1)",
  "{{constructor}} {{{raw}}} {{> cover}} {{#each this}}{{/each}}",
  "{{lookup this 'constructor'}}",
  // biome-ignore lint/suspicious/noTemplateCurlyInString: meant as it stands
  "${7*7} #{7*7} <%= 7*7 %>",
  "}body{background:url(//evil.test)}",
  "*/ } @import url(//evil.test); /*",
  "expression(alert(1)) url(data:text/html,x)",
  // biome-ignore lint/suspicious/noTemplateCurlyInString: meant as it stands
  "`${alert(1)}`",
  "=HYPERLINK(1)",
  "+1+1",
  "-2+3",
  "@SUM(1)",
  "\\x1b[31m %s %n $(id) `id`; rm",
  "דנה לוי",
  "a\u200bb\u200dc\u2060d",
  "🧿👩‍🔧",
  "e\u0301\u0302\u0303\u0304\u0305",
  "x".repeat(60),
];

/** A YAML text as plain values. */
export function plainOf(text: string): unknown {
  const parsed = parseStrictly(text, undefined as never);
  if (parsed === null || parsed.refused.length > 0) throw new Error("not plain YAML");
  return parsed.document.toJS({ maxAliasCount: 0 });
}

type Schema = Readonly<Record<string, unknown>>;

/** The JSON Schema of what people write. */
export const writtenSchema = (schema: z.ZodType): Schema => z.toJSONSchema(schema, { io: "input" }) as Schema;

/** Free text: no choice, no pattern, held only by its length. A quantity has no length of its own. */
const isFree = (schema: Schema) =>
  schema.type === "string" && schema.enum === undefined && schema.const === undefined && schema.pattern === undefined && schema.maxLength !== undefined;

function resolved(schema: Schema, root: Schema): Schema {
  const ref = schema.$ref;
  if (typeof ref !== "string") return schema;
  return resolved(
    ref
      .slice(2)
      .split("/")
      .filter(Boolean)
      .reduce<Schema>((at, step) => at[step] as Schema, root),
    root,
  );
}

const variants = (schema: Schema): readonly Schema[] => ((schema.anyOf ?? schema.oneOf) as Schema[] | undefined) ?? [];

/** Whether a value may be of this branch: the fields that are fixed agree. */
function fits(value: unknown, schema: Schema): boolean {
  const fixed = Object.entries((schema.properties ?? {}) as Record<string, Schema>).filter(([, inner]) => inner.const !== undefined);
  return fixed.every(([key, inner]) => (value as Record<string, unknown>)[key] === inner.const);
}

/** Every place of free text in a schema, as service.panel.name, lists as []; a part inside itself is told once. */
export function freeFields(root: Schema): readonly string[] {
  const found = new Set<string>();
  function walk(raw: Schema, path: string, above: readonly Schema[]): void {
    const schema = resolved(raw, root);
    if (above.includes(schema)) return;
    const below = [...above, schema];
    if (isFree(schema)) found.add(path);
    for (const branch of variants(schema)) walk(branch, path, below);
    for (const [key, inner] of Object.entries((schema.properties ?? {}) as Record<string, Schema>)) walk(inner, path === "" ? key : `${path}.${key}`, below);
    if (schema.items !== undefined) walk(schema.items as Schema, `${path}[]`, below);
  }
  walk(root, "", []);
  return [...found].sort();
}

/**
 * A tree as people write it with every free text made `text`, and every free text that may be given and is not, given. Equal
 * texts stay equal, so that what names another part still names it. `seen` gathers the places.
 */
export function poisoned(tree: unknown, root: Schema, text: (n: number) => string, seen: Set<string>): unknown {
  const numbers = new Map<string, number>();
  const made = (old: string) => {
    if (!numbers.has(old)) numbers.set(old, numbers.size);
    return text(numbers.get(old)!);
  };
  function walk(value: unknown, raw: Schema, path: string, above: readonly Schema[]): unknown {
    const schema = resolved(raw, root);
    const fitting = variants(schema)
      .map((branch) => resolved(branch, root))
      .filter((branch) => typeof value !== "object" || value === null || fits(value, branch));
    const free = fitting.find(isFree);
    if (isFree(schema) || (typeof value === "string" && free !== undefined)) {
      seen.add(path);
      return typeof value === "string" ? made(value) : value;
    }
    if (Array.isArray(value)) return value.map((item) => walk(item, (schema.items ?? {}) as Schema, `${path}[]`, above));
    if (typeof value !== "object" || value === null) return value;
    const properties = { ...((schema.properties ?? {}) as Record<string, Schema>), ...((fitting[0]?.properties ?? {}) as Record<string, Schema>) };
    const result: Record<string, unknown> = {};
    for (const [key, inner] of Object.entries(value))
      result[key] = properties[key] === undefined ? inner : walk(inner, properties[key], path === "" ? key : `${path}.${key}`, above);
    for (const [key, inner] of Object.entries(properties)) {
      const at = path === "" ? key : `${path}.${key}`;
      if (result[key] !== undefined || !isFree(resolved(inner, root)) || NAMES_ANOTHER.includes(key)) continue;
      seen.add(at);
      result[key] = made(`given at ${at}`);
    }
    return result;
  }
  return walk(tree, root, "", []);
}

/** Texts that must be the name of something else, so none can be made up. */
const NAMES_ANOTHER = ["sheet", "section", "checklist", "device", "at"];
