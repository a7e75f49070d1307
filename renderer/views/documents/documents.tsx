import { useState } from 'react';
import { StillMissing } from '../../frame/still-missing';
import { TitleLine } from '../../frame/title-line';
import { host } from '../../host/bridge';
import { give, textNow, valueOf } from '../../state/files';
import { blockingOf, dropNotice } from '../../state/recovery';
import { change, useWindow } from '../../state/store';
import { Changes } from './changes';
import { Copies } from './copies';
import { Evidence } from './evidence';
import { OfWhich } from './of-which';
import { TakeBack } from './take-back';
import './documents.css';

const FACES = [
  { id: 'papers', title: 'Papers' },
  { id: 'take-back', title: 'Take back' },
  { id: 'copies', title: 'Copy for others' },
  { id: 'evidence', title: 'Evidence' },
  { id: 'changes', title: 'Changes' },
];

/** One paper that the window can make. */
interface Paper {
  readonly kind: string;
  readonly title: string;
  readonly forWhom: string;
  readonly action: string;
  /** It is for the house alone and does not count among what can be handed over. */
  readonly stays?: boolean;
}

const PAPERS: readonly Paper[] = [
  {
    kind: 'workbook',
    title: 'Workbook',
    forWhom: 'For the grant office and whoever checks the figures: every total is a live formula.',
    action: 'Make the workbook',
  },
  {
    kind: 'board-report',
    title: 'Report',
    forWhom: 'For the board, to print: what is asked, what it costs, when, how sure that is and why.',
    action: 'Make the report',
  },
  {
    kind: 'grant-file',
    title: 'Grant file',
    forWhom: 'For the grant office, to print: forms, narrative and the basis of every line.',
    action: 'Make the grant file',
  },
  {
    kind: 'bid',
    title: 'Bid file',
    forWhom:
      'For the owner who asked for prices: a workbook of items and prices alone. Hours, rates and suppliers stay inside.',
    action: 'Make the bid file',
  },
  {
    kind: 'bid-print',
    title: 'Printed bid',
    forWhom: 'For the owner, to print: the same items and prices, with dates and what the price leaves out.',
    action: 'Make the printed bid',
  },
  {
    kind: 'internal',
    title: 'Internal build-up',
    forWhom:
      'For the bidder alone, not to be handed over: a workbook of the whole build-up, with hours, rates, suppliers, mark-ups and margin.',
    action: 'Make the internal build-up',
    stays: true,
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
  const [face, setFace] = useState('papers');
  const changes = useWindow(
    window => window.history?.past.slice(Math.max(0, window.history.saved)).length ?? 0,
  );
  const sentences: Readonly<Record<string, string>> = {
    papers: `${PAPERS.filter(paper => paper.stays !== true).length} papers can be handed over, made from the scenario that is open; the internal build-up stays with the bidder.`,
    'take-back': 'A paper that came back: see what it would change before it is taken.',
    copies: 'A copy for others leaves out what only you should see.',
    evidence: 'Evidence: the files that prove a figure, by name and check sum.',
    changes:
      changes === 0
        ? 'Nothing has changed since the last saved version.'
        : `${changes} changes have been made since the last saved version.`,
  };
  return (
    <>
      <TitleLine sentence={[sentences[face] ?? '']} faces={FACES} face={face} onFace={setFace} />
      {face === 'papers' ? <StillMissing /> : null}
      {face === 'papers' ? <OfWhich /> : null}
      {face === 'evidence' ? <Evidence /> : null}
      {face === 'take-back' ? <TakeBack /> : null}
      {face === 'copies' ? <Copies /> : null}
      {face === 'changes' ? <Changes /> : null}
      {face === 'papers' ? <Papers making={making} onMake={kind => void make(kind)} /> : null}
    </>
  );
}

interface PapersProps {
  readonly making: string;
  readonly onMake: (kind: string) => void;
}

function Papers({ making, onMake }: PapersProps) {
  return (
    <ul className="papers">
      {PAPERS.map(paper => (
        <li key={paper.kind}>
          <h2 className="head">{paper.title}</h2>
          <p>{paper.forWhom}</p>
          <button
            type="button"
            className="plain-button"
            disabled={making !== ''}
            onClick={() => onMake(paper.kind)}
          >
            {making === paper.kind ? 'Being made …' : paper.action}
          </button>
        </li>
      ))}
    </ul>
  );
}

/** Lets the host make a paper and hands its files to the person. */
async function makePaper(kind: string): Promise<void> {
  const scenario = useWindow.getState().scenario;
  const id = `paper-${kind}`;
  const whileBlocked = blockingOf(useWindow.getState().rows?.findings ?? []);
  dropNotice(id);
  const made = valueOf(await host().makePapers({ text: await textNow(), scenario, only: [kind] }), {
    id,
    whileBlocked,
  });
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
