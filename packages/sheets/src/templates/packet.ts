/** Handlebars sources. Only our own style sheet, our own drawings and `nb`, which escapes, go in unescaped. */
export const PAGE = `<!doctype html>
<html lang="en-US">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; font-src data:; img-src data:">
<title>{{packet.title}}</title>
<style>{{{css}}}</style>
</head>
<body>
<div class="everywhere">{{> titleblock packet.foot}}</div>
<main>
{{#each packet.sheets}}
<section class="sheet{{this.size}}" id="{{this.id}}" aria-labelledby="{{this.id}}-title">
<table role="presentation">
<thead><tr><td><div class="head"><p class="cut running" aria-hidden="true">{{this.id}} {{this.title}}</p><p class="which">{{@root.packet.set}}, sheet {{this.number}} of {{this.of}}</p></div></td></tr></thead>
<tfoot><tr><td class="kept">{{> titleblock @root.packet.foot}}</td></tr></tfoot>
<tbody>
<tr><td class="flow"><h1 id="{{this.id}}-title">{{this.id}} {{this.title}}</h1>
{{#if this.plate}}
<div class="plate"><figure class="drawing">{{{this.plate}}}</figure><div class="beside">{{#if this.kept.beside}}{{> stamp this.kept.beside}}{{/if}}{{#each this.beside}}{{> (lookup this "kind") this}}{{/each}}</div></div>
{{else}}
{{#if this.kept.first}}{{> stamp this.kept.first}}{{/if}}
{{#each this.blocks}}
{{> (lookup this "kind") this}}
{{/each}}
{{#if this.kept.last}}{{> stamp this.kept.last}}{{/if}}
{{/if}}
</td></tr>
</tbody>
</table>
</section>
{{/each}}
</main>
</body>
</html>
`;

export const PARTIALS = {
  heading: `<h2>{{text}}</h2>`,
  paragraph: `<p>{{nb text}}</p>`,
  together: `<div class="together{{#if abreast}} abreast{{/if}}">{{#each blocks}}{{> (lookup this "kind") this}}{{/each}}</div>`,
  boxed: `<section class="boxed"><h2>{{title}}</h2><p><strong>{{lead}}</strong></p><ol>{{#each entries}}<li><strong>{{nb this.title}}</strong>{{#each this.lines}} {{nb this}}{{/each}}</li>{{/each}}</ol></section>`,
  brief: `<ul class="brief{{#if runOn}} run{{/if}}">{{#each entries}}{{> entry this}} {{/each}}</ul>{{#if tail}}<ul class="brief run tail">{{#each tail}}{{> entry this}} {{/each}}</ul>{{/if}}`,
  entry: `<li>{{#if title}}<strong>{{nb title}}.</strong> {{/if}}{{nb text}}</li>`,
  sheetIndex: `<h2>{{caption}}</h2><ol class="index">{{#each entries}}<li><b>{{this.id}}</b> <a href="#{{this.id}}">{{this.title}}</a></li>{{/each}}</ol>`,
  table: `<{{h}} class="caption">{{nb caption}}</{{h}}><table class="grid{{#unless rows.[6]}} short{{/unless}}{{#if written}} written{{/if}}" aria-label="{{caption}}"><colgroup>{{#each widths}}<col style="width: {{this}}%">{{/each}}</colgroup><thead><tr>{{#each head}}<th scope="col"{{#if (lookup ../sums @index)}} class="sum"{{/if}}>{{nb this}}</th>{{/each}}</tr></thead><tbody>{{#each rows}}<tr{{#if this.fresh}} class="fresh"{{/if}}>{{#each this.cells}}<td{{#if this.sum}} class="sum"{{/if}}>{{#if this.to}}<a class="worked" href="#{{this.to}}">{{nb this.text}}</a>{{else}}{{nb this.text}}{{/if}}</td>{{/each}}</tr>{{/each}}</tbody></table>`,
  checklist: `<{{h}} class="caption">{{nb caption}}</{{h}}><table class="grid lines" aria-label="{{caption}}"><colgroup><col style="width: 15%"><col style="width: 69%"><col style="width: 5%"><col style="width: 11%"></colgroup><thead><tr><th scope="col">{{nb sectionHead}}</th><th scope="col">What to look at: what is to be seen</th><th scope="col">OK</th><th scope="col">Remark</th></tr></thead><tbody>{{#each items}}<tr><td>{{nb this.section}}</td><td>{{nb this.look}}{{#if this.show}}: <span class="fine">{{nb this.show}}.</span>{{/if}}{{#if this.how}} <span class="fine">Show: {{nb this.how}}.</span>{{/if}}</td><td></td><td></td></tr>{{/each}}</tbody></table>{{> blanks labels=sign}}`,
  calc: `<{{h}} class="caption">{{nb caption}}</{{h}}><table class="grid{{#unless lines.[3]}} short{{/unless}}" aria-label="{{caption}}"><colgroup><col style="width: 26%"><col style="width: 58%"><col style="width: 16%"></colgroup><thead><tr><th scope="col">Value</th><th scope="col">Worked</th><th scope="col">Result</th></tr></thead><tbody>{{#each lines}}<tr{{#if this.anchor}} id="{{this.anchor}}"{{/if}}><td>{{nb this.label}}</td><td>{{nb this.expression}}{{#each this.sources}}<span class="source">{{nb this}}</span>{{/each}}</td><td class="result">= {{nb this.result}}</td></tr>{{/each}}</tbody></table>`,
  stamp: `<div class="stamp" style="width: {{width}}in; height: {{height}}in">Kept clear for the jurisdiction's stamp</div>`,
  drawing: `{{#if stamp}}{{> stamp stamp}}{{/if}}<figure class="drawing">{{{svg}}}</figure>`,
  blanks: `<div class="blanks">{{#each labels}}<div>{{this}}</div>{{/each}}</div>`,
  titleblock: `<table class="titleblock"><colgroup><col style="width: 23%"><col style="width: 22%"><col style="width: 16%"><col style="width: 12%"><col style="width: 5%"><col style="width: 9%"><col style="width: 13%"></colgroup><tbody><tr><td><b>Project</b><span class="cut">{{project}}</span></td><td><b>Site</b><span class="cut">{{site}}</span></td><td><b>Owner</b><span class="cut">{{owner}}</span></td><td><b>Parcel</b><span class="cut">{{parcel}}</span></td><td><b>Rev.</b></td><td><b>Date</b></td><td><b>Revised</b></td></tr><tr><td><b>Jurisdiction</b><span class="cut">{{jurisdiction}}</span></td><td><b>Code edition</b><span class="cut">{{edition}}</span></td><td><b>Permit number</b></td><td><b>Date</b><span class="cut">{{date}}</span></td><td>{{revision.number}}</td><td class="revision"><span class="nb">{{revision.date}}</span></td><td><span class="cut">{{revision.says}}</span></td></tr><tr><td colspan="2"><b>Prepared by</b><span class="cut">{{preparer}}</span></td><td colspan="2"><b>Signature</b></td><td></td><td></td><td></td></tr></tbody></table>`,
} as const;
