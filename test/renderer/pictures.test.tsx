import fs from 'node:fs';
import path from 'node:path';
import type { ReactElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { describe, expect, test, vi } from 'vitest';
import { evaluate } from '../../core/evaluation';
import { readProject } from '../../core/project';
import {
  windowRows,
  WhyDesk,
  type BridgeRows,
  type CurvePicture,
  type FrontierPicture,
} from '../../core/views';
import { CashPicture } from '../../renderer/pictures/cash/cash-picture';
import { BridgePicture } from '../../renderer/pictures/compare/bridge';
import { GrowthLine } from '../../renderer/pictures/growth/growth-line';
import { Frontier } from '../../renderer/pictures/risk/frontier';
import { SCurve } from '../../renderer/pictures/risk/s-curve';
import { Profile } from '../../renderer/pictures/ship/profile';
import { SectionStrip } from '../../renderer/pictures/sinking/section-strip';
import { TimeChart } from '../../renderer/pictures/time/time-chart';

// Without a canvas a letter counts as wide as the pictures say it is then.
vi.stubGlobal('window', { document: { createElement: () => ({ getContext: () => null }) } });

/** What is written in a picture, in the order in which it is drawn, and what is said of it to those who hear it. */
function read(picture: ReactElement): { readonly said: string; readonly written: readonly string[] } {
  const markup = renderToStaticMarkup(picture);
  const plain = (text: string) =>
    text
      .replace(/<[^>]+>/g, '')
      .replaceAll('&#x27;', "'")
      .replaceAll('&amp;', '&')
      .trim();
  return {
    said: plain(
      /role="img" aria-label="([^"]*)"|aria-label="([^"]*)" role="img"/
        .exec(markup)
        ?.slice(1)
        .find(Boolean) ?? '',
    ),
    written: [...markup.matchAll(/<text[^>]*>(.*?)<\/text>/gs)]
      .map(found => plain(found[1] ?? ''))
      .filter(text => text !== ''),
  };
}

const curve: CurvePicture = {
  title: 'Cost, $ million',
  points: [
    { at: 1_000_000, share: 0 },
    { at: 1_500_000, share: 0.5 },
    { at: 1_800_000, share: 0.8 },
    { at: 2_000_000, share: 1 },
  ],
  ticks: [
    { at: 1_000_000, text: '1.0' },
    { at: 1_500_000, text: '1.5' },
    { at: 2_000_000, text: '2.0' },
  ],
  marks: [
    { id: 'p50', at: 1_500_000, share: 0.5, text: 'P50 $1,500,000' },
    { id: 'chosen', at: 1_800_000, share: 0.8, text: 'P80 $1,800,000' },
  ],
  words: 'Cost of the runs as a rising curve. P50 $1,500,000, P80 $1,800,000.',
};

const table = { id: 'none', caption: '', columns: [], rows: [] };

const bridge: BridgeRows = {
  id: 'a-b',
  letter: 'B',
  title: 'What separates A from B, $',
  words: ['B costs ', { text: '$30,000' }, ' more than A.'],
  bars: [
    { id: 'from', title: 'A plan', text: '100,000', from: 0, to: 0, kind: 'total' },
    { id: 'work', title: 'Work', text: '+40,000', from: 0, to: 1, kind: 'adds' },
    { id: 'rates', title: 'Rates', text: '\u221210,000', from: 1, to: 0.75, kind: 'saves' },
    { id: 'to', title: 'B other', text: '130,000', from: 0.75, to: 0.75, kind: 'total' },
  ],
  table,
};

const frontier: FrontierPicture = {
  title: '80 in 100 end inside both, $ million',
  lines: [
    {
      letter: 'A',
      isChosen: true,
      points: [
        { day: 20_000, dollars: 2_000_000 },
        { day: 20_100, dollars: 1_500_000 },
      ],
    },
  ],
  plans: [
    { letter: 'A', isChosen: true, isPermittable: true, day: 20_010, dollars: 1_200_000 },
    { letter: 'B', isChosen: false, isPermittable: false, day: 20_080, dollars: 1_700_000 },
  ],
  dates: [
    { at: 20_000, text: 'Oct 2024' },
    { at: 20_100, text: 'Jan 2025' },
  ],
  money: [
    { at: 1_000_000, text: '1' },
    { at: 2_000_000, text: '2' },
  ],
  inHand: { at: 1_600_000, text: '$1,600,000 budget' },
  words: 'The plan of A costs $1,200,000.',
  table,
};

describe('charts as text', () => {
  test('an S-curve writes its shares, its ticks and its marks, and says them', () => {
    expect(read(<SCurve curve={curve} width={500} height={200} />)).toEqual({
      said: curve.words,
      written: ['0', '20', '50', '80', '100', '1.0', '1.5', '2.0', 'P80 $1,800,000', 'P50 $1,500,000'],
    });
  });

  test('a bridge writes each step with its amount, from total to total', () => {
    expect(read(<BridgePicture bridge={bridge} width={500} />)).toEqual({
      said: 'B costs $30,000 more than A.',
      written: ['A plan', '100,000', 'Work', '+40,000', 'Rates', '\u221210,000', 'B other', '130,000'],
    });
  });

  test('a frontier writes both axes, the letters of the plans and the limit', () => {
    const { said, written } = read(<Frontier picture={frontier} width={500} height={240} />);
    expect(said).toBe(frontier.words);
    expect(written).toEqual(expect.arrayContaining(['1', '2', 'Jan 2025', 'A', 'B', '$1,600,000 budget']));
  });

  test('the line of growth says every past hull and this budget', () => {
    const growth = {
      past: [
        { at: 1.2, text: 'one' },
        { at: 1.6, text: 'two' },
      ],
      own: { at: 1.32, text: 'this budget' },
    };
    const { said, written } = read(<GrowthLine growth={growth} width={600} />);
    expect(said).toBe('Past hulls grew by 1.2, 1.6 times; this budget allows 1.32.');
    expect(written.at(-1)).toBe('this budget');
  });
});

describe('pictures of the demo', () => {
  const file = path.join(import.meta.dirname, '../../demo/wrenfield.reef.json');
  const { project } = readProject(fs.readFileSync(file, 'utf8'));
  if (project === undefined) throw new Error('the demo does not read');
  const evaluation = evaluate(project, { today: project.statusDate ?? '2027-01-04', seed: 1 });
  const rows = windowRows(project, evaluation, 'us', undefined)?.rows;
  const words = (
    shown: readonly { readonly cells: Readonly<Record<string, { readonly text: string }>> }[],
    key: string,
  ) => shown.map(row => row.cells[key]?.text ?? '');

  test('the time chart names every activity of its table and shortens none', () => {
    if (rows?.schedule === undefined) throw new Error('the demo has a schedule');
    const { written } = read(<TimeChart view={rows.schedule} width={1048} />);
    const names = rows.schedule.lanes.flatMap(lane => lane.bars.map(bar => bar.title));
    expect(names.length).toBeGreaterThan(50);
    expect(names.filter(name => !written.includes(name))).toEqual([]);
    expect(words(rows.schedule.table.rows, 'title').toSorted()).toEqual(
      expect.arrayContaining(names.slice(0, 5)),
    );
  });

  test('the plan before is marked from its start to its finish, and never left of the axis', () => {
    if (rows?.schedule === undefined) throw new Error('the demo has a schedule');
    const { schedule } = rows;
    const [lane] = schedule.lanes;
    const [bar, other] = lane?.bars ?? [];
    if (lane === undefined || bar === undefined || other === undefined) throw new Error('there is work');
    const moved = [
      { ...bar, earlier: { from: schedule.from - 90, to: bar.to } },
      { ...other, earlier: { from: schedule.from - 90, to: schedule.from - 60 } },
    ];
    const markup = renderToStaticMarkup(
      <TimeChart view={{ ...schedule, lanes: [{ ...lane, bars: moved }] }} width={1048} />,
    );
    const marks = [...markup.matchAll(/<path d="M([\d.-]+) [^"]*" data-earlier="([^"]*)"/g)];
    expect(marks.map(([, from, id]) => [Number(from), id])).toEqual([[166, bar.id]]);
  });

  test('the strip of the sinking writes under each ship what the table says of it', () => {
    if (rows?.sinking === undefined) throw new Error('the demo can be screened');
    const { written } = read(<SectionStrip view={rows.sinking} width={600} />);
    expect(written.length).toBeGreaterThan(5);
    expect(written.some(text => /\u00b0/.test(text))).toBe(true);
  });

  test('the ship writes its clearance as the sentence of the view does', () => {
    const picture = rows?.vessel.picture;
    if (picture === undefined) throw new Error('the demo can be drawn');
    const { said, written } = read(<Profile picture={picture} width={656} tallest={380} />);
    expect(said).toBe(picture.words);
    expect(written.join(' ')).toContain(picture.clearance);
  });

  test('the cash picture names its steps under the lowest of them that runs beside the words', () => {
    const points = [100, 300, 500, 600, 700, 900].map((inSoFar, at) => ({
      ...{ month: `2027-0${at + 1}`, text: 'Jan', year: '2027', words: '' },
      ...{ paid: 0, paidSoFar: 900, inSoFar },
    }));
    const ticks = [0, 900].map(at => ({ at, text: String(at) }));
    const comeIn = 'come in, and the county’s own share';
    const cash = { title: 'Cash', points, ticks, worst: undefined, comeIn, after: '', words: '' };
    const markup = renderToStaticMarkup(<CashPicture cash={cash} width={660} height={140} />);
    // 100 pixels a month and 1 for 10 dollars: the words reach back to 401, where 500 dollars stand, at 50.
    expect(markup).toContain(`<text class="mark-text" x="646" y="72" text-anchor="end">${comeIn}</text>`);
  });

  test('the cash picture writes its worst month, which its table holds', () => {
    const cash = new WhyDesk(evaluation, 'us').opened('funding')?.cash;
    if (cash?.worst === undefined) throw new Error('the demo has a cash gap');
    const { said, written } = read(<CashPicture cash={cash} width={1048} height={262} />);
    expect(said).toBe(cash.words);
    expect(written.join(' ')).toContain(cash.worst.text);
  });
});
