import { Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import type { ReactNode } from 'react';
import { change, useWindow } from '../state/store';
import { ClosePanel, OpenPanel, SaveAsPanel } from './file-panels';
import { Finder } from './finder';
import { HelpPanel } from './help-panel';
import { MenuPanel } from './menu-panel';
import { ImportPanel } from './import-panel';
import { ScenariosPanel } from './scenarios-panel';
import { StartPanel } from './start-panel';
import './panels.css';

const TITLES = {
  menu: 'Menu',
  find: 'Find anything',
  help: 'Help and keyboard',
  open: 'Open a project',
  'save-as': 'Save under another name',
  close: 'The project has edits that are not saved',
  start: 'New from a starting point',
  scenarios: 'Scenarios',
  import: 'Bring in a table',
} as const;

/** What a project that has no file yet is asked. */
const FIRST_SAVE = 'Save the project';

const BODIES: Readonly<Record<keyof typeof TITLES, () => ReactNode>> = {
  menu: () => <MenuPanel />,
  find: () => <Finder />,
  help: () => <HelpPanel />,
  open: () => <OpenPanel />,
  'save-as': () => <SaveAsPanel />,
  close: () => <ClosePanel />,
  start: () => <StartPanel />,
  scenarios: () => <ScenariosPanel />,
  import: () => <ImportPanel />,
};

/** The panel that is open above the window, if any: one at a time, left with Escape. */
export default function Panels() {
  const panel = useWindow(window => window.panel);
  const isFirstSave = useWindow(window => window.document?.id === '');
  if (panel === 'none') return null;
  return (
    <ModalOverlay
      isOpen
      isDismissable
      className="overlay"
      onOpenChange={isOpen => {
        if (!isOpen) change({ panel: 'none' });
      }}
    >
      <Modal className={`panel panel-${panel}`}>
        <Dialog className="panel-body">
          <div className="panel-head">
            <Heading slot="title" className="serif panel-title">
              {panel === 'save-as' && isFirstSave ? FIRST_SAVE : TITLES[panel]}
            </Heading>
            <button type="button" className="text-button" onClick={() => change({ panel: 'none' })}>
              Close
            </button>
          </div>
          {BODIES[panel]()}
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}
