import { StudyDesk, StudyStopped } from './study-desk';
import type { StudyAsked, StudyName, StudySaid } from './study-protocol';

const desk = new StudyDesk();
/** The newest question of each name: an older one ends at its next step. */
const newest = new Map<StudyName, number>();

/** The thread of the long questions, beside the engine’s own. */
self.onmessage = (event: MessageEvent<StudyAsked>) => {
  const asked = event.data;
  if ('stop' in asked) {
    newest.delete(asked.stop);
    return;
  }
  const { number, name } = asked;
  newest.set(name, number);
  const say = (said: StudySaid) => self.postMessage(said);
  desk
    .answer(asked, {
      say: (done, of, words) => say({ number, kind: 'progress', done, of, words }),
      pause: () => new Promise(resolve => setTimeout(() => resolve(newest.get(name) === number), 0)),
      now: () => performance.now(),
    })
    .then(
      answer => say({ number, kind: 'answer', answer }),
      (cause: unknown) =>
        say(
          cause instanceof StudyStopped
            ? { number, kind: 'stopped' }
            : { number, kind: 'fault', message: cause instanceof Error ? cause.message : String(cause) },
        ),
    );
};
