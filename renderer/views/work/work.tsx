import { useState } from 'react';
import type { WorkView } from '../../../core/views';
import { TitleLine } from '../../frame/title-line';
import { AddForm } from '../../parts/add-form';
import { DataTable } from '../../parts/grid/data-table';
import { useWindow } from '../../state/store';
import { WorkSentences } from './work-sentences';
import './work.css';

const FACES = [
  { id: 'sentences', title: 'Sentences' },
  { id: 'table', title: 'Table' },
  { id: 'payee', title: 'By who is paid' },
  { id: 'choices', title: 'Choices' },
  { id: 'quotes', title: 'Quotes' },
];

/** The work items of the scenario, as sentences under stage headings, and as tables. */
export default function Work() {
  const view = useWindow(window => window.rows?.work);
  const [face, setFace] = useState('sentences');
  if (view === undefined) return null;
  return (
    <>
      <TitleLine sentence={view.sentence} faces={FACES} face={face} onFace={setFace} />
      {face === 'sentences' ? <WorkSentences view={view} /> : null}
      {face === 'table' ? <DataTable table={view.table} isSticky isCaptionUnseen /> : null}
      {face === 'payee' ? <DataTable table={view.byPayee} isSticky isCaptionUnseen /> : null}
      {face === 'quotes' ? <Quotes view={view} /> : null}
      {face === 'choices' ? <DataTable table={view.options} isCaptionUnseen /> : null}
    </>
  );
}

/** Quotes, and what each prices; the chosen one takes another work item. */
function Quotes({ view }: { view: WorkView }) {
  const chosen = useWindow(window => window.chosen);
  const { quotes, covers, coverAdditions, coverHint } = view;
  const addition =
    coverAdditions.find(one => one.at === `/quotes/${chosen ?? ''}/covers`) ?? coverAdditions[0];
  return (
    <>
      {quotes.rows.length === 0 ? (
        <div className="empty">
          <p>Quotes go here, beside the item they price.</p>
        </div>
      ) : null}
      <div className="scroll-x">
        <DataTable table={quotes} isCaptionUnseen />
      </div>
      {quotes.rows.length === 0 ? null : <DataTable table={covers} />}
      {addition === undefined ? null : (
        <>
          {coverHint === '' ? null : <p className="table-note">{coverHint}</p>}
          <AddForm key={addition.at} addition={addition} />
        </>
      )}
    </>
  );
}
