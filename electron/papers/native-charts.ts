import JSZip from 'jszip';
import type { PaperChart, PaperWorkbook } from '../../core/papers';

const RELATIONSHIPS = 'http://schemas.openxmlformats.org/package/2006/relationships';
const OFFICE = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships';
const DRAWING = 'http://schemas.openxmlformats.org/drawingml/2006';
const HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n';
/** Rows of the sheet that a chart takes, and the columns. */
const CHART_ROWS = 22;
const CHART_COLUMNS = 8;

/**
 * Adds live charts to a written workbook, which the writer of the sheets cannot do: a drawing for each sheet with
 * charts, a part for each chart, and what joins them. Parts are dated alike, so that the same workbook gives the same
 * bytes.
 * @source ECMA-376, part 1, 21.2 (DrawingML charts) and 20.5 (drawings in spreadsheets).
 */
export async function withCharts(bytes: Buffer, paper: PaperWorkbook, dated: Date): Promise<Buffer> {
  const zip = await JSZip.loadAsync(bytes);
  let types = await textOf(zip, '[Content_Types].xml');
  let chart = 0;
  for (const [index, sheet] of paper.sheets.entries()) {
    if (sheet.charts === undefined || sheet.charts.length === 0) continue;
    const number = index + 1;
    const first = chart;
    for (const wanted of sheet.charts) zip.file(`xl/charts/chart${++chart}.xml`, chartXml(wanted));
    const numbers = sheet.charts.map((_, i) => first + i + 1);
    zip.file(`xl/drawings/drawing${number}.xml`, drawingXml(sheet.charts));
    zip.file(
      `xl/drawings/_rels/drawing${number}.xml.rels`,
      relationships(numbers.map(n => [`${OFFICE}/chart`, `../charts/chart${n}.xml`])),
    );
    zip.file(
      `xl/worksheets/_rels/sheet${number}.xml.rels`,
      relationships([[`${OFFICE}/drawing`, `../drawings/drawing${number}.xml`]]),
    );
    const name = `xl/worksheets/sheet${number}.xml`;
    zip.file(name, joined(await textOf(zip, name)));
    types = types.replace('</Types>', `${overrides(number, numbers)}</Types>`);
  }
  zip.file('[Content_Types].xml', types);
  zip.file(BOOK, calculatedOnOpening(await textOf(zip, BOOK)));
  for (const file of Object.values(zip.files)) file.date = dated;
  return zip.generateAsync({ type: 'nodebuffer', compression: 'DEFLATE' });
}

const BOOK = 'xl/workbook.xml';

/** A spreadsheet works every formula out anew when it opens the book: the writer of rows has no place to say so. */
function calculatedOnOpening(book: string): string {
  const wanted = book.replace(/<calcPr [^>]*\/>/, '<calcPr calcId="171027" fullCalcOnLoad="1"/>');
  if (!wanted.includes('fullCalcOnLoad')) throw new Error('the written workbook says nothing of calculation');
  return wanted;
}

async function textOf(zip: JSZip, name: string): Promise<string> {
  const file = zip.file(name);
  if (file === null) throw new Error(`the written workbook has no part ${name}`);
  return file.async('string');
}

/** The sheet with its drawing, which stands after page set-up and header. */
function joined(sheet: string): string {
  return sheet.replace('</worksheet>', `<drawing xmlns:r="${OFFICE}" r:id="rId1"/></worksheet>`);
}

function overrides(drawing: number, charts: readonly number[]): string {
  const part = (name: string, type: string) =>
    `<Override PartName="${name}" ContentType="application/vnd.openxmlformats-officedocument.${type}+xml"/>`;
  return [
    part(`/xl/drawings/drawing${drawing}.xml`, 'drawing'),
    ...charts.map(n => part(`/xl/charts/chart${n}.xml`, 'drawingml.chart')),
  ].join('');
}

function relationships(rows: readonly (readonly [string, string])[]): string {
  const inside = rows.map(
    ([type, target], i) => `<Relationship Id="rId${i + 1}" Type="${type}" Target="${target}"/>`,
  );
  return `${HEAD}<Relationships xmlns="${RELATIONSHIPS}">${inside.join('')}</Relationships>`;
}

function drawingXml(charts: readonly PaperChart[]): string {
  const anchors = charts.map((chart, i) => {
    const top = 2 + i * (CHART_ROWS + 1);
    const at = (tag: string, column: number, row: number) =>
      `<xdr:${tag}><xdr:col>${column}</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>${row}</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:${tag}>`;
    return [
      '<xdr:twoCellAnchor>',
      at('from', 0, top),
      at('to', CHART_COLUMNS, top + CHART_ROWS),
      `<xdr:graphicFrame macro=""><xdr:nvGraphicFramePr><xdr:cNvPr id="${i + 2}" name="Chart ${i + 1}" descr="${xml(chart.title)}"/><xdr:cNvGraphicFramePr/></xdr:nvGraphicFramePr>`,
      '<xdr:xfrm><a:off x="0" y="0"/><a:ext cx="0" cy="0"/></xdr:xfrm>',
      `<a:graphic><a:graphicData uri="${DRAWING}/chart"><c:chart xmlns:c="${DRAWING}/chart" r:id="rId${i + 1}"/></a:graphicData></a:graphic>`,
      '</xdr:graphicFrame><xdr:clientData/></xdr:twoCellAnchor>',
    ].join('');
  });
  return `${HEAD}<xdr:wsDr xmlns:xdr="${DRAWING}/spreadsheetDrawing" xmlns:a="${DRAWING}/main" xmlns:r="${OFFICE}">${anchors.join('')}</xdr:wsDr>`;
}

const COLOUR = '0E5662';

function chartXml(chart: PaperChart): string {
  const fill = `<a:solidFill><a:srgbClr val="${COLOUR}"/></a:solidFill>`;
  const isLine = chart.kind === 'line';
  const shape = isLine ? `<c:spPr><a:ln w="28575">${fill}</a:ln></c:spPr>` : `<c:spPr>${fill}</c:spPr>`;
  const series = [
    `<c:ser><c:idx val="0"/><c:order val="0"/><c:tx><c:v>${xml(chart.title)}</c:v></c:tx>${shape}`,
    isLine ? '<c:marker><c:symbol val="none"/></c:marker>' : '<c:invertIfNegative val="0"/>',
    `<c:cat><c:strRef><c:f>${xml(chart.names)}</c:f></c:strRef></c:cat>`,
    `<c:val><c:numRef><c:f>${xml(chart.values)}</c:f></c:numRef></c:val>`,
    isLine ? '<c:smooth val="0"/></c:ser>' : '</c:ser>',
  ].join('');
  const axes = '<c:axId val="111"/><c:axId val="222"/>';
  const plot = isLine
    ? `<c:lineChart><c:grouping val="standard"/><c:varyColors val="0"/>${series}<c:marker val="1"/>${axes}</c:lineChart>`
    : `<c:barChart><c:barDir val="${chart.kind === 'bars' ? 'bar' : 'col'}"/><c:grouping val="clustered"/><c:varyColors val="0"/>${series}<c:gapWidth val="40"/>${axes}</c:barChart>`;
  const [order, side, scale] = chart.kind === 'bars' ? ['maxMin', 'l', 't'] : ['minMax', 'b', 'l'];
  return [
    `${HEAD}<c:chartSpace xmlns:c="${DRAWING}/chart" xmlns:a="${DRAWING}/main" xmlns:r="${OFFICE}"><c:roundedCorners val="0"/><c:chart>`,
    `<c:title><c:tx><c:rich><a:bodyPr/><a:p><a:pPr><a:defRPr sz="1100" b="1"/></a:pPr><a:r><a:rPr lang="en-US" sz="1100" b="1"/><a:t>${xml(chart.title)}</a:t></a:r></a:p></c:rich></c:tx><c:overlay val="0"/></c:title>`,
    `<c:autoTitleDeleted val="0"/><c:plotArea><c:layout/>${plot}`,
    `<c:catAx><c:axId val="111"/><c:scaling><c:orientation val="${order}"/></c:scaling><c:delete val="0"/><c:axPos val="${side}"/><c:numFmt formatCode="General" sourceLinked="0"/><c:majorTickMark val="none"/><c:minorTickMark val="none"/><c:tickLblPos val="low"/><c:crossAx val="222"/><c:crosses val="autoZero"/></c:catAx>`,
    `<c:valAx><c:axId val="222"/><c:scaling><c:orientation val="minMax"/></c:scaling><c:delete val="0"/><c:axPos val="${scale}"/><c:majorGridlines><c:spPr><a:ln w="6350"><a:solidFill><a:srgbClr val="D5DAD7"/></a:solidFill></a:ln></c:spPr></c:majorGridlines><c:numFmt formatCode="#,##0" sourceLinked="0"/><c:majorTickMark val="none"/><c:minorTickMark val="none"/><c:tickLblPos val="nextTo"/><c:crossAx val="111"/><c:crosses val="autoZero"/></c:valAx>`,
    '</c:plotArea><c:plotVisOnly val="1"/><c:dispBlanksAs val="gap"/></c:chart></c:chartSpace>',
  ].join('');
}

function xml(words: string): string {
  return words
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}
