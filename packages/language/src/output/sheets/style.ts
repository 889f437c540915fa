/** How sheets look: black on white, 12 pt and more, to be read at arm's length in a dim room and printed without colour. */
export const SHEET_STYLE = `
@page { margin: 13mm 13mm 17mm; @bottom-left { width: 87%; line-height: 1.15; font: 12pt "DejaVu Sans", Verdana, sans-serif; color: #000; } @bottom-right { font: 12pt "DejaVu Sans", Verdana, sans-serif; color: #000; } }
* { box-sizing: border-box; }
html { color: #000; background: #fff; font: 12pt/1.35 "DejaVu Sans", Verdana, "Segoe UI", sans-serif; }
body { margin: 0 auto; padding: 12pt; max-width: 190mm; }
body.landscape { max-width: 270mm; }
header { border-bottom: 2pt solid #000; margin-bottom: 10pt; padding-bottom: 4pt; }
h1 { font-size: 22pt; line-height: 1.15; margin: 0; }
h2 { font-size: 15pt; margin: 14pt 0 4pt; break-after: avoid; }
h3 { font-size: 12.5pt; margin: 10pt 0 3pt; break-after: avoid; }
p { margin: 0 0 5pt; }
.event, .subtitle, footer p { margin: 0; }
.subtitle { font-size: 13pt; }
footer { border-top: 1pt solid #000; margin-top: 12pt; padding-top: 4pt; }
ul { margin: 0 0 6pt; padding-left: 18pt; }
table { border-collapse: collapse; width: 100%; margin: 4pt 0 10pt; }
caption { text-align: left; font-weight: bold; padding: 2pt 0; break-after: avoid; }
table.short { break-inside: avoid; }
thead { display: table-header-group; }
tr { break-inside: avoid; }
th { text-align: left; border-bottom: 1.5pt solid #000; }
th, td { padding: 2.5pt 5pt; vertical-align: top; overflow-wrap: anywhere; hyphens: manual; }
td { border-bottom: 0.5pt solid #767676; }
.figures { text-align: right; padding-right: 10pt; font-variant-numeric: tabular-nums; white-space: nowrap; }
td.to-fill { border: 0.75pt solid #000; min-width: 14mm; height: 8mm; }
.caution { border: 1.5pt solid #000; padding: 4pt 7pt; break-inside: avoid; }
.check { display: flex; gap: 10pt; align-items: end; break-inside: avoid; border-bottom: 0.5pt solid #767676; margin: 0; padding: 5pt 0 2pt; }
.check .box { flex: none; width: 12pt; height: 12pt; border: 1.5pt solid #000; }
.check > span:nth-child(2) { flex: 1; }
.check .sign { flex: none; width: 34mm; border-bottom: 1pt dotted #000; }
figure { margin: 6pt 0; break-inside: avoid; }
figure svg { width: 100%; height: auto; display: block; }
figcaption { font-weight: bold; }
.cards { display: grid; grid-template-columns: 1fr 1fr; }
.card { border: 0.5pt dashed #767676; padding: 12mm 6mm; min-height: 52mm; text-align: center; break-inside: avoid; }
.card .name { font-size: 20pt; line-height: 1.2; overflow-wrap: anywhere; }
.one-page { line-height: 1.15; }
.one-page header { margin-bottom: 5pt; padding-bottom: 2pt; }
.one-page h1 { font-size: 18pt; }
.one-page .subtitle { font-size: 12pt; }
.one-page h2 { font-size: 13pt; margin: 5pt 0 1pt; }
.one-page p { margin-bottom: 3pt; }
.one-page ul { margin-bottom: 3pt; }
.one-page table { margin: 2pt 0 3pt; }
.one-page th, .one-page td { padding: 1pt 4pt; }
@media print { body { padding: 0; max-width: none; } footer { display: none; } }
@media screen { body { box-shadow: 0 0 0 1px #ccc; } html { background: #fff; } }
`;
