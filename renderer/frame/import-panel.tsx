import { useState } from 'react';
import type { ImportAsk, ImportView } from '../../core/views';
import { engine } from '../engine/engine';
import { host } from '../host/bridge';
import { takeSections } from '../edits/lists';
import { FileChoice } from '../parts/file-choice';
import { DataTable } from '../parts/grid/data-table';
import { valueOf } from '../state/files';
import { change, state } from '../state/store';
import { edit } from '../state/working-out';
import { ImportColumns } from './import-columns';

const KINDS: readonly { readonly id: ImportAsk['kind']; readonly title: string }[] = [
  { id: 'laboratory', title: 'Laboratory results' },
  { id: 'tanks', title: 'Tank table' },
  { id: 'weights', title: 'Weight list' },
  { id: 'prices', title: 'Prices or quotes' },
  { id: 'wages', title: 'Wage table' },
];

/** Brings a table of a file in: what it is, which column is which, what it would change, and then one step to undo. */
export function ImportPanel() {
  const [ask, setAsk] = useState<ImportAsk>();
  const [kind, setKind] = useState<ImportAsk['kind']>('laboratory');
  const [view, setView] = useState<ImportView>();
  const look = async (next: ImportAsk) => {
    const { history } = state();
    if (history === undefined) return;
    setAsk(next);
    setView(await engine().ask('import', { ...next, project: history.project }));
  };
  const read = async (file: File) => {
    const rows = await rowsOf(file);
    if (rows !== undefined) await look({ kind, title: file.name, table: rows });
  };
  return (
    <div className="import-panel">
      <div className="import-head">
        <label>
          <span className="add-label">What it holds</span>
          <select
            value={kind}
            onChange={event => {
              const next = KINDS.find(one => one.id === event.target.value)?.id ?? 'laboratory';
              setKind(next);
              if (ask !== undefined) void look({ kind: next, title: ask.title, table: ask.table });
            }}
          >
            {KINDS.map(one => (
              <option key={one.id} value={one.id}>
                {one.title}
              </option>
            ))}
          </select>
        </label>
        <FileChoice
          className="file-choice"
          titleClass="add-label"
          title="File, CSV or workbook"
          accept=".csv,.tsv,.txt,.xlsx"
          onFile={file => void read(file)}
        />
      </div>
      {view === undefined || ask === undefined ? (
        <p className="serif">
          Choose a file. Nothing is changed before you have seen which column is which and what would change.
        </p>
      ) : (
        <>
          <ImportColumns view={view} onChange={mapping => void look({ ...ask, mapping })} />
          <p className="import-summary" role="status">
            {view.summary}
          </p>
          {view.findings.map(words => (
            <p key={words} className="field-fault">
              {words}
            </p>
          ))}
          {view.changes.rows.length === 0 ? null : <DataTable table={view.changes} />}
          <button
            type="button"
            className="main-button"
            disabled={view.count === 0}
            onClick={() => {
              edit(takeSections(view.sections, `bring in ${ask.title}`));
              change({ panel: 'none', status: `Brought in ${view.count} rows of ${ask.title}.` });
            }}
          >
            Bring in {view.count} rows
          </button>
        </>
      )}
    </div>
  );
}

/** The rows of a file, read by the host; its text goes there, never its path. */
async function rowsOf(file: File): Promise<ImportAsk['table'] | undefined> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  let letters = '';
  for (let at = 0; at < bytes.length; at += 8192)
    letters += String.fromCharCode(...bytes.subarray(at, at + 8192));
  const read = valueOf(await host().readTable({ name: file.name, base64: window.btoa(letters) }));
  return read?.rows;
}
