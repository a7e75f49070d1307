import { lazy, Suspense, type ComponentType } from 'react';
import { isOfBefore } from '../state/opened';
import { useWindow } from '../state/store';
import { useIsBehind } from '../state/studies';
import { FirstRun } from '../views/first-run/first-run';
import { BottomLine } from './bottom-line';
import { Notices } from './notices';
import { ViewList } from './view-list';
import type { ViewId } from './view-table';
import { WhyPanel } from './why-panel';

const Panels = lazy(() => import('./panels'));

/** Views are loaded when they are opened. */
const SURFACES: Readonly<Record<ViewId, ComponentType>> = {
  vessel: lazy(() => import('../views/vessel/vessel')),
  materials: lazy(() => import('../views/materials/materials')),
  sinking: lazy(() => import('../views/sinking/sinking')),
  work: lazy(() => import('../views/work/work')),
  rates: lazy(() => import('../views/rates/rates')),
  schedule: lazy(() => import('../views/schedule/schedule')),
  budget: lazy(() => import('../views/budget/budget')),
  funding: lazy(() => import('../views/funding/funding')),
  bid: lazy(() => import('../views/bid/bid')),
  risk: lazy(() => import('../views/risk/risk')),
  compare: lazy(() => import('../views/compare/compare')),
  review: lazy(() => import('../views/review/review')),
  decision: lazy(() => import('../views/decision/decision')),
  documents: lazy(() => import('../views/documents/documents')),
};

/** The frame: list of views, one surface, the Why panel and the bottom line. */
export function Frame() {
  const panel = useWindow(window => window.panel);
  const view = useWindow(window => window.view);
  const isAnswerBehind = useIsBehind(view);
  const isBefore = useWindow(isOfBefore) || isAnswerBehind;
  return (
    <div className="frame">
      <ViewList />
      <main
        className="surface"
        id="surface"
        data-view={view}
        data-behind={isBefore}
        aria-busy={isBefore}
        tabIndex={-1}
      >
        <Surface />
      </main>
      <WhyPanel />
      <BottomLine />
      <StatusRegion />
      <Suspense fallback={null}>{panel === 'none' ? null : <Panels />}</Suspense>
    </div>
  );
}

function Surface() {
  const hasDocument = useWindow(window => window.history !== undefined);
  const hasRows = useWindow(window => window.rows !== undefined);
  const view = useWindow(window => window.view);
  if (!hasDocument) {
    return (
      <>
        <Notices />
        <FirstRun />
      </>
    );
  }
  if (!hasRows) {
    return (
      <>
        <p className="sentence">Working the project out.</p>
        <Notices />
      </>
    );
  }
  const View = SURFACES[view];
  return (
    <Suspense key={view} fallback={<p className="sentence">Opening the view.</p>}>
      <View />
    </Suspense>
  );
}

/** Says once, for those who do not see it, what an edit moved or what was done. */
function StatusRegion() {
  const status = useWindow(window => window.status);
  return (
    <p role="status" className="unseen">
      {status}
    </p>
  );
}
