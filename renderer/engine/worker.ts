import { shippedLibrary } from '../../core/evaluation';
import { answerOf } from './answers';
import type { Asked, Said } from './protocol';
import { ProjectReceiver } from './sent-project';
import { warmUp } from './warm-up';

const receiver = new ProjectReceiver();
let latest = 0;
let isAsked = false;

/** The engine's own thread: faults are told, never lost, and a newer evaluation overtakes an older one. */
self.onmessage = (event: MessageEvent<Asked>) => {
  const { number, name, ask, sent } = event.data;
  isAsked = true;
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

/** Nothing asked for so long, in milliseconds: the start panel is being read. */
const QUIET = 500;

const steps = warmUp('2026-01-01');
const step = () => {
  if (!isAsked && steps.next().done !== true) setTimeout(step);
};
setTimeout(step, QUIET);
