import { useState } from 'react';
import { TitleLine } from '../../frame/title-line';
import { DataTable } from '../../parts/grid/data-table';
import { useWindow } from '../../state/store';
import { WorkSentences } from './work-sentences';
import './work.css';

const FACES = [
  { id: 'sentences', title: 'Sentences' },
  { id: 'table', title: 'Table' },
  { id: 'payee', title: 'By who is paid' },
  { id: 'choices', title: 'Choices' },
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
      {face === 'choices' ? <DataTable table={view.options} isCaptionUnseen /> : null}
    </>
  );
}
