import { useState } from 'react';
import { TitleLine } from '../../frame/title-line';
import { DataTable } from '../../parts/grid/data-table';
import { useWindow } from '../../state/store';
import { BasisStrip } from './basis-strip';
import './budget.css';

const FACES = [
  { id: 'stage', title: 'By stage' },
  { id: 'element', title: 'By element' },
  { id: 'material', title: 'By material' },
  { id: 'month', title: 'By month' },
  { id: 'build-up', title: 'Build-up' },
];

/** What it costs, rolled up, with the basis of the money and the waste. */
export default function Budget() {
  const view = useWindow(window => window.rows?.budget);
  const [face, setFace] = useState('stage');
  if (view === undefined) return null;
  const others = {
    element: view.byElement,
    material: view.byMaterial,
    month: view.byMonth,
    'build-up': view.buildUp,
  };
  const other = Object.entries(others).find(([id]) => id === face)?.[1];
  return (
    <>
      <TitleLine sentence={view.sentence} faces={FACES} face={face} onFace={setFace} />
      <div className="scroll-x">
        {other === undefined ? (
          <DataTable
            table={view.byStage}
            isCaptionUnseen
            after={row =>
              row.kind === 'total' ? null : (
                <div className="stage-bar" style={{ inlineSize: `${(view.bars[row.id] ?? 0) * 100}%` }} />
              )
            }
          />
        ) : (
          <DataTable key={face} table={other} isCaptionUnseen />
        )}
      </div>
      <BasisStrip head={view.basisHead} parts={view.basis} />
      <div className="two-columns budget-waste">
        <div className="column">
          <DataTable table={view.waste} />
        </div>
        {view.generator.rows.length === 0 ? null : (
          <div className="column">
            <DataTable table={view.generator} />
          </div>
        )}
      </div>
    </>
  );
}
