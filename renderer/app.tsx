import { useEffect } from 'react';
import { commandOf } from './commands/keys';
import { runCommand } from './commands/run';
import { Frame } from './frame/frame';
import { host } from './host/bridge';
import { openFile, show } from './state/files';
import { addNotice, dropNotice } from './state/recovery';
import { applySettings } from './state/settings';
import { change } from './state/store';
import { isUnsaved } from './state/working-out';

/** The window: starts from what the host knows, then listens to keys, drops and the host. */
export function App() {
  useEffect(() => {
    void startUp();
    return listen();
  }, []);
  return <Frame />;
}

let hasStarted = false;

async function startUp(): Promise<void> {
  if (hasStarted) return;
  hasStarted = true;
  const about = await host().about();
  if (about.ok) change({ about: about.value });
  const settings = await host().readSettings();
  if (settings.ok) {
    change({ settings: settings.value });
    applySettings(settings.value);
  }
  const opened = await host().openedAtStart();
  if (opened.ok && opened.value !== null) await show(opened.value);
  await offerRecovery();
}

/** Tells of unsaved work of an earlier session: recover it, or let it go. */
async function offerRecovery(): Promise<void> {
  const kept = await host().listRecovery();
  for (const work of kept.ok ? kept.value : []) {
    const id = `recovery-${work.key}`;
    addNotice({
      id,
      head: `Unsaved work on ${work.name} was kept.`,
      words: `It is from ${work.savedAt.slice(0, 16).replace('T', ' ')}, world time.${work.changedSince ? ' The saved file was changed by someone else since. Recover it as a copy and compare.' : ''}`,
      actions: [
        { title: 'Recover it', run: () => void recover(work.key, id) },
        {
          title: 'Let it go',
          run: () => {
            dropNotice(id);
            void host().discardRecovery({ key: work.key });
          },
        },
      ],
    });
  }
}

async function recover(key: string, notice: string): Promise<void> {
  const work = await host().readRecovery({ key });
  dropNotice(notice);
  if (work.ok) await show(work.value, key, true);
}

function onKey(event: KeyboardEvent): void {
  const command = commandOf(event);
  if (command === undefined || isTypingKey(event, command)) return;
  event.preventDefault();
  runCommand(command);
}

/** Undo and Escape inside a field that is being typed in belong to the field. */
function isTypingKey(event: KeyboardEvent, command: string): boolean {
  const target = event.target;
  const isField = target instanceof HTMLInputElement || target instanceof HTMLTextAreaElement;
  if (command === 'why') return event.defaultPrevented;
  return isField && target.dataset['typed'] === 'true' && (command === 'undo' || command === 'redo');
}

function onDrop(event: DragEvent): void {
  event.preventDefault();
  const file = event.dataTransfer?.files[0];
  if (file !== undefined) void openFile(file);
}

const stay = (event: Event) => event.preventDefault();
const warn = (event: BeforeUnloadEvent) => {
  if (isUnsaved()) event.preventDefault();
};

function listen(): () => void {
  window.addEventListener('keydown', onKey);
  window.addEventListener('dragover', stay);
  window.addEventListener('drop', onDrop);
  window.addEventListener('beforeunload', warn);
  const offCommand = host().onCommand(runCommand);
  const offOpened = host().onOpened(document => void show(document));
  return () => {
    window.removeEventListener('keydown', onKey);
    window.removeEventListener('dragover', stay);
    window.removeEventListener('drop', onDrop);
    window.removeEventListener('beforeunload', warn);
    offCommand();
    offOpened();
  };
}
