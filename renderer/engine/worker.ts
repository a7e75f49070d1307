import { shippedLibrary } from '../../core/evaluation';
import { answerOf } from './answers';
import type { Asked, Said } from './protocol';
import { ProjectReceiver } from './sent-project';

const receiver = new ProjectReceiver();
let latest = 0;

/** The engine's own thread: faults are told, never lost, and a newer evaluation overtakes an older one. */
self.onmessage = (event: MessageEvent<Asked>) => {
  const { number, name, ask, sent } = event.data;
  if (name === 'evaluate') latest = number;
  const say = (said: Said) => self.postMessage(said);
  const answer = async () => {
    const whole = sent === undefined ? ask : { ...ask, project: receiver.received(sent) };
    return answerOf(name, whole as never, {
      say: part => say({ number, kind: 'part', part }),
      pause: milliseconds =>
        new Promise(resolve =>
          setTimeout(() => resolve(latest === number || name !== 'evaluate'), milliseconds),
        ),
      now: () => performance.now(),
    });
  };
  answer().then(
    done => say({ number, kind: 'answer', answer: done }),
    (cause: unknown) =>
      say({ number, kind: 'fault', message: cause instanceof Error ? cause.message : String(cause) }),
  );
};

// The library is read before the first question, while the window draws itself.
shippedLibrary();
