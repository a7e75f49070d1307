import { useState } from 'react';
import type { ReviewView, TableRows } from '../../../core/views';
import { TitleLine } from '../../frame/title-line';
import { Says } from '../../parts/figure';
import { AddForm } from '../../parts/add-form';
import { DataTable } from '../../parts/grid/data-table';
import { GrowthLine } from '../../pictures/growth/growth-line';
import { useWidth } from '../../pictures/use-width';
import { useOpened } from '../../state/opened';
import { useWindow } from '../../state/store';
import { Findings } from './findings';
import { Practices } from './practices';
import './review.css';

const FACES = [
  { id: 'findings', title: 'Findings' },
  { id: 'practices', title: 'Quality review' },
  { id: 'past', title: 'Past hulls' },
  { id: 'record', title: 'Record' },
];

/** What needs a look: open findings, the practices of the guides, and what past hulls grew by. */
export default function Review() {
  const findings = useWindow(window => window.rows?.findings) ?? [];
  const open = useWindow(window => window.rows?.openSentence) ?? '';
  const view = useOpened('review');
  const [face, setFace] = useState('findings');
  const sentence =
    view === undefined || face === 'findings'
      ? [open]
      : face === 'practices'
        ? view.practicesSentence
        : face === 'record'
          ? view.recordSentence
          : view.growthSentence;
  return (
    <>
      <TitleLine sentence={sentence} faces={FACES} face={face} onFace={setFace} />
      {face === 'findings' ? <Findings findings={findings} /> : null}
      {face === 'practices' && view !== undefined ? <Practices view={view} /> : null}
      {face === 'past' && view !== undefined ? <Past view={view} /> : null}
      {face === 'record' && view !== undefined ? <Record tables={view.record} /> : null}
    </>
  );
}

function Past({ view }: { view: ReviewView }) {
  const { ref, width } = useWidth<HTMLDivElement>(1048);
  return (
    <div ref={ref} className="review-past">
      <p className="serif review-class">
        <Says sentence={view.classSentence} />
      </p>
      <p className="quiet">{view.classNote}</p>
      {view.growth === undefined ? null : (
        <section aria-label="Growth">
          <h2 className="head">Budget over estimate, times</h2>
          <GrowthLine growth={view.growth} width={width} />
        </section>
      )}
      {view.cases.rows.length === 0 ? null : <DataTable table={view.cases} />}
      {view.likeHulls.rows.length === 0 ? null : <DataTable table={view.likeHulls} />}
    </div>
  );
}

/** What was agreed, kept, checked by others and learned; what is not written down yet has a way to begin. */
function Record({ tables }: { tables: readonly TableRows[] }) {
  return (
    <div className="review-record">
      {tables.map(table =>
        table.rows.length > 0 ? (
          <DataTable key={table.id} table={table} />
        ) : (
          <section key={table.id} aria-label={table.caption}>
            <h2 className="head caption">{table.caption}: nothing yet</h2>
            {table.add === undefined ? null : <AddForm addition={table.add} />}
          </section>
        ),
      )}
    </div>
  );
}
