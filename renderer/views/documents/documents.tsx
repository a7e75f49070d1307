import { useState } from 'react';
import { TitleLine } from '../../frame/title-line';
import { host } from '../../host/bridge';
import { give, textNow, valueOf } from '../../state/files';
import { change, useWindow } from '../../state/store';
import './documents.css';

interface Paper {
  readonly kind: string;
  readonly title: string;
  readonly forWhom: string;
  readonly action: string;
}

const PAPERS: readonly Paper[] = [
  {
    kind: 'workbook',
    title: 'Workbook',
    forWhom: 'For the grant office and whoever checks the figures: every total is a live formula.',
    action: 'Make the workbook',
  },
  {
    kind: 'report',
    title: 'Report',
    forWhom: 'For the board: the estimate, the schedule and the cautions, ready to print.',
    action: 'Make the report',
  },
  {
    kind: 'calendar',
    title: 'Calendar',
    forWhom: 'For everyone with a date to keep: opens in any calendar program.',
    action: 'Make the calendar',
  },
  {
    kind: 'csv',
    title: 'Tables',
    forWhom: 'For other programs: lines and activities as comma-separated text.',
    action: 'Make the tables',
  },
  {
    kind: 'json',
    title: 'Data',
    forWhom: 'For scripts: the whole evaluation as JSON.',
    action: 'Make the data file',
  },
];

/** What to hand over, and to whom. Each paper is made from the document as it stands now. */
export default function Documents() {
  const [making, setMaking] = useState('');
  const make = async (kind: string) => {
    setMaking(kind);
    await makePaper(kind);
    setMaking('');
  };
  return (
    <>
      <TitleLine
        sentence={[`${PAPERS.length} papers can be handed over, made from the scenario that is chosen.`]}
      />
      <ul className="papers">
        {PAPERS.map(paper => (
          <li key={paper.kind}>
            <h2 className="head">{paper.title}</h2>
            <p>{paper.forWhom}</p>
            <button
              type="button"
              className="plain-button"
              disabled={making !== ''}
              onClick={() => void make(paper.kind)}
            >
              {making === paper.kind ? 'Being made …' : paper.action}
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}

/** Lets the host make a paper and hands its files to the person. */
async function makePaper(kind: string): Promise<void> {
  const scenario = useWindow.getState().scenario;
  const made = valueOf(await host().makePapers({ text: await textNow(), scenario, only: [kind] }));
  for (const paper of made ?? []) {
    const content = valueOf(await host().readPaper({ id: paper.id }));
    if (content !== undefined)
      give(
        content.name,
        new Blob([Uint8Array.from(window.atob(content.base64), letter => letter.charCodeAt(0))]),
      );
  }
  if (made !== undefined) change({ status: `Made: ${made.map(paper => paper.name).join(', ')}.` });
}
