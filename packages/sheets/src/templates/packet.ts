/** Handlebars sources. Only our own style sheet and our own drawings go in unescaped. */
export const PAGE = `<!doctype html>
<html lang="en-US">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; font-src data:; img-src data:">
<title>{{packet.title}}</title>
<style>{{{css}}}</style>
</head>
<body>
<main>
{{#each packet.sheets}}
<table class="sheet" role="presentation" id="{{this.id}}">
<thead><tr><td><h1>{{this.id}} {{this.title}}</h1></td></tr></thead>
<tfoot><tr><td>{{> foot sheet=this foot=@root.packet.foot}}</td></tr></tfoot>
<tbody>
{{#each this.blocks}}
<tr><td>{{> (lookup this "kind") this}}</td></tr>
{{/each}}
<tr class="rest"><td></td></tr>
</tbody>
</table>
{{/each}}
</main>
</body>
</html>
`;

export const PARTIALS = {
  heading: `<h2>{{text}}</h2>`,
  paragraph: `<p>{{text}}</p>`,
  boxed: `<section class="boxed"><h2>{{title}}</h2><p>{{lead}}</p><ol>{{#each entries}}<li><strong>{{this.title}}</strong>{{#each this.lines}}<br>{{this}}{{/each}}</li>{{/each}}</ol></section>`,
  brief: `<ul class="brief">{{#each entries}}<li><strong>{{this.title}}.</strong> {{this.text}}</li>{{/each}}</ul>`,
  table: `<table class="grid{{#if widths.length}} set{{/if}}"><caption>{{caption}}</caption><colgroup>{{#each widths}}<col style="width: {{this}}%">{{/each}}</colgroup><thead><tr>{{#each head}}<th scope="col">{{this}}</th>{{/each}}</tr></thead><tbody>{{#each rows}}<tr{{#if this.fresh}} class="fresh"{{/if}}>{{#each this.cells}}<td>{{this}}</td>{{/each}}</tr>{{/each}}</tbody></table>`,
  checklist: `<table class="grid set"><caption>{{caption}}</caption><colgroup><col style="width: 28%"><col style="width: 28%"><col style="width: 20%"><col style="width: 8%"><col style="width: 8%"><col style="width: 8%"></colgroup><thead><tr><th scope="col">Section</th><th scope="col">What to look at</th><th scope="col">To be seen</th><th scope="col">Result</th><th scope="col">Initials</th><th scope="col">Date</th></tr></thead><tbody>{{#each items}}<tr><td>{{this.section}}</td><td>{{this.look}}</td><td>{{this.show}}</td><td class="blank"></td><td class="blank"></td><td class="blank"></td></tr>{{/each}}</tbody></table>`,
  calc: `<table class="grid"><caption>{{caption}}</caption><thead><tr><th scope="col">Value</th><th scope="col">Worked</th><th scope="col">Result</th></tr></thead><tbody>{{#each lines}}<tr><td>{{this.label}}</td><td>{{this.expression}}{{#each this.sources}}<span class="source">{{this}}</span>{{/each}}</td><td class="result">= {{this.result}}</td></tr>{{/each}}</tbody></table>`,
  drawing: `<figure class="drawing">{{{svg}}}</figure>`,
  blanks: `<div class="blanks">{{#each labels}}<div>{{this}}</div>{{/each}}</div>`,
  foot: `<table class="foot"><tbody><tr><td colspan="2"><b>Project</b>{{foot.project}}</td><td><b>Owner</b>{{foot.owner}}</td><td><b>Sheet</b>{{sheet.id}}, sheet {{sheet.number}} of {{sheet.of}}</td></tr><tr><td colspan="2"><b>Site</b>{{foot.site}}</td><td><b>Parcel</b>{{foot.parcel}}</td><td><b>Permit no.</b></td></tr><tr><td><b>Jurisdiction</b>{{foot.jurisdiction}}</td><td><b>Code edition</b>{{foot.edition}}</td><td><b>Prepared by</b>{{foot.preparer}}</td><td><b>Date</b>{{foot.date}}</td></tr></tbody></table>`,
} as const;
