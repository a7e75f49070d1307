/**
 * How the printed pages are set: letter paper, one hue for data, one accent for cautions, page number and what the
 * paper is at the foot of each page.
 */
export function pageStyle(foot: string, head: string): string {
  return `
@page { size: letter; margin: 20mm 18mm 20mm 18mm;
  @top-left { content: ${cssText(head)}; font: 8pt sans-serif; color: #43504e; }
  @bottom-left { content: ${cssText(foot)}; font: 8pt sans-serif; color: #43504e; }
  @bottom-right { content: "Page " counter(page) " of " counter(pages); font: 8pt sans-serif; color: #43504e; } }
* { box-sizing: border-box; }
body { font: 10pt/1.4 'Source Sans 3', 'Liberation Sans', Arial, 'Noto Sans', sans-serif; color: #15201f; margin: 0; }
h1 { font-size: 17pt; line-height: 1.2; margin: 0 0 4pt; }
h2 { font-size: 12.5pt; margin: 14pt 0 4pt; break-after: avoid; }
h3 { font-size: 10.5pt; margin: 10pt 0 3pt; break-after: avoid; }
p { margin: 0 0 5pt; }
ul { margin: 0 0 5pt; padding-left: 14pt; }
li { margin-bottom: 2pt; }
section.page { break-before: page; }
table { width: 100%; border-collapse: collapse; margin: 4pt 0 8pt; font-size: 9pt; font-variant-numeric: tabular-nums; }
caption { text-align: left; font-weight: 600; padding: 0 0 3pt; }
th, td { text-align: left; vertical-align: top; padding: 1.5pt 0 1.5pt 8pt; border-bottom: 0.5pt solid #d5dad7; font-weight: 400; }
thead th { font-weight: 600; border-bottom: 1pt solid #43504e; vertical-align: bottom; }
th:first-child, td:first-child { padding-left: 0; }
tfoot th, tfoot td { font-weight: 600; border-top: 1pt solid #43504e; border-bottom: none; }
th.figures, td.figures { text-align: right; white-space: nowrap; }
tr { break-inside: avoid; }
tfoot { display: table-row-group; }
b.figure { font-weight: 600; white-space: nowrap; font-variant-numeric: tabular-nums; }
.lead { font-size: 12pt; line-height: 1.35; margin-bottom: 6pt; }
.sample, .caution { border-left: 3pt solid #a23e08; padding: 2pt 0 2pt 8pt; margin: 0 0 6pt; color: #7a2e05; break-inside: avoid; }
.side { display: grid; grid-template-columns: 1fr 1fr; column-gap: 18pt; align-items: start; }
.cautions .caution { font-size: 9pt; margin-bottom: 5pt; }
.side table { font-size: 8.5pt; margin: 2pt 0 5pt; }
.side th, .side td { padding-top: 0.6pt; padding-bottom: 0.6pt; }
.note { color: #43504e; font-size: 8.5pt; }
.answers { font-size: 9.5pt; line-height: 1.33; }
.answers h2 { margin: 7pt 0 1pt; font-size: 10.5pt; }
.answers p, .answers ul { margin-bottom: 3pt; }
.answers li { margin-bottom: 1pt; }
.answers .lead { font-size: 11.5pt; }
.compact { font-size: 8.5pt; }
.compact th, .compact td { padding-top: 0.8pt; padding-bottom: 0.8pt; }
.compared { table-layout: fixed; font-size: 8.5pt; }
.compared thead th:first-child { width: 27%; }
.compared th, .compared td { padding-top: 0.8pt; padding-bottom: 0.8pt; }
.compared td.figures { white-space: normal; }
.lines { font-size: 8.5pt; }
.lines th:first-child { width: 26%; }
.lines th:last-child, .lines td:last-child { width: 38%; }
.lines caption { break-after: avoid; font-size: 10pt; padding-top: 6pt; }
.cautions.two { columns: 2; column-gap: 16pt; margin-bottom: 8pt; }
.cautions.two .caution { font-size: 7.8pt; line-height: 1.25; margin-bottom: 4pt; }
.hand { display: grid; grid-template-columns: 110pt 1fr; margin: 4pt 0 8pt; font-size: 9pt; }
.hand dt { color: #43504e; padding: 1.5pt 0; }
.hand dd { margin: 0; padding: 1.5pt 0; white-space: pre-line; }
.hand dd.empty { border-bottom: 0.5pt solid #43504e; min-height: 14pt; }
.signed { break-inside: avoid; }
.signed .hand dd.empty { min-height: 22pt; }
.signed .hand dt { align-self: end; }
svg { display: block; margin: 2pt 0 8pt; break-inside: avoid; }
svg text { font-size: 9.5px; fill: #15201f; }
svg .bar { fill: #0e5662; }
svg .axis { stroke: #43504e; stroke-width: 1; }
svg .grid { stroke: #d5dad7; stroke-width: 0.7; }
`;
}

/** Words as a CSS string: nothing in a title can end it. */
function cssText(words: string): string {
  const safe = Array.from(words, character =>
    /[\p{L}\p{N} .,:;()-]/u.test(character)
      ? character
      : `\\${Number(character.codePointAt(0)).toString(16)} `,
  );
  return `"${safe.join('')}"`;
}
