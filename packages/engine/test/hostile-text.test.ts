import { describe, expect, it } from "vitest";
import { readJob } from "../src/job/read.js";
import { readPriceBook } from "../src/materials/price-book.js";
import { readReadings } from "../src/readings/readings-file.js";

const WELL = `format: branchwork-job/1
project: { title: T, owner: O, site: S, preparer: { name: N, role: owner } }
code: { edition: "2023" }
service:
  rating: 200 A
  load_method: existing-dwelling
  existing: { floor_area: 1800 ft2 }
  panel:
    id: a
    name: P
    bus: 200 A
    spaces: 30
    circuits:
      - id: c
        name: C
        serves: rv-30
        breaker: { poles: 1, spaces: [17], gfci: true }
        route: [{ name: s, place: indoors, method: NM-B, length: 20 ft }]
`;
const bent = (from: string, to: string) => {
  if (!WELL.includes(from)) throw new Error(`${from} is not in the text`);
  return WELL.replace(from, to);
};
const many = (characters: number, unit: (i: number) => string) => {
  const parts: string[] = [];
  for (let i = 0, length = 0; length < characters; i++) length += parts[parts.push(unit(i)) - 1]!.length;
  return parts.join("");
};

/** The one thing said, or the first of several. */
function refused(text: string) {
  const read = readJob(text);
  if (read.ok) throw new Error("it was read");
  expect(read.issues.length).toBeGreaterThan(0);
  for (const issue of read.issues) {
    expect(issue.line).toBeGreaterThanOrEqual(1);
    expect(issue.column).toBeGreaterThanOrEqual(1);
    expect(issue.what.length).toBeGreaterThan(5);
    expect(issue.mend.length).toBeGreaterThan(3);
  }
  expect(JSON.stringify(read.issues).length).toBeLessThan(30_000);
  return read.issues[0]!;
}

it("the text these rows bend is itself a job", () => expect(readJob(WELL)).toMatchObject({ ok: true }));

describe("a hostile job text is refused in one place and words", () => {
  it.each([
    ["alias", bent("owner: O", "owner: &o O, scope: *o"), 2, /repeats a value by alias/],
    ["alias bomb", `a: &a [x,x]\nb: &b [*a,*a]\nc: &c [*b,*b]\n${WELL}`, 2, /alias/],
    ["merge key", bent("code: {", "code: { <<: { a: 1 },"), 3, /"<<" is not a field/],
    ["double name", bent('edition: "2023"', 'edition: "2023", edition: "2026"'), 3, /"edition" stands twice/],
    ["double name at the top", `${WELL}format: branchwork-job/1\n`, 19, /"format" stands twice/],
    ["__proto__", bent("code: {", "code: { __proto__: { polluted: 1 },"), 3, /"__proto__" is not a field/],
    ["quoted __proto__", bent("code: {", 'code: { "__proto__": { polluted: 1 },'), 3, /"__proto__" is not a field/],
    ["constructor", bent("code: {", "code: { constructor: { prototype: { polluted: 1 } },"), 3, /"constructor" is not a field/],
    ["a list as name", bent("code: {", "? [a]\n: b\ncode: {"), 3, /where a name belongs/],
    ["foreign tag", bent("owner: O", "owner: !!js/function 'function(){}'"), 2, /tag/i],
    ["binary tag", bent("owner: O", "owner: !!binary aGk="), 2, /tag|text|Invalid/i],
    ["tab as indent", bent("  rating", "\trating"), 5, /Tabs/],
    ["two documents", `${WELL}---\n${WELL}`, 19, /multiple documents/],
    ["NUL", bent("owner: O", 'owner: "O\\0"'), 2, /U\+0000/],
    ["NUL as it is", bent("owner: O", "owner: O\u0000"), 2, /U\+0000/],
    ["escape character", bent("owner: O", 'owner: "\\e[2J"'), 2, /U\+001B/],
    ["direction override", bent("owner: O", "owner: a\u202egnp.exe"), 2, /U\+202E.*order/],
    ["isolate", bent("site: S", "site: \u2066S"), 2, /U\+2066/],
    ["half of a pair", bent("owner: O", 'owner: "\\ud800"'), 2, /U\+D800/],
    ["byte order mark inside", bent("owner: O", "owner: O\ufeffO"), 2, /U\+FEFF/],
    ["1e400", bent("spaces: 30", "spaces: 1e400"), 12, /spaces/],
    [".inf", bent("spaces: 30", "spaces: .inf"), 12, /spaces/],
    [".nan", bent("spaces: 30", "spaces: .nan"), 12, /spaces/],
    ["half a space", bent("spaces: 30", "spaces: 2.5"), 12, /spaces/],
    ["number past 2^53", bent("spaces: 30", "spaces: 9007199254740993"), 12, /spaces/],
    ["negative length", bent("length: 20 ft", "length: -20 ft"), 18, /-20 ft/],
    ["exponent in a length", bent("length: 20 ft", "length: 2e1 ft"), 18, /unit "e1 ft"/],
    ["infinite length", bent("length: 20 ft", "length: Infinity ft"), 18, /Infinity/],
    ["division by nothing", bent("length: 20 ft", "length: 1/0 ft"), 18, /1\/0/],
    ["length of 100,000 digits", bent("length: 20 ft", `length: "${"9".repeat(100_000)} ft"`), 18, /too long/],
    ["divisor of 100,000 digits", bent("length: 20 ft", `length: "1/${"9".repeat(100_000)} ft"`), 18, /too long/],
    ["unit that is a method", bent("length: 20 ft", "length: 20 constructor"), 18, /unit "constructor"/],
    ["name of 100,000 letters", bent("owner: O", `owner: ${"x".repeat(100_000)}`), 2, /too large or too long/],
    ["21 segments", bent("route: [", `route: [${many(21 * 60, (i) => `{ name: s${i}, place: indoors, method: NM-B, length: 1 ft },`)}`), 18, /route/],
    ["nothing", "", 1, /holds no job/],
    ["white space", " \n\n ", 1, /holds no job/],
    ["a number", "1", 1, /holds no job/],
    ["a list", "[]", 1, /holds no job/],
    ["past the limit", `# ${"x".repeat(300_001)}`, 1, /longer than 300000/],
  ] as const)("%s", (_what, text, line, says) => {
    const issue = refused(text);
    expect(issue.what).toMatch(says);
    expect(issue.line).toBe(line);
    expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  });
  it("-0 where a number stands counts as 0, and prints as 0", () => {
    const read = readJob(bent("length: 20 ft", "length: -0 ft"));
    expect(read.ok && Object.is(read.job.service.panel.circuits[0]?.route[0]?.length, -0)).toBe(false);
  });
});

describe("what is only odd is read", () => {
  it.each([
    ["line ends of another system", WELL.replaceAll("\n", "\r\n")],
    ["a byte order mark in front", `\ufeff${WELL}`],
    ["writing from right to left", bent("owner: O", "owner: דנה לוי")],
    ["marks over letters", bent("owner: O", "owner: Zo\u0308e\u0301")],
    ["a word of 400 letters", bent("owner: O", `owner: ${"x".repeat(400)}`)],
    ["a pair of halves", bent("owner: O", "owner: O \u{1F9FF}")],
    ["text that looks like a template", bent("owner: O", "owner: '{{constructor}} {{{raw}}}'")],
  ])("%s", (_what, text) => expect(readJob(text)).toMatchObject({ ok: true }));
});

describe("a text made to take for ever takes a few seconds at most", () => {
  const SIZE = 280_000;
  const rows: readonly (readonly [string, () => string])[] = [
    ["names", () => many(SIZE, (i) => `k${i}: 1\n`)],
    ["names in braces", () => `{${many(SIZE, (i) => `k${i}: 1,`)}}`],
    ["one name again and again", () => many(SIZE, () => "a: 1\n")],
    ["open brackets", () => "[".repeat(SIZE)],
    ["open braces", () => "{a: ".repeat(SIZE / 4)],
    ["brackets and braces", () => "[{".repeat(SIZE / 2)],
    ["dashes", () => "- ".repeat(SIZE / 2)],
    ["question marks", () => "? ".repeat(SIZE / 2)],
    ["stairs", () => many(SIZE, (i) => `${" ".repeat(i)}a:\n`)],
    ["aliases", () => `a: &a x\nb: [${many(SIZE, () => "*a,")}]`],
    ["tags", () => many(SIZE, (i) => `- !t${i} x\n`)],
    ["escapes", () => `a: "${"\\x".repeat(SIZE / 2)}"`],
    ["documents", () => many(SIZE, () => "---\n")],
    ["carriage returns", () => "\r".repeat(SIZE)],
    ["blank lines of a block", () => `a: |\n${"\n".repeat(SIZE)}`],
    ["digits", () => `a: ${"9".repeat(SIZE)}`],
    ["colons", () => ":".repeat(SIZE)],
  ];
  it.each(rows)("%s", (_what, made) => {
    const text = made();
    const started = performance.now();
    refused(text);
    for (const issues of [readPriceBook(text), readReadings(text.slice(0, 99_000))]) expect(issues.ok).toBe(false);
    expect(performance.now() - started).toBeLessThan(20_000);
  });
});
